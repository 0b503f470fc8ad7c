import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type CheckpointId, type Checkpoints } from '../../reading/checkpoints';
import { judge, judgedReading, type Band, type Bands, type Verdict } from '../../reading/verdicts';

/**
 * A verdict on screen turns only when its reading has passed the edge by this much, m: far above what computing adds, below
 * what a plan keeps from the edge and what any number on screen shows.
 */
export const HYSTERESIS = 0.00005;

/** A verdict that stands on screen, and the band it was given by. */
interface Standing {
  readonly band: Band;
  readonly verdict: Verdict;
}
/** The verdicts that stand on screen at each checkpoint. */
export type StandingVerdicts = { readonly [id in CheckpointId]?: Standing | undefined };

/** Nothing has been judged yet. */
export const NO_VERDICTS: Readonly<StandingVerdicts> = {};

/** The band a reading is judged by while `before` stands: its near edge gives way by `HYSTERESIS`. */
function giveWay({ low, high }: Band, before: Verdict): Band {
  return {
    low: before === 'shallow' ? low + HYSTERESIS : low - HYSTERESIS,
    high: before === 'steep' ? high - HYSTERESIS : high + HYSTERESIS,
  };
}

/**
 * The bands that the screens judge by: the coach's own, except while a reading lies within a hair of an edge, where the
 * verdict that stood before still stands. The pure verdict stays exact; only what is shown does not flicker.
 * `verdicts` stand afterwards: the same object while none has turned. Asking again with them gives the same bands.
 */
export function bandsWithHysteresis(
  bands: Bands,
  checkpoints: Checkpoints,
  before: StandingVerdicts,
): { readonly bands: Bands; readonly verdicts: StandingVerdicts } {
  let shown = bands;
  let verdicts = before;
  for (const id of CHECKPOINT_IDS) {
    const checkpoint = checkpoints[id];
    const band = bands[id];
    const last = before[id];
    if (!isReached(checkpoint)) {
      if (last) verdicts = { ...verdicts, [id]: undefined };
      continue;
    }
    const value = judgedReading(id, checkpoint);
    const isSameBand = last?.band.low === band.low && last.band.high === band.high;
    let verdict = judge(value, band);
    if (last && isSameBand && last.verdict !== verdict) {
      const wide = giveWay(band, last.verdict);
      verdict = judge(value, wide);
      if (verdict === last.verdict) shown = { ...shown, [id]: wide };
    }
    if (!isSameBand || last?.verdict !== verdict) verdicts = { ...verdicts, [id]: { band, verdict } };
  }
  return { bands: shown, verdicts };
}
