import { CHECKPOINTS } from './checkpointTable';
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

/** What is common practice; sources beside the table. */
export const DEFAULT_BANDS: Bands = {
  leadArmParallel: CHECKPOINTS.leadArmParallel.band,
  shaftParallel: CHECKPOINTS.shaftParallel.band,
};

/** Steep: above the band. Shallow: below it (over-shallow at lead arm parallel, too far behind at shaft parallel). */
export type Verdict = 'steep' | 'onPlane' | 'shallow' | 'missing';

/** The reading the verdict at a checkpoint hangs on, metres. */
export const judgedReading = (id: CheckpointId, at: Reached): number => at.readings[CHECKPOINTS[id].judged];

/** Verdict of a reading (m) against a band; the edges belong to the band. */
export const judge = (value: number, band: Band): Verdict =>
  value > band.high ? 'steep' : value < band.low ? 'shallow' : 'onPlane';

/** Verdict at a checkpoint; `missing` when it was never reached. */
export const verdictAt = (id: CheckpointId, checkpoint: Checkpoint, bands: Bands = DEFAULT_BANDS): Verdict =>
  isReached(checkpoint) ? judge(judgedReading(id, checkpoint), bands[id]) : 'missing';

/** Words of a verdict at an edge. */
export const verdictWords = (id: CheckpointId, verdict: Verdict): string => CHECKPOINTS[id].verdicts[verdict];
