import type { Rad } from '../../math/angle';
import type { ClubId } from '../../model/club';
import type { MovementId } from '../../model/movements';
import type { TopSetUp } from '../../model/setUp';
import { CHECKPOINTS, type CheckpointId } from '../../reading/checkpointTable';
import { isReached, type ReadingId } from '../../reading/checkpoints';
import type { DeliveryRule } from '../../reading/delivery/delivery';
import { judge, judgedReading, type Bands, type Verdict } from '../../reading/verdicts';
import type { BallReading } from '../diagnosis/question';
import type { DeliveredSwing, SwingBase } from '../playOut';

/** Values between two others, neither included. Either may be infinite. In the unit of what it is about. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Values from one to another, both included. */
export type Range = Span;

/** A number of a swing: at a checkpoint, or at the ball. Radians, metres, m/s; senses as in `Readings` and `Delivery`. */
export type Quantity =
  | { readonly at: CheckpointId; readonly reading: ReadingId | 'impliedPath' }
  | { readonly at: 'ball'; readonly reading: BallReading };

/** Whom a rule is about; what is absent is anybody's. Metres and radians. */
interface Who {
  readonly stature?: Range;
  readonly clubs?: readonly ClubId[];
  /** Makes no difference: the left-handed player is the mirror image. */
  readonly handed?: 'right' | 'left';
  /** Angle between lead arm and shaft that the reference swing is asked for. Absent: as it comes. */
  readonly lag?: Range;
  readonly top?: { readonly [field in keyof TopSetUp]?: Range };
}

/** A verdict that a swing has at a checkpoint. */
interface HasVerdict {
  readonly kind: 'verdict';
  readonly at: CheckpointId;
  readonly verdict: Exclude<Verdict, 'missing'>;
}
/** A number of a swing lies between two others. */
interface HasReading {
  readonly kind: 'reading';
  readonly of: Quantity;
  readonly between: Span;
}

/** When a rule speaks. */
export type Condition =
  | HasVerdict
  | HasReading
  | {
      readonly kind: 'movement';
      readonly id: MovementId;
      readonly between: Span;
    };

/** What the player changes, model units. */
export interface Change {
  readonly id: MovementId;
  readonly by: number;
}

/** What a rule claims of the swing after the change. */
export type Claim =
  | HasVerdict
  | HasReading
  /** Moves at least so far, to the side of its sign. */
  | { readonly kind: 'moves'; readonly of: Quantity; readonly by: number }
  /** Stays as it was, give or take. */
  | { readonly kind: 'stays'; readonly of: Quantity; readonly within: number };

/** A rule of the trade: for whom, when, what to do, and what is to come of it. All conditions and all claims together. */
export interface Rule {
  readonly who: Who;
  readonly when: readonly Condition[];
  readonly change: readonly Change[];
  readonly expect: readonly Claim[];
}

/** How swings are read and delivered while a rule is tried. */
export interface TrialConditions {
  readonly bands: Bands;
  readonly armAngle: Rad;
  readonly rule?: DeliveryRule;
  readonly faceReturned?: number;
}

/** What a rule asks of one swing, before the change or after. Readings come from `readCheckpoints`; the ball only where it is asked. */
export interface Look {
  readonly base: SwingBase;
  readonly checkpoints: DeliveredSwing['checkpoints'];
  readonly delivery: () => DeliveredSwing['delivery'];
}

/** The number, in its model unit; NaN where the checkpoint or the ball is not reached. */
function readQuantity({ base, checkpoints, delivery }: Look, of: Quantity): number {
  if (of.at === 'ball') {
    const struck = delivery();
    return 'missing' in struck ? NaN : struck[of.reading];
  }
  const read = checkpoints[of.at];
  if (!isReached(read)) return NaN;
  if (of.reading !== 'impliedPath') return read.readings[of.reading];
  const zero = base.checkpoints[of.at];
  if (!isReached(zero) || !base.strike) return NaN;
  return base.strike.path + (read.readings.planeDirection - zero.readings.planeDirection);
}

/** Whether a verdict or a number is as it is said; undefined where it cannot be read. */
export function meets(look: Look, condition: HasVerdict | HasReading, bands: Bands): boolean | undefined {
  if (condition.kind === 'verdict') {
    const read = look.checkpoints[condition.at];
    if (!isReached(read)) return undefined;
    return judge(judgedReading(condition.at, read), bands[condition.at]) === condition.verdict;
  }
  const value = readQuantity(look, condition.of);
  return Number.isNaN(value) ? undefined : isBetween(condition.between, value);
}

const isBetween = ({ low, high }: Span, value: number): boolean => value > low && value < high;

/** Whether a claim comes true from `before` to `after`; undefined where it cannot be read. */
export function comesTrue(before: Look, after: Look, claim: Claim, bands: Bands): boolean | undefined {
  if (claim.kind === 'verdict' || claim.kind === 'reading') return meets(after, claim, bands);
  const moved = readQuantity(after, claim.of) - readQuantity(before, claim.of);
  if (Number.isNaN(moved)) return undefined;
  return claim.kind === 'stays'
    ? Math.abs(moved) <= claim.within
    : claim.by > 0
      ? moved >= claim.by
      : moved <= claim.by;
}

/** The reading that a verdict at a checkpoint hangs on, as a number of a rule. */
export const judgedQuantity = (at: CheckpointId): Quantity => ({ at, reading: CHECKPOINTS[at].judged });

/** The span of values that have a verdict; the edges of a band belong to it, which a span cannot say: nearly. */
export function spanOfVerdict({ at, verdict }: HasVerdict, bands: Bands): Span {
  const { low, high } = bands[at];
  if (verdict === 'steep') return { low: high, high: Infinity };
  if (verdict === 'shallow') return { low: -Infinity, high: low };
  return { low, high };
}
