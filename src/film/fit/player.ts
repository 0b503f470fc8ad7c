import { measure } from '../../figure/measures';
import { FLARE } from '../../figure/stance';
import type { Rad } from '../../math/angle';
import { armHeightSine, AT, createPose, placePose, shaftHeightSine, type Pose } from '../../model/chain';
import { createJointVector, type JointVector } from '../../model/joints';
import { K } from '../../model/keys';
import { movedJoints } from '../../model/motion';
import { DIALS, STILL, type Movements } from '../../model/movements';
import { isReached, readCheckpoints } from '../../reading/checkpoints';
import { swingPose, type Swing } from '../../reading/swing';
import { CARRIED, DIAL_SD, FIRST_DIAL, FREE_JOINTS, JOINT_SD, RENEWED, SECOND_JOINTS, U } from './unknowns';

type Point = readonly [number, number, number];

/** What the reference says about a player before anything is marked. World, m and rad; times in s of the reference. */
export interface Expected {
  readonly swing: Swing;
  readonly armAngle: Rad;
  /** Club head and hands at address, and how the shaft stands there: in the plane across the target line, and along it. */
  readonly head: Point;
  readonly hands: Point;
  readonly lie: number;
  readonly lean: number;
  readonly trailToe: readonly [number, number];
  readonly leadToe: readonly [number, number];
  readonly armTime: number;
  readonly shaftTime: number;
}

/** Ankle to the tip of the toes, fraction of stature, as the figure is drawn. */
const TOE_TIP = 0.106;
/** Ankles behind the middle of the feet, fraction of stature, as the figure is drawn. */
const ANKLE_BACK = 0.011;

/** What is expected of a player with nothing dialled. Undefined when the reference never reaches a checkpoint. */
export function findExpected(swing: Swing, armAngle: Rad): Expected | undefined {
  const base = { ...swing, movements: STILL };
  const { leadArmParallel, shaftParallel } = readCheckpoints(base, armAngle);
  if (!isReached(leadArmParallel) || !isReached(shaftParallel)) return undefined;
  const pose = createPose();
  swingPose(base, swing.reference.times[K.address], pose);
  const c = AT.shaftDirection;
  const { stance, k, footScale } = measure(swing.rig.body, swing.rig.club);
  const toe = (side: 1 | -1, flare: number): readonly [number, number] => [
    side * stance + Math.sin(flare) * TOE_TIP * k * footScale,
    Math.cos(flare) * TOE_TIP * k * footScale - ANKLE_BACK * k,
  ];
  const at = (i: number): Point => [pose[i], pose[i + 1], pose[i + 2]];
  return {
    swing: base,
    armAngle,
    head: at(AT.head),
    hands: at(AT.leadGrip),
    lie: Math.atan2(-pose[c + 1], pose[c + 2]),
    lean: Math.asin(pose[c]),
    trailToe: toe(-1, FLARE.trail),
    leadToe: toe(1, FLARE.lead),
    armTime: leadArmParallel.t,
    shaftTime: shaftParallel.t,
  };
}

/** A player as the search has him: the reference with movements and joints that differ, at either checkpoint. */
export interface Player {
  /** Takes movements and joints from the unknowns. */
  take(x: Float64Array): void;
  /** Pose at time `t` (s) with the joints of a checkpoint, written into `out`. */
  pose(at: 'arm' | 'shaft', t: number, out: Pose): void;
  /** The same with joints from those of lead arm parallel (0) to those of shaft parallel (1): for pictures between them. */
  between(share: number, t: number, out: Pose): void;
  /** When the lead arm falls through its reading angle, and the shaft through level, near `t`, s. NaN: not near. */
  armTime(near: number): number;
  shaftTime(near: number): number;
}

/** Step of the search for an event, s, and how far from its start it may end. */
const STEP = 1e-4;
const FARTHEST = 0.08;

/** Room for a player's pose as the search goes on; nothing below allocates. */
export function createPlayer({ swing, armAngle }: Expected): Player {
  const { rig, curves, tempo } = swing;
  const q: JointVector = createJointVector();
  const arm = new Float64Array(FREE_JOINTS.length);
  const shaft = new Float64Array(FREE_JOINTS.length);
  const movements: { -readonly [id in keyof Movements]: Movements[id] } = { ...STILL };
  const level = Math.sin(armAngle);
  const joints = (at: 'arm' | 'shaft', t: number): void => {
    movedJoints(curves, movements, t, tempo, q);
    const own = at === 'arm' ? arm : shaft;
    for (let i = 0; i < FREE_JOINTS.length; i++) q[FREE_JOINTS[i]] += own[i];
  };
  const armHeight = (t: number): number => {
    joints('arm', t);
    return armHeightSine(q) - level;
  };
  const shaftHeight = (t: number): number => {
    joints('shaft', t);
    return shaftHeightSine(rig, q);
  };
  return {
    take(x) {
      for (let i = 0; i < DIALS.length; i++) {
        const { id, neutral } = DIALS[i];
        movements[id] = neutral + DIAL_SD[i] * x[FIRST_DIAL + i];
      }
      for (let i = 0; i < FREE_JOINTS.length; i++) {
        const first = x[U.joints + i];
        arm[i] = JOINT_SD[i] * first;
        shaft[i] = JOINT_SD[i] * (CARRIED * first + RENEWED * x[SECOND_JOINTS + i]);
      }
    },
    pose(at, t, out) {
      joints(at, t);
      placePose(rig, q, out);
    },
    between(share, t, out) {
      movedJoints(curves, movements, t, tempo, q);
      for (let i = 0; i < FREE_JOINTS.length; i++) q[FREE_JOINTS[i]] += arm[i] + share * (shaft[i] - arm[i]);
      placePose(rig, q, out);
    },
    armTime: (near) => findZero(armHeight, near),
    shaftTime: (near) => findZero(shaftHeight, near),
  };
}

/** Newton with a difference for the slope, which falls at both events. */
function findZero(height: (t: number) => number, near: number): number {
  let t = near;
  for (let k = 0; k < 12; k++) {
    const value = height(t);
    const slope = (height(t + STEP) - value) / STEP;
    if (!(slope < 0)) return NaN;
    const step = Math.max(-0.02, Math.min(0.02, -value / slope));
    t += step;
    if (Math.abs(t - near) > FARTHEST) return NaN;
    if (Math.abs(step) < 1e-9) return t;
  }
  return t;
}
