import type { Rad } from '../../math/angle';
import { rad } from '../../math/angle';
import { DIALS, type MovementId } from '../../model/movements';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, readCheckpoints, type CheckpointId, type Checkpoints } from '../../reading/checkpoints';
import { withMovements, type Swing } from '../../reading/swing';
import { HALF_RANGE } from './judged';
import { score } from './match';
import type { StepExplanation } from './matchOnSteps';

/** What a coach can look at besides the two marks, with the unit its difference is given in: rad, or m for the last three. */
const TELLS = [
  'leadWristFlexion',
  'trailSideBend',
  'thoraxTurn',
  'pelvisTurn',
  'pelvisShift',
  'handHeight',
  'handDepth',
] as const;
export type TellId = (typeof TELLS)[number];

/** How one cause looks beside the next: at this checkpoint `what` is larger by `more`, in the unit and sense of that reading or dial. */
export interface Tell {
  readonly at: CheckpointId;
  readonly what: TellId;
  readonly more: number;
}

/** A cause of what was seen. */
export interface Cause extends StepExplanation {
  /** Every movement stays inside its usual range. */
  readonly isUsual: boolean;
  /** What to look at to tell it from the next in the list; absent at the end, and where nothing can be seen. */
  readonly tell?: Tell;
}

/** Two settings nearer to each other than this, in efforts, are one to the eye (our choice): 4 deg of wrist, 3 % of turn. */
const TWINS = 0.13;

/** What an eye sees on a film without a ruler (our choice): 6 deg of wrist or turn, 4 deg of side bend, 3 cm. */
const VISIBLE: Readonly<Record<TellId, number>> = {
  leadWristFlexion: rad(6),
  trailSideBend: rad(4),
  thoraxTurn: rad(6),
  pelvisTurn: rad(6),
  pelvisShift: 0.03,
  handHeight: 0.03,
  handDepth: 0.03,
};

/**
 * Explanations as a coach goes through them: what fits before what does not, and among either what stays inside the usual ranges first, then the
 * more likely. Near twins, which no eye tells apart, are one: the likelier. Each says what else to look at to tell it from the next. `swing`:
 * player, club and reference; its movements do not matter.
 */
export function rankCauses(explanations: readonly StepExplanation[], swing: Swing, armAngle: Rad): readonly Cause[] {
  const read = explanations.map((one) => ({
    one,
    checkpoints: readCheckpoints(withMovements(swing, one.movements), armAngle),
  }));
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

/** An explanation with its swing read in full. */
interface Looked {
  readonly one: StepExplanation;
  readonly checkpoints: Checkpoints;
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

const isDial = (id: TellId): id is Extract<TellId, MovementId> => DIALS.some((dial) => dial.id === id);

/** What an eye sees best of the difference of two; undefined where it sees nothing. */
function findTell(a: Looked, b: Looked): Tell | undefined {
  const tells = CHECKPOINT_IDS.flatMap((at) => {
    const [here, there] = [a.checkpoints[at], b.checkpoints[at]];
    if (!isReached(here) || !isReached(there)) return [];
    return TELLS.map((what): Tell => {
      const more = isDial(what)
        ? a.one.movements[what] - b.one.movements[what]
        : here.readings[what] - there.readings[what];
      return { at, what, more };
    });
  });
  const clearness = ({ what, more }: Tell): number => Math.abs(more) / VISIBLE[what];
  const [clearest] = tells.toSorted((p, q) => clearness(q) - clearness(p));
  return clearest && clearness(clearest) >= 1 ? clearest : undefined;
}
