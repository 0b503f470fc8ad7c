import { SetupError } from '../../model/body';
import type { Weather } from '../../flight/shot';
import type { MovementGroup, Movements } from '../../model/movements';
import type { DeliveryRule } from '../../reading/delivery/delivery';
import { withMovements, type Swing } from '../../reading/swing';
import type { Bands } from '../../reading/verdicts';
import { rankCauses, type Cause } from './causes';
import { corridorRegions, corridorRows, type Corridor, type CorridorQuestion, type CorridorRegions } from './corridor';
import type { Judged } from './judged';
import type { Sightings } from './verdictShare';
import { matchOnSteps, type StepMatch } from './matchOnSteps';
import { planOnSteps, planWithMargin, type StepPlans } from './planOnSteps';
import { readBase } from '../playOut';
import { solveFamily } from '../family/family';
import type { Family, NoFamily } from '../family/question';
import { readSigns } from '../family/signs';

/** A map of two movements; coarse first, then fine. */
interface MapJob {
  readonly kind: 'map';
  readonly swing: Swing;
  readonly x: CorridorQuestion['x'];
  readonly y: CorridorQuestion['y'];
  readonly bands: Bands;
  readonly armAngle: number;
}
/** A map that nobody looks at: afterwards the model runs at its full pace, and the first real answer comes as fast as any. */
interface WarmJob extends Omit<MapJob, 'kind'> {
  readonly kind: 'warm';
}
interface MatchJob {
  readonly kind: 'match';
  readonly swing: Swing;
  readonly from: Movements;
  readonly seen: Sightings;
  readonly bands: Bands;
  readonly armAngle: number;
}
/** The bodies that give a picture. */
interface FamilyJob {
  readonly kind: 'family';
  readonly swing: Swing;
  readonly seen: Sightings;
  readonly armAngle: number;
  readonly rule: DeliveryRule;
  readonly faceReturned: number;
}
export type Job = MapJob | PlanJob | MatchJob | WarmJob | FamilyJob;

interface MapAnswer {
  readonly kind: 'map';
  readonly corridor: Corridor;
  /** Its outlines, for the bands of the job. */
  readonly regions: CorridorRegions;
  readonly bands: Bands;
  readonly isFine: boolean;
}
/** Plans for a swing; it goes to a worker, so the base goes along unread. The swings have nothing adapted. */
interface PlanJob {
  readonly kind: 'plan';
  readonly swing: Swing;
  readonly reference: Swing;
  readonly allow: readonly MovementGroup[];
  readonly bands: Bands;
  readonly armAngle: number;
  /** The smallest change, or the one that lands most often. */
  readonly aim: 'edge' | 'inside';
  /** The coach's give or take, m. */
  readonly doubt: Judged;
  readonly rule: DeliveryRule;
  /** How far the face is returned, 0 to 1. */
  readonly faceReturned: number;
  readonly weather: Weather;
}
export interface PlanAnswer extends StepPlans {
  readonly kind: 'plan';
  /** What was asked for: while a newer answer is on its way, the words still belong to these plans. */
  readonly aim: PlanJob['aim'];
}
interface MatchAnswer extends StepMatch {
  readonly kind: 'match';
  /** The explanations as they are gone through. */
  readonly causes: readonly Cause[];
}
interface FamilyAnswer {
  readonly kind: 'family';
  readonly family: Family | NoFamily;
  /** What a coach sees on each member, for `findDifferences`. */
  readonly signs: readonly Float64Array[];
}
/** What was asked cannot be answered: why, in words. */
interface Refusal {
  readonly kind: 'refused';
  readonly message: string;
}
export type Answer = MapAnswer | PlanAnswer | MatchAnswer | FamilyAnswer | Refusal;

/** All plans of a job. Throws `SetupError` for bands upside down and when everything is locked. */
function planFor({ aim, reference, ...job }: PlanJob): PlanAnswer {
  const base = readBase(reference, job.armAngle);
  const question = { ...job, base };
  return { kind: 'plan', aim, ...(aim === 'inside' ? planWithMargin(question) : planOnSteps(question)) };
}

function matchFor(job: MatchJob): MatchAnswer {
  const match = matchOnSteps(job);
  return { kind: 'match', ...match, causes: rankCauses(match.explanations, job.swing, job.armAngle) };
}

/** Members laid out for the strip. */
const MEMBERS = 9;

function familyFor({ swing, seen, ...conditions }: FamilyJob): FamilyAnswer {
  const family = solveFamily({ swing, seen, count: MEMBERS, armAngle: conditions.armAngle });
  const base = readBase(swing, conditions.armAngle);
  const members = family.status === 'found' ? family.members : [];
  const signs = members.map(({ movements }) => readSigns(base, withMovements(swing, movements), conditions));
  return { kind: 'family', family, signs };
}

/** Grid points a side: a first look, and the map that stays. */
const COARSE = 17;
const FINE = 64;

/**
 * Works on a job in small pieces, so that the worker can look up between them and drop a job that nobody waits for any more.
 * Yields an answer where there is one.
 */
export function* work(job: Job): Generator<Answer | undefined, void, void> {
  try {
    if (job.kind === 'plan') yield planFor(job);
    else if (job.kind === 'match') yield matchFor(job);
    else if (job.kind === 'family') yield familyFor(job);
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
