import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { createNormal, createRandom, normalShareBelow } from '../../math/normal';
import { SetupError } from '../../model/body';
import type { CheckpointId } from '../../reading/checkpoints';
import { judge, type Band, type Bands, type Verdict } from '../../reading/verdicts';

/**
 * What a coach read off a real player, m, with his own give or take. The give or take counts as two standard deviations of a
 * normal error: in 95 of 100 such readings the truth lies within it.
 */
export interface Sighting {
  readonly value: number;
  readonly plusMinus: number;
}
/** Bicep gap at lead arm parallel and head depth at shaft parallel, each as far as it was seen. */
export type Sightings = { readonly [id in CheckpointId]?: Sighting };

/** Standard deviations in a coach's give or take. */
export const SPREADS = 2;

/** In what share, 0 to 1, of the give or take each verdict stands. */
export interface VerdictShare {
  /** The verdict of the value as it was read. */
  readonly verdict: Exclude<Verdict, 'missing'>;
  /** Share in which that verdict stands. */
  readonly share: number;
  /** Share of every verdict; they sum to 1. */
  readonly shares: Readonly<Record<'steep' | 'onPlane' | 'shallow', number>>;
}

/** Share, 0 to 1, of readings `value` (m, with `plusMinus`) in which the truth lies in the band. Exact, by the normal distribution. */
export function shareInBand({ value, plusMinus }: Sighting, band: Band): number {
  const deviation = plusMinus / SPREADS;
  if (deviation === 0) return judge(value, band) === 'onPlane' ? 1 : 0;
  return Math.max(
    0,
    normalShareBelow((band.high - value) / deviation) - normalShareBelow((band.low - value) / deviation),
  );
}

/** The verdict of a sighting, and the share of the give or take in which it stands. */
export function findVerdictShare(sighting: Sighting, band: Band): VerdictShare {
  const { value, plusMinus } = sighting;
  const deviation = plusMinus / SPREADS;
  const verdict = judge(value, band) as VerdictShare['verdict'];
  const certain = { steep: 0, onPlane: 0, shallow: 0, [verdict]: 1 };
  const shares =
    deviation === 0
      ? certain
      : {
          steep: normalShareBelow((value - band.high) / deviation),
          onPlane: shareInBand(sighting, band),
          shallow: normalShareBelow((band.low - value) / deviation),
        };
  return { verdict, share: shares[verdict], shares };
}

/** The same for every checkpoint that was seen. */
export function findVerdictShares(seen: Sightings, bands: Bands): { readonly [id in CheckpointId]?: VerdictShare } {
  checkSightings(seen);
  const shares: { [id in CheckpointId]?: VerdictShare } = {};
  for (const id of CHECKPOINT_IDS) {
    const sighting = seen[id];
    if (sighting) shares[id] = findVerdictShare(sighting, bands[id]);
  }
  return shares;
}

/**
 * Values, m, that a sighting could as well have been: `count` draws of its normal distribution, for the cloud on the plate.
 * The same seed draws the same cloud.
 */
export function drawCloud({ value, plusMinus }: Sighting, count: number, seed: number): Float64Array {
  const normal = createNormal(createRandom(seed));
  return Float64Array.from({ length: count }, () => value + (plusMinus / SPREADS) * normal());
}

/** Throws `SetupError` when nothing was seen, or a sighting has no number or no positive give or take. */
export function checkSightings(seen: Sightings): void {
  if (CHECKPOINT_IDS.every((id) => !seen[id])) {
    throw new SetupError('seen', 'Nothing was marked. Mark the shaft or the head at a checkpoint.');
  }
  for (const id of CHECKPOINT_IDS) {
    const sighting = seen[id];
    if (!sighting) continue;
    if (!Number.isFinite(sighting.value))
      throw new SetupError(`seen.${id}`, 'What was seen is no number. Enter it in cm.');
    if (!(Number.isFinite(sighting.plusMinus) && sighting.plusMinus > 0)) {
      throw new SetupError(`seen.${id}`, 'The give or take must be above zero. Enter it in cm.');
    }
  }
}
