import { exactInterval, type ShareInterval } from '../../math/binomial';
import { checkRule } from './checkRule';
import { FEATURES, type FeatureId } from './features';
import { createReferenceBook, playersFor, type ReferenceBook } from './players';
import type { Rule, TrialConditions } from './rule';
import { shrink, type Shrunk } from './shrink';
import { findSplit, type Split } from './split';
import { createTrier, type Trier } from './trial';

/** A rule to be tried. */
export interface RuleQuestion extends TrialConditions {
  readonly of: Rule;
  readonly seed: number;
  /** Swings to be drawn; absent: until the answer is steady, at most `MOST_TRIALS`. */
  readonly trials?: number;
}

const MOST_TRIALS = 10_000;
/** Swings drawn in one go; the answer is looked at after each. */
export const BLOCK = 500;
/** The answer is steady when its interval is no wider: two points in a hundred to either side. */
const STEADY_WIDTH = 0.04;
/** ... and rests on at least so many swings. */
const STEADY_FROM = 400;
/** Fewer swings that a rule speaks of say nothing about it. */
const FEWEST_MET = 30;

/** Some trials of a rule, by number. */
interface RuleBlock {
  readonly from: number;
  readonly count: number;
  /** Swings with a number that could not be read. */
  readonly unread: number;
  /** Numbers of the swings that the rule speaks of. */
  readonly met: Int32Array;
  /** One for each: 1 failed, 0 held. */
  readonly failed: Uint8Array;
  /** `FEATURES.length` numbers for each. */
  readonly features: Float64Array;
}

/** How a rule has done so far. */
interface RuleCount {
  readonly tried: number;
  readonly met: number;
  readonly held: number;
  readonly unread: number;
  readonly interval: ShareInterval;
  readonly isDone: boolean;
}

/**
 * What came of a rule. `never-met`: no swing drawn is one it speaks of. `too-few`: fewer than `FEWEST_MET` are, which says nothing.
 */
export interface RuleAnswer extends RuleCount {
  readonly status: 'tried' | 'too-few' | 'never-met';
  /** What tells failures from successes best; absent where nothing does. */
  readonly split?: Split<FeatureId>;
  /** The simplest swing on which it fails; absent where none was found. */
  readonly counterexample?: Shrunk;
}

/** Everything that tries one rule: for the worker that does it, and for the command line. Throws `SetupError` for a rule that cannot be. */
export interface RuleRun {
  readonly trier: Trier;
  readonly runBlock: (from: number, count: number) => RuleBlock;
  readonly shrinkFrom: (failures: readonly number[]) => Shrunk | undefined;
}

/** Gets a question ready. Reference swings are kept in `book`. */
export function createRuleRun(question: RuleQuestion, book: ReferenceBook = createReferenceBook()): RuleRun {
  const { of: rule, seed } = question;
  checkRule(rule, question.bands);
  const trier = createTrier(rule, seed, question, book);
  return {
    trier,
    runBlock: (from, count) => runBlock(trier, from, count),
    shrinkFrom: (numbers) =>
      shrink(
        trier,
        playersFor(rule, seed),
        numbers.flatMap((number) => trier.drawn(number) ?? []),
      ),
  };
}

function runBlock(trier: Trier, from: number, count: number): RuleBlock {
  const met: number[] = [];
  const failed: number[] = [];
  const features: number[] = [];
  let unread = 0;
  for (let number = from; number < from + count; number++) {
    const tried = trier.drawn(number);
    const { outcome, before } = tried ? trier.tryOut(tried) : { outcome: 'unread' as const };
    if (outcome === 'unread') unread++;
    if (!tried || !before || outcome === 'unread' || outcome === 'unmet') continue;
    met.push(number);
    failed.push(outcome === 'failed' ? 1 : 0);
    for (const feature of FEATURES) features.push(feature.read(tried, before));
  }
  return {
    from,
    count,
    unread,
    met: Int32Array.from(met),
    failed: Uint8Array.from(failed),
    features: Float64Array.from(features),
  };
}

/** Gathers blocks in the order of their numbers, so that the answer hangs on the seed alone, whoever runs them. */
export interface RuleTally {
  readonly add: (block: RuleBlock) => RuleCount;
  readonly count: () => RuleCount;
  /** Numbers of the first swings that failed. */
  readonly failures: () => readonly number[];
  readonly answer: (counterexample: Shrunk | undefined) => RuleAnswer;
}

/** Failures that are taken back to a simple one. */
const TAKEN_BACK = 24;

/** An empty tally for a question. */
export function createTally({ trials }: Pick<RuleQuestion, 'trials'>): RuleTally {
  const blocks: RuleBlock[] = [];
  const [columns, failed]: [number[][], number[]] = [FEATURES.map(() => []), []];
  const failures: number[] = [];
  let [tried, unread, met, fails] = [0, 0, 0, 0];

  const take = (block: RuleBlock): void => {
    tried += block.count;
    unread += block.unread;
    met += block.met.length;
    block.met.forEach((number, i) => {
      fails += block.failed[i];
      failed.push(block.failed[i]);
      if (block.failed[i] && failures.length < TAKEN_BACK) failures.push(number);
      FEATURES.forEach((_, k) => columns[k].push(block.features[i * FEATURES.length + k]));
    });
  };
  const count = (): RuleCount => {
    const interval = met > 0 ? exactInterval(met - fails, met) : { low: 0, high: 1 };
    const isSteady = met >= STEADY_FROM && interval.high - interval.low <= STEADY_WIDTH;
    const isDone = trials === undefined ? isSteady || tried >= MOST_TRIALS : tried >= trials;
    return { tried, met, held: met - fails, unread, interval, isDone };
  };
  return {
    add(block) {
      blocks.push(block);
      for (let next = blocks.findIndex(({ from }) => from === tried); next >= 0;) {
        if (count().isDone) break;
        take(blocks.splice(next, 1)[0]);
        next = blocks.findIndex(({ from }) => from === tried);
      }
      return count();
    },
    count,
    failures: () => failures,
    answer(counterexample) {
      const done = count();
      if (met < FEWEST_MET) return { ...done, status: met === 0 ? 'never-met' : 'too-few' };
      const split =
        fails > 0 && fails < met
          ? findSplit(
              FEATURES.map(({ id, round }, k) => ({ id, round, values: columns[k] })),
              failed,
            )
          : undefined;
      return { ...done, status: 'tried', ...(split && { split }), ...(counterexample && { counterexample }) };
    },
  };
}

/** Tries a rule in one go. Throws `SetupError` for a rule that cannot be. */
export function solveRule(question: RuleQuestion, book?: ReferenceBook): RuleAnswer {
  const run = createRuleRun(question, book);
  const tally = createTally(question);
  const most = question.trials ?? MOST_TRIALS;
  for (let from = 0; !tally.count().isDone; from += BLOCK) tally.add(run.runBlock(from, Math.min(BLOCK, most - from)));
  return tally.answer(tally.count().met >= FEWEST_MET ? run.shrinkFrom(tally.failures()) : undefined);
}
