import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type CheckpointId, type Checkpoints } from '../../reading/checkpoints';
import { judge, judgedReading, type Band, type Bands, type Verdict } from '../../reading/verdicts';

/**
 * A verdict on screen turns only when its reading has passed the edge by this much, m: far above what computing adds, below
 * what a plan keeps from the edge and what any number on screen shows.
 */
export const HYSTERESIS = 0.00005;

interface Held {
  readonly band: Band;
  readonly verdict: Verdict;
}
const held: { [id in CheckpointId]?: Held } = {};

/** The band a reading is judged by while `before` stands: its near edge gives way by `STEADY`. */
function giveWay({ low, high }: Band, before: Verdict): Band {
  return {
    low: before === 'shallow' ? low + HYSTERESIS : low - HYSTERESIS,
    high: before === 'steep' ? high - HYSTERESIS : high + HYSTERESIS,
  };
}

/**
 * The bands that the screens judge by: the coach's own, except while a reading lies within a hair of an edge, where the
 * verdict that stood before still stands. The pure verdict stays exact; only what is shown does not flicker.
 */
export function bandsWithHysteresis(bands: Bands, checkpoints: Checkpoints): Bands {
  let shown = bands;
  for (const id of CHECKPOINT_IDS) {
    const checkpoint = checkpoints[id];
    const band = bands[id];
    if (!isReached(checkpoint)) {
      delete held[id];
      continue;
    }
    const value = judgedReading(id, checkpoint);
    const last = held[id];
    let verdict = judge(value, band);
    if (last && last.verdict !== verdict && last.band.low === band.low && last.band.high === band.high) {
      const wide = giveWay(band, last.verdict);
      verdict = judge(value, wide);
      if (verdict === last.verdict) shown = { ...shown, [id]: wide };
    }
    held[id] = { band, verdict };
  }
  return shown;
}
