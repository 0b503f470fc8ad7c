import { expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';
import { createMujocoGolfer } from './mujoco';

// The pose line of the documentation, once through the command and once through MuJoCo: names, units and order of the fields included.
const club = { lengthM: 0.94, lieDeg: 62.5, loftDeg: 34, gripTurnDeg: 0 };
const pose = {
  pelvisSwayM: 0,
  pelvisHeightM: 0.89,
  pelvisThrustM: 0,
  pelvisTurnDeg: 0,
  pelvisBendDeg: 0,
  pelvisSideTiltDeg: 0,
  trunkBendDeg: 36,
  trunkTiltDeg: 9,
  thoraxTurnDeg: -45,
  leadProtractionDeg: 14,
  trailProtractionDeg: -6,
  leadArmAdductionDeg: 57,
  leadArmElevationDeg: -7,
  leadArmRollDeg: 84,
  leadWristFlexionDeg: 4,
  leadWristRadialDeg: 20,
};

test('a pose line answers with the points and directions of MuJoCo, to 1e-9', () => {
  const text = JSON.stringify({ kind: 'pose', body: { statureM: 1.78 }, club, pose });
  const out = JSON.parse(answerLine({ number: 1, text }).text) as {
    points: Record<string, number[]>;
    shaftDirection: number[];
    faceNormal: number[];
  };
  const golfer = createMujocoGolfer({ statureM: 1.78, gripInsetM: 0.1, handGapM: 0.085, gripAngleDeg: 52, ...club });
  for (const [field, value] of Object.entries(pose)) {
    const [, joint, unit] = /^(.*?)(M|Deg)$/.exec(field)!;
    golfer.setJoint(joint, unit === 'Deg' ? (value / 180) * Math.PI : value);
    if (joint === 'leadProtraction') golfer.setJoint('leadProtractionBack', (value / 180) * Math.PI);
  }
  golfer.solve();
  const expected: readonly (readonly [readonly number[], readonly number[]])[] = [
    [out.points['pelvis'], golfer.bodyAt('pelvis')],
    [out.points['midShoulder'], golfer.bodyAt('thorax')],
    [out.points['leadShoulder'], golfer.bodyAt('leadArm')],
    [out.points['trailShoulder'], golfer.siteAt('trailShoulder')],
    [out.points['leadGrip'], golfer.bodyAt('club')],
    [out.points['trailGrip'], golfer.siteAt('trailGrip')],
    [out.points['head'], golfer.siteAt('head')],
    [out.shaftDirection, golfer.bodyAxis('club', 2)],
    [out.faceNormal, golfer.siteAxis('head', 0)],
  ];
  golfer.free();
  for (const [ours, theirs] of expected) ours.forEach((x, i) => expect(Math.abs(x - theirs[i])).toBeLessThan(1e-9));
});
