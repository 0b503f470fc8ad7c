// Writes assets/kernelNumbers.json: where MuJoCo puts grip and head for a few postures. The app compares itself with
// them on the page "What leaves this device". Run it with: npx tsx .config/kernelNumbers.ts
import { writeFileSync } from 'node:fs';
import { JOINTS } from '../src/model/joints';
import { createMujocoGolfer } from '../tests/reference/mujoco';
import { createRandom } from '../tests/reference/random';

const MEASURES = {
  statureM: 1.78,
  lengthM: 0.94,
  lieDeg: 62,
  loftDeg: 34,
  gripInsetM: 0.1,
  handGapM: 0.085,
  gripAngleDeg: 52,
  gripTurnDeg: 20,
};
const POSTURES = 8;

const golfer = createMujocoGolfer(MEASURES);
const random = createRandom(2026);
const postures = Array.from({ length: POSTURES }, () => {
  const joints = JOINTS.map(({ id, min, max }) => {
    const value = Number((min + (max - min) * random()).toFixed(6));
    golfer.setJoint(id, value);
    if (id === 'leadProtraction') golfer.setJoint('leadProtractionBack', value);
    return [id, value] as const;
  });
  golfer.solve();
  return {
    joints: Object.fromEntries(joints),
    leadGrip: golfer.bodyAt('club'),
    trailGrip: golfer.siteAt('trailGrip'),
    head: golfer.siteAt('head'),
    shaftDirection: golfer.bodyAxis('club', 2),
  };
});
golfer.free();

writeFileSync(
  new URL('../assets/kernelNumbers.json', import.meta.url),
  `${JSON.stringify({ source: 'MuJoCo mj_kinematics, radians and metres', measures: MEASURES, postures }, undefined, 1)}\n`,
);
