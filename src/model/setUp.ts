import type { Rad } from '../math/angle';
import { solveLeastSquares } from '../math/leastSquares';
import { placePose, type Rig } from './chain';
import { AT, createPose } from './pose';
import { createJointVector, J, JOINT_COUNT } from './joints';
import { keyAt, type KeyId, type ReferenceSwing } from './keys';

/** The top of the backswing as changes on the reference. Metres and radians; nothing is changed by zeros. */
export interface TopSetUp {
  /** + hands farther from the ball line, deeper behind the player. */
  readonly handDepth: number;
  /** + hands higher. */
  readonly handHeight: number;
  /** + pelvis and chest turned farther away from the target. */
  readonly turn: Rad;
  /** + wrist cocked more. */
  readonly wristSet: Rad;
}

/**
 * How much of a change at the top stands at the neighbouring keys: on the way up, and still coming down. From shaft parallel on the
 * swing is the reference again. A modelling choice, said so on the model page.
 */
const SHARES: readonly (readonly [KeyId, number])[] = [
  ['midBackswing', 0.5],
  ['top', 1],
  ['leadArmParallel', 0.4],
];

export interface SetUpResult {
  readonly reference: ReferenceSwing;
  /** How far the hands stay from where they were asked to be at the top, m. */
  readonly shortfall: number;
}

const joints = createJointVector();
const pose = createPose();
/** A hand position that was asked for counts this much more than one that was not. */
const ASKED = 5;
/** Weight of the arm's own change against a metre of hand position: only there to keep a stretched arm from swinging about. */
const CALM = 0.002;
const LARGEST_CHANGE = 0.8;

/**
 * The reference with another top of the backswing. Turn and wrist set are added to their joints and carry the hands along;
 * hand depth and height are then met by lead-arm adduction and elevation, as nearly as the arm's length allows.
 */
export function applyTopSetUp(rig: Rig, reference: ReferenceSwing, setUp: TopSetUp): SetUpResult {
  const { handDepth, handHeight, turn, wristSet } = setUp;
  if (handDepth === 0 && handHeight === 0 && turn === 0 && wristSet === 0) return { reference, shortfall: 0 };
  const change = createJointVector();
  change[J.thoraxTurn] = 0 - turn;
  change[J.pelvisTurn] = 0 - turn;
  change[J.leadWristRadial] = wristSet;
  let shortfall = 0;
  if (handDepth !== 0 || handHeight !== 0) shortfall = moveHands(rig, reference, change, handHeight, -handDepth);
  const values = reference.values.slice();
  for (const [key, share] of SHARES) {
    for (let j = 0; j < JOINT_COUNT; j++) values[keyAt(key, j)] += share * change[j];
  }
  return { reference: { ...reference, values }, shortfall };
}

/** Height and depth (m) of the lead grip at the top with `change` on the joints. */
function handsAtTop(rig: Rig, reference: ReferenceSwing, change: Float64Array): readonly [number, number] {
  for (let j = 0; j < JOINT_COUNT; j++) joints[j] = reference.values[keyAt('top', j)] + change[j];
  placePose(rig, joints, pose);
  return [pose[AT.leadGrip + 1], pose[AT.leadGrip + 2]];
}

/** Puts into `change` the adduction and elevation that move the hands by `dy` up and `dz` to the ball line. Returns what is missing, m. */
function moveHands(rig: Rig, reference: ReferenceSwing, change: Float64Array, dy: number, dz: number): number {
  const [y, z] = handsAtTop(rig, reference, change);
  const trial = change.slice();
  const place = (x: Float64Array): readonly [number, number] => {
    trial[J.leadArmAdduction] = x[0];
    trial[J.leadArmElevation] = x[1];
    const [y1, z1] = handsAtTop(rig, reference, trial);
    return [y1 - y - dy, z1 - z - dz];
  };
  const arm = new Float64Array(2);
  const residuals = (x: Float64Array, out: Float64Array): void => {
    const [ey, ez] = place(x);
    out[0] = ey * (dy === 0 ? 1 : ASKED);
    out[1] = ez * (dz === 0 ? 1 : ASKED);
    out[2] = x[0] * CALM;
    out[3] = x[1] * CALM;
  };
  const edge = [LARGEST_CHANGE, LARGEST_CHANGE];
  const lower = edge.map((e) => -e);
  solveLeastSquares(residuals, 4, arm, { lower, upper: edge, difference: 1e-6, maxSteps: 40, tolerance: 1e-9 });
  change[J.leadArmAdduction] = arm[0];
  change[J.leadArmElevation] = arm[1];
  const [ey, ez] = place(arm);
  return Math.hypot(dy === 0 ? 0 : ey, dz === 0 ? 0 : ez);
}
