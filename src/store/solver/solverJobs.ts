import { SetupError } from '../../model/body';
import type { Movements } from '../../model/movements';
import type { Swing } from '../../reading/swing';
import type { Bands } from '../../reading/verdicts';
import {
  corridorRegions,
  corridorRows,
  type Corridor,
  type CorridorQuestion,
  type CorridorRegions,
} from '../../solving/diagnosis/corridor';
import type { Sightings } from '../../solving/diagnosis/sightingHold';
import type { Match } from '../../solving/diagnosis/match';
import { matchOnSteps } from './snapMatch';
import { planFor, type PlanAnswer, type PlanJob } from './planning';

/** A map of two movements; coarse first, then fine. */
export interface MapJob {
  readonly kind: 'map';
  readonly swing: Swing;
  readonly x: CorridorQuestion['x'];
  readonly y: CorridorQuestion['y'];
  readonly bands: Bands;
  readonly armAngle: number;
}
/** A map that nobody looks at: afterwards the model runs at its full pace, and the first real answer comes as fast as any. */
export interface WarmJob extends Omit<MapJob, 'kind'> {
  readonly kind: 'warm';
}
export interface MatchJob {
  readonly kind: 'match';
  readonly swing: Swing;
  readonly from: Movements;
  readonly seen: Sightings;
  readonly bands: Bands;
  readonly armAngle: number;
}
export type Job = MapJob | PlanJob | MatchJob | WarmJob;

export interface MapAnswer {
  readonly kind: 'map';
  readonly corridor: Corridor;
  /** Its outlines, for the bands of the job. */
  readonly regions: CorridorRegions;
  readonly bands: Bands;
  readonly isFine: boolean;
}
export interface MatchAnswer extends Match {
  readonly kind: 'match';
}
/** What was asked cannot be answered: why, in words. */
export interface Refusal {
  readonly kind: 'refused';
  readonly message: string;
}
export type Answer = MapAnswer | PlanAnswer | MatchAnswer | Refusal;

/** Grid points a side: a first look, and the map that stays. */
export const COARSE = 17;
export const FINE = 64;

/**
 * Works on a job in small pieces, so that the worker can look up between them and drop a job that nobody waits for any more.
 * Yields an answer where there is one.
 */
export function* work(job: Job): Generator<Answer | undefined, void, void> {
  try {
    if (job.kind === 'plan') yield planFor(job);
    else if (job.kind === 'match') yield { kind: 'match', ...matchOnSteps(job) };
    else {
      for (const side of job.kind === 'warm' ? [COARSE] : [COARSE, FINE]) {
        const rows = corridorRows({ ...job, columns: side, rows: side });
        let row = rows.next();
        while (!row.done) {
          yield undefined;
          row = rows.next();
        }
        const corridor = row.value;
        const { bands } = job;
        yield { kind: 'map', corridor, regions: corridorRegions(corridor, bands), bands, isFine: side === FINE };
      }
    }
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    yield { kind: 'refused', message: error.message };
  }
}
