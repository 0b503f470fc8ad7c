import numbers from '../../../../assets/kernelNumbers.json';
import { rad } from '../../../math/angle';
import type { Launch } from '../../../flight/launch';
import { findFlight } from '../../../flight/trajectory';
import { bodyOf } from '../../../model/body';
import { AT, createPose, createRig, placePose } from '../../../model/chain';
import { clubOf } from '../../../model/club';
import { createJointVector, JOINTS } from '../../../model/joints';

/** Agreement the model promises with the outside computation, m and unit lengths. */
const LIMIT = 1e-9;
const POINTS = { leadGrip: AT.leadGrip, trailGrip: AT.trailGrip, head: AT.head, shaftDirection: AT.shaftDirection };

/** How the self-test came out. */
interface SelfTest {
  /** Comparisons made, and how many of them hold. */
  readonly made: number;
  readonly held: number;
  /** The largest difference of a point, m. */
  readonly worst: number;
}

/** Places the figure in the stored postures and compares it with where MuJoCo, computed beforehand, puts it. */
function comparePostures(): number[] {
  const { measures, postures } = numbers;
  const rig = createRig(
    bodyOf({ statureM: measures.statureM, handed: 'right' }),
    clubOf({ ...measures, name: 'self-test', kind: 'iron' }),
  );
  const joints = createJointVector();
  const pose = createPose();
  return postures.flatMap((posture) => {
    JOINTS.forEach(({ id }, at) => {
      joints[at] = posture.joints[id];
    });
    placePose(rig, joints, pose);
    return (Object.keys(POINTS) as (keyof typeof POINTS)[]).map((name) =>
      Math.hypot(...posture[name].map((value, axis) => value - pose[POINTS[name] + axis])),
    );
  });
}

/** Carry of a ball without air against the closed form v^2 sin(2 a) / g, m. */
function compareFlight(): number {
  const [speed, angle, gravity] = [70, rad(12), 9.81];
  const launch: Launch = {
    velocity: [speed * Math.cos(angle), speed * Math.sin(angle), 0],
    spinAxis: [0, 0, 1],
    spinRate: 0,
  };
  const flight = findFlight(launch, { drag: 'none', gravity });
  return 'carryM' in flight ? Math.abs(flight.carryM - (speed ** 2 * Math.sin(2 * angle)) / gravity) : Infinity;
}

/** The documented tolerance of the flight, m. */
const FLIGHT_LIMIT = 0.05;

/** The kernel against numbers that were not computed by it. */
export function runSelfTest(): SelfTest {
  const differences = comparePostures();
  const held = differences.filter((difference) => difference <= LIMIT).length;
  return {
    made: differences.length + 1,
    held: held + (compareFlight() <= FLIGHT_LIMIT ? 1 : 0),
    worst: Math.max(...differences),
  };
}
