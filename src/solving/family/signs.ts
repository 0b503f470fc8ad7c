import { rad } from '../../math/angle';
import { AT } from '../../model/pose';
import { createJointVector, J, type JointVector } from '../../model/joints';
import type { CheckpointId } from '../../reading/checkpointTable';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type Checkpoints, type Reached } from '../../reading/checkpoints';
import { swingJoints, type Swing } from '../../reading/swing';
import { deliverSwing, type DeliveryConditions, type SwingBase } from '../playOut';

/** From where a sign is seen. */
type SignView = 'downTheLine' | 'faceOn' | 'fromAbove' | 'ballFlight';

/** What a coach can see on a player at a checkpoint, or on the ball's start and curve. */
interface Sign {
  readonly id: SignId;
  readonly view: SignView;
  readonly kind: 'angle' | 'length';
  /**
   * The difference that counts as one, rad or m: about what a coach tells apart in a still picture. A choice of ours, without a source;
   * it only ranks the signs.
   */
  readonly noticeable: number;
}

const ANGLE = rad(5);
const LENGTH = 0.03;

/** The judged readings are not among them: in one picture they are the same. Senses as in the joints and readings of these names. */
const SIGNS = [
  { id: 'chestTurn', view: 'faceOn', kind: 'angle', noticeable: ANGLE },
  { id: 'pelvisTurn', view: 'faceOn', kind: 'angle', noticeable: ANGLE },
  { id: 'trunkLean', view: 'faceOn', kind: 'angle', noticeable: ANGLE },
  { id: 'pelvisShift', view: 'faceOn', kind: 'length', noticeable: LENGTH },
  { id: 'handHeight', view: 'faceOn', kind: 'length', noticeable: LENGTH },
  { id: 'handsToTarget', view: 'faceOn', kind: 'length', noticeable: LENGTH },
  { id: 'armToShaft', view: 'faceOn', kind: 'angle', noticeable: ANGLE },
  { id: 'trunkBend', view: 'downTheLine', kind: 'angle', noticeable: ANGLE },
  { id: 'wristFlexion', view: 'downTheLine', kind: 'angle', noticeable: ANGLE },
  { id: 'faceToVertical', view: 'downTheLine', kind: 'angle', noticeable: ANGLE },
  { id: 'trailElbowDepth', view: 'downTheLine', kind: 'length', noticeable: LENGTH },
  { id: 'handDepth', view: 'fromAbove', kind: 'length', noticeable: LENGTH },
] as const satisfies readonly (Omit<Sign, 'id'> & { readonly id: string })[];

/** Signs at the ball; a start line or a curve that differs by less is lost among one player's own shots. Our choice. */
const BALL_SIGNS = [
  { id: 'path', view: 'ballFlight', kind: 'angle', noticeable: rad(3) },
  { id: 'face', view: 'ballFlight', kind: 'angle', noticeable: rad(3) },
] as const satisfies readonly (Omit<Sign, 'id'> & { readonly id: string })[];

type SignId = (typeof SIGNS)[number]['id'] | (typeof BALL_SIGNS)[number]['id'];

/** What can be told apart on two swings. */
export interface Difference {
  readonly sign: Sign;
  readonly at: CheckpointId | 'ball';
  /** Second less first, rad or m; sense as in the sign. */
  readonly change: number;
  /** The change over what counts as noticeable, without sign. */
  readonly size: number;
}

const joints: JointVector = createJointVector();

function readSign(id: (typeof SIGNS)[number]['id'], { pose, readings }: Reached, q: JointVector): number {
  switch (id) {
    case 'chestTurn':
      return readings.thoraxTurn;
    case 'pelvisTurn':
      return readings.pelvisTurn;
    case 'trunkLean':
      return q[J.trunkTilt];
    case 'trunkBend':
      return q[J.trunkBend];
    case 'wristFlexion':
      return q[J.leadWristFlexion];
    case 'pelvisShift':
      return pose[AT.pelvis];
    case 'handsToTarget':
      return pose[AT.leadGrip];
    case 'trailElbowDepth':
      return pose[AT.trailElbow + 2];
    case 'handHeight':
    case 'armToShaft':
    case 'faceToVertical':
    case 'handDepth':
      return readings[id];
  }
}

/** What is seen on the player alone, at both checkpoints: the first part of what `readSigns` answers. */
export function readBodySigns(checkpoints: Checkpoints, swing: Swing): Float64Array {
  const seen: number[] = [];
  for (const at of CHECKPOINT_IDS) {
    const reached = checkpoints[at];
    if (isReached(reached)) swingJoints(swing, reached.t, joints);
    for (const { id } of SIGNS) seen.push(isReached(reached) ? readSign(id, reached, joints) : NaN);
  }
  return Float64Array.from(seen);
}

const PLACES: readonly { readonly at: CheckpointId | 'ball'; readonly signs: readonly Sign[] }[] = [
  ...CHECKPOINT_IDS.map((at) => ({ at, signs: SIGNS })),
  { at: 'ball', signs: BALL_SIGNS },
];

/**
 * What is seen on one swing: a number for every sign at every place, in an order of its own; NaN where the place is not reached. Rad and m.
 */
export function readSigns(base: SwingBase, dialled: Swing, conditions: DeliveryConditions = {}): Float64Array {
  const { checkpoints, delivery } = deliverSwing(base, dialled, conditions);
  const seen = Array.from(readBodySigns(checkpoints, dialled));
  for (const { id } of BALL_SIGNS) seen.push('missing' in delivery ? NaN : delivery[id]);
  return Float64Array.from(seen);
}

/**
 * Where two swings of one player differ, by what `readSigns` saw on each, what is plainest to see first. Searched over all signs at both
 * checkpoints and at the ball; what only one of them has is left out. Of two as plain as each other the earlier place comes first.
 */
export function findDifferences(first: ArrayLike<number>, second: ArrayLike<number>): readonly Difference[] {
  return PLACES.flatMap(({ at, signs }) => signs.map((sign) => ({ at, sign })))
    .map(({ at, sign }, i): Difference => {
      const change = second[i] - first[i];
      return { sign, at, change, size: Math.abs(change) / sign.noticeable };
    })
    .filter(({ size }) => Number.isFinite(size))
    .toSorted((one, other) => other.size - one.size);
}
