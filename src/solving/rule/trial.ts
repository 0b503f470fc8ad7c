import { createRandom } from '../../math/normal';
import { DIALS, STILL, type Movements } from '../../model/movements';
import type { TopSetUp } from '../../model/setUp';
import { readCheckpoints } from '../../reading/checkpoints';
import { withMovements } from '../../reading/swing';
import { DIAL_INDEX, withDials } from '../diagnosis/judged';
import { deliverSwing, type DeliveredSwing, type SwingBase } from '../playOut';
import { dialRanges } from './drawRange';
import { drawTop, playersFor, standOn, type ReferenceBook, type TriedPlayer } from './players';
import { comesTrue, meets, type Look, type Rule, type TrialConditions } from './rule';

/** One swing that a rule is tried on, before its change. Dial values in model units, in the order of `DIALS`. */
export interface TriedSwing {
  readonly player: TriedPlayer;
  readonly top: TopSetUp;
  readonly dials: Float64Array;
}

/**
 * What became of it. `unmet`: the rule does not speak of it. `unread`: a number it asks for is not there, as when a checkpoint is never
 * reached.
 */
type Outcome = 'unmet' | 'unread' | 'held' | 'failed';

/** A rule ready to be tried on any swing. */
export interface Trier {
  readonly rule: Rule;
  /** The swing with this number: the same for the same rule and seed. Undefined where its player has no reference swing. */
  readonly drawn: (number: number) => TriedSwing | undefined;
  readonly tryOut: (tried: TriedSwing) => Tried;
}
/** What came of a swing, and what was seen on it before and after the change, as far as it was looked at. */
interface Tried {
  readonly outcome: Outcome;
  readonly before?: Look;
  readonly after?: Look;
}

/** Players with a top that are drawn from: enough for every shipped one to come with several tops. */
const STANDS = 256;
/** How likely a dial stands at the reference where it may. */
const STILL_SHARE = 0.25;

const mixed = (seed: number, number: number): number => (seed ^ Math.imul(number + 1, 0x9e3779b1)) | 0;

/** Gets a rule ready. The rule has been checked. `book`: where reference swings are kept. */
export function createTrier(rule: Rule, seed: number, conditions: TrialConditions, book: ReferenceBook): Trier {
  const players = playersFor(rule, seed);
  const ranges = dialRanges(rule);
  const tops: TopSetUp[] = [];
  for (let k = 0; k < STANDS; k++) tops.push(drawTop(rule, createRandom(mixed(seed + 1, k))));
  const bases = new Map<string, SwingBase | undefined>();

  const baseOf = ({ player, top }: TriedSwing): SwingBase | undefined => {
    const { handDepth, handHeight, turn, wristSet } = top;
    const key = [player.stature, player.club, player.lag, handDepth, handHeight, turn, wristSet].join();
    if (!bases.has(key)) bases.set(key, standOn(book, player, top, conditions.armAngle));
    return bases.get(key);
  };
  const lookOn = (tried: TriedSwing, dials: Float64Array): Look | undefined => {
    const base = baseOf(tried);
    return base && look(base, withDials(STILL, dials), conditions);
  };
  const changed = (dials: Float64Array): Float64Array => {
    const after = dials.slice();
    for (const { id, by } of rule.change) after[DIAL_INDEX[id]] += by;
    return after;
  };
  return {
    rule,
    drawn(number) {
      const random = createRandom(mixed(seed, number));
      const stand = Math.floor(random() * STANDS);
      const player = players[stand % players.length];
      const dials = Float64Array.from(DIALS, ({ neutral }, i) => {
        const { first, last, step } = ranges[i];
        const [isStill, value] = [random() < STILL_SHARE, (first + Math.floor(random() * (last - first + 1))) * step];
        const mayBeStill = first * step <= neutral + 1e-9 && last * step >= neutral - 1e-9;
        return isStill && mayBeStill ? neutral : value;
      });
      return player && { player, top: tops[stand], dials };
    },
    tryOut(tried) {
      const before = lookOn(tried, tried.dials);
      if (!before) return { outcome: 'unread' };
      const met = all(rule.when, (one) => (one.kind === 'movement' ? true : meets(before, one, conditions.bands)));
      if (!met) return { outcome: met === undefined ? 'unread' : 'unmet', before };
      const after = rule.change.length > 0 ? lookOn(tried, changed(tried.dials)) : before;
      if (!after) return { outcome: 'unread', before };
      const held = all(rule.expect, (one) => comesTrue(before, after, one, conditions.bands));
      return { outcome: held === undefined ? 'unread' : held ? 'held' : 'failed', before, after };
    },
  };
}

/** Whether all are true; undefined where one of them is undefined and none is false. */
function all<T>(parts: readonly T[], holds: (part: T) => boolean | undefined): boolean | undefined {
  let known: boolean | undefined = true;
  for (const part of parts) {
    const one = holds(part);
    if (one === false) return false;
    known = one === undefined ? undefined : known;
  }
  return known;
}

function look(base: SwingBase, movements: Movements, conditions: TrialConditions): Look {
  const swing = withMovements(base.swing, movements);
  let delivered: DeliveredSwing | undefined;
  return {
    base,
    checkpoints: readCheckpoints(swing, conditions.armAngle),
    delivery: () => (delivered ??= deliverSwing(base, swing, conditions)).delivery,
  };
}
