import type { Rad } from '../../math/angle';
import { DIALS } from '../../model/movements';
import { readCheckpoints } from '../../reading/checkpoints';
import { withMovements, type Swing } from '../../reading/swing';
import { findDifferences, readBodySigns, type Difference } from '../family/signs';
import { HALF_RANGE } from './judged';
import { score } from './match';
import type { StepExplanation } from './matchOnSteps';

/** A cause of what was seen. */
export interface Cause extends StepExplanation {
  /** Every movement stays inside its usual range. */
  readonly isUsual: boolean;
  /** What to look at to tell it from the next in the list: this less the next. Absent at the end, and where nothing can be seen. */
  readonly tell?: Difference;
}

/** Two settings nearer to each other than this, in efforts, are one to the eye (our choice): 4 deg of wrist, 3 % of turn. */
const TWINS = 0.13;

/**
 * Explanations as a coach goes through them: what fits before what does not, and among either what stays inside the usual ranges first, then the
 * more likely. Near twins, which no eye tells apart, are one: the likelier. Each says what else to look at to tell it from the next. `swing`:
 * player, club and reference; its movements do not matter.
 */
export function rankCauses(explanations: readonly StepExplanation[], swing: Swing, armAngle: Rad): readonly Cause[] {
  const read = explanations.map((one): Looked => {
    const dialled = withMovements(swing, one.movements);
    return { one, signs: readBodySigns(readCheckpoints(dialled, armAngle), dialled) };
  });
  const kept: Looked[] = [];
  for (const looked of read.toSorted(
    (a, b) => score(a.one) - score(b.one) || a.one.dials.length - b.one.dials.length,
  )) {
    if (!kept.some((other) => areTwins(looked, other))) kept.push(looked);
  }
  const group = ({ one }: Looked): number => (one.status === 'fits' ? 0 : 2) + (isUsual(one) ? 0 : 1);
  const ranked = kept.toSorted((a, b) => group(a) - group(b));
  return ranked.map((looked, i): Cause => {
    const next = ranked[i + 1];
    const tell = next && findTell(looked, next);
    return { ...looked.one, isUsual: isUsual(looked.one), ...(tell && { tell }) };
  });
}

/** An explanation with what a coach can see on the player. */
interface Looked {
  readonly one: StepExplanation;
  readonly signs: Float64Array;
}

/** What fits is never lost to what does not. */
const areTwins = (a: Looked, b: Looked): boolean =>
  a.one.status === b.one.status && (apart(a.one, b.one) < TWINS || findTell(a, b) === undefined);

const isUsual = ({ movements }: StepExplanation): boolean =>
  DIALS.every(({ id, usualMin, usualMax, step }) => {
    const slack = step / 100;
    return movements[id] >= usualMin - slack && movements[id] <= usualMax + slack;
  });

const apart = (a: StepExplanation, b: StepExplanation): number =>
  Math.hypot(...DIALS.map(({ id }, i) => (a.movements[id] - b.movements[id]) / HALF_RANGE[i]));

/** What an eye sees best of the difference of two, the second taken from the first; undefined where it sees nothing. */
function findTell(a: Looked, b: Looked): Difference | undefined {
  const [plainest] = findDifferences(b.signs, a.signs);
  return plainest && plainest.size >= 1 ? plainest : undefined;
}
