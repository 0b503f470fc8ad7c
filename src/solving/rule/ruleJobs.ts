import { SetupError } from '../../model/body';
import type { Rad } from '../../math/angle';
import type { MovementId } from '../../model/movements';
import type { DeliveryConditions } from '../playOut';
import { gainsOf, gainStatures, type Gain } from './gains';
import { createReferenceBook } from './players';
import type { Shrunk } from './shrink';
import { createRuleRun, type RuleRun } from './solveRule';
import type { RuleBlock, RuleQuestion } from './tally';

/** A piece of work on a rule, for one of several workers. `key` names the question: a worker gets each ready once. */
interface BlockJob {
  readonly kind: 'block';
  readonly key: string;
  readonly question: RuleQuestion;
  readonly from: number;
  readonly count: number;
}
interface ShrinkJob {
  readonly kind: 'shrink';
  readonly key: string;
  readonly question: RuleQuestion;
  readonly failures: readonly number[];
}
/** What a movement does to every height and club; answered row by row. */
interface GainsJob {
  readonly kind: 'gains';
  readonly movement: MovementId;
  readonly amount: number;
  /** The player's own height, m: gets a row of its own. */
  readonly own: number;
  readonly conditions: DeliveryConditions & { readonly armAngle: Rad };
}
export type RuleJob = BlockJob | ShrinkJob | GainsJob;

export type RuleWork =
  | { readonly kind: 'block'; readonly block: RuleBlock }
  | { readonly kind: 'shrunk'; readonly shrunk: Shrunk | undefined }
  | { readonly kind: 'gain'; readonly gain: Gain }
  | { readonly kind: 'refused'; readonly field: string; readonly message: string };

/** Works on jobs one after the other. It keeps the reference swings it has looked for, and the rule it is at. */
export function createRuleWorker(): (job: RuleJob) => Generator<RuleWork, void, void> {
  const book = createReferenceBook();
  let last: { readonly key: string; readonly run: RuleRun } | undefined;
  const runOf = (key: string, question: RuleQuestion): RuleRun => {
    if (last?.key !== key) last = { key, run: createRuleRun(question, book) };
    return last.run;
  };
  return function* work(job) {
    try {
      if (job.kind === 'gains') {
        for (const gain of gainsOf(job.movement, job.amount, gainStatures(job.own), book, job.conditions)) {
          yield { kind: 'gain', gain };
        }
      } else if (job.kind === 'block') {
        yield { kind: 'block', block: runOf(job.key, job.question).runBlock(job.from, job.count) };
      } else yield { kind: 'shrunk', shrunk: runOf(job.key, job.question).shrinkFrom(job.failures) };
    } catch (error) {
      if (!(error instanceof SetupError)) throw error;
      yield { kind: 'refused', field: error.field, message: error.message };
    }
  };
}
