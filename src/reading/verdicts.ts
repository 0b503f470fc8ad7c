import type { CheckpointId, Checkpoint, Reached } from './checkpoints';
import { isReached } from './checkpoints';

/** A band of a reading, metres. */
export interface Band {
  readonly low: number;
  readonly high: number;
}
export interface Bands {
  /** Of `bicepGap` at lead arm parallel. */
  readonly leadArmParallel: Band;
  /** Of `headDepth` at shaft parallel. */
  readonly shaftParallel: Band;
}

/**
 * Common practice, no published source: the middle third of an upper arm 9 to 10 cm thick, and a head that covers the hands or
 * lies slightly behind them. Editable, shown with the number and never alone.
 */
export const DEFAULT_BANDS: Bands = {
  leadArmParallel: { low: -0.015, high: 0.015 },
  shaftParallel: { low: -0.1, high: 0.02 },
};

/** Steep: above the band. Shallow: below it (over-shallow at lead arm parallel, too far behind at shaft parallel). */
export type Verdict = 'steep' | 'onPlane' | 'shallow' | 'missing';

/** The reading the verdict at a checkpoint hangs on, metres. */
export const judgedReading = (id: CheckpointId, at: Reached): number =>
  id === 'leadArmParallel' ? at.readings.bicepGap : at.readings.headDepth;

/** Verdict of a reading (m) against a band; the edges belong to the band. */
export const judge = (value: number, band: Band): Verdict =>
  value > band.high ? 'steep' : value < band.low ? 'shallow' : 'onPlane';

/** Verdict at a checkpoint; `missing` when it was never reached. */
export const verdictAt = (id: CheckpointId, checkpoint: Checkpoint, bands: Bands = DEFAULT_BANDS): Verdict =>
  isReached(checkpoint) ? judge(judgedReading(id, checkpoint), bands[id]) : 'missing';

/** Words of the verdict at an edge, in the trade's terms. */
export const VERDICT_WORDS = {
  leadArmParallel: { steep: 'steep', onPlane: 'on plane', shallow: 'over-shallow', missing: 'not reached' },
  shaftParallel: { steep: 'in front', onPlane: 'on plane', shallow: 'too far behind', missing: 'not reached' },
} as const satisfies Record<CheckpointId, Record<Verdict, string>>;
