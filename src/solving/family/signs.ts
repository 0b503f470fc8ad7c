import { rad } from '../../math/angle';
import { AT } from '../../model/pose';
import { createJointVector, J, type JointVector } from '../../model/joints';
import type { CheckpointId } from '../../reading/checkpointTable';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type Reached } from '../../reading/checkpoints';
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

/** What is seen on one swing: a number for each sign at each checkpoint it reaches, and for those of the ball where it is struck. */
function readSigns(base: SwingBase, dialled: Swing, conditions: DeliveryConditions): Map<string, number> {
  const { checkpoints, delivery } = deliverSwing(base, dialled, conditions);
  const seen = new Map<string, number>();
  for (const at of CHECKPOINT_IDS) {
    const reached = checkpoints[at];
    if (!isReached(reached)) continue;
    swingJoints(dialled, reached.t, joints);
    for (const { id } of SIGNS) seen.set(`${at} ${id}`, readSign(id, reached, joints));
  }
  if (!('missing' in delivery)) for (const { id } of BALL_SIGNS) seen.set(`ball ${id}`, delivery[id]);
  return seen;
}

const PLACES: readonly { readonly at: CheckpointId | 'ball'; readonly signs: readonly Sign[] }[] = [
  ...CHECKPOINT_IDS.map((at) => ({ at, signs: SIGNS })),
  { at: 'ball', signs: BALL_SIGNS },
];

/**
 * Where two swings of one player differ, what is plainest to see first. Searched over all signs at both checkpoints and at the ball;
 * what only one of them has is left out. Of two signs as plain as each other the earlier checkpoint and the earlier sign comes first.
 */
export function findDifferences(
  base: SwingBase,
  first: Swing,
  second: Swing,
  conditions: DeliveryConditions = {},
): readonly Difference[] {
  const [a, b] = [first, second].map((swing) => readSigns(base, swing, conditions));
  return PLACES.flatMap(({ at, signs }) =>
    signs.flatMap((sign): Difference[] => {
      const [from, to] = [a.get(`${at} ${sign.id}`), b.get(`${at} ${sign.id}`)];
      if (from === undefined || to === undefined || !Number.isFinite(to - from)) return [];
      return [{ sign, at, change: to - from, size: Math.abs(to - from) / sign.noticeable }];
    }),
  ).toSorted((one, other) => other.size - one.size);
}
