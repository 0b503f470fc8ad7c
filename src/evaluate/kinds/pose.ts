import { fields, numberIn, type FieldsOf } from '../../checking/schemas';
import { rad } from '../../math/angle';
import { AT, createPose, createRig, placePose } from '../../model/chain';
import { createJointVector, JOINTS } from '../../model/joints';
import {
  bicepCrossing,
  bicepGap,
  faceToVertical,
  headDepth,
  shaftAim,
  shaftPitch,
  shaftPlane,
} from '../../reading/readings';
import { bodySchema, clubSchema, toBody, toClub } from '../golfer';
import { toCm, toEdgeReadings, toList } from '../../edge/units';

/** Any posture may be asked for, also beyond the usual ranges of motion: these only catch slips of unit. */
const LIMITS = { angle: numberIn(-360, 360), length: numberIn(-5, 5) };
const joints: Record<string, typeof LIMITS.angle> = Object.fromEntries(
  JOINTS.map(({ field, kind }) => [field, LIMITS[kind]]),
);

/** A golfer with a club in one posture. */
export const poseFields = { body: bodySchema, club: clubSchema, pose: fields(joints) };

const q = createJointVector();
const pose = createPose();

/** Points (m, world), directions and readings of one posture. */
export function runPose(line: FieldsOf<typeof poseFields>): object {
  const rig = createRig(toBody(line.body, 'body'), toClub(line.club));
  JOINTS.forEach(({ field, kind }, j) => {
    const value = line.pose[field];
    q[j] = kind === 'angle' ? rad(value) : value;
  });
  placePose(rig, q, pose);
  return {
    points: {
      pelvis: toList(pose, AT.pelvis),
      midShoulder: toList(pose, AT.midShoulder),
      leadShoulder: toList(pose, AT.leadShoulder),
      trailShoulder: toList(pose, AT.trailShoulder),
      leadGrip: toList(pose, AT.leadGrip),
      trailGrip: toList(pose, AT.trailGrip),
      trailElbow: toList(pose, AT.trailElbow),
      bicep: toList(pose, AT.bicep),
      head: toList(pose, AT.head),
    },
    leadArmDirection: toList(pose, AT.armDirection),
    shaftDirection: toList(pose, AT.shaftDirection),
    faceNormal: toList(pose, AT.faceNormal),
    toeDirection: toList(pose, AT.toeDirection),
    trailReach: { ratio: pose[AT.reachRatio], shortfallCm: toCm(pose[AT.reachShortfall]) },
    readings: toEdgeReadings({
      shaftPitch: shaftPitch(pose),
      shaftPlane: shaftPlane(pose),
      bicepGap: bicepGap(pose),
      bicepCrossing: bicepCrossing(pose),
      headDepth: headDepth(pose),
      shaftAim: shaftAim(pose),
      faceToVertical: faceToVertical(pose),
    }),
  };
}
