import { exactInterval, type ShareInterval } from '../../math/binomial';
import { FEATURES, type FeatureId } from './features';
import { judgedQuantity, type Rule, type TrialConditions } from './rule';
import type { Shrunk } from './shrink';
import { findSplit, type Split } from './split';

/** A rule to be tried. */
export interface RuleQuestion extends TrialConditions {
  readonly of: Rule;
  readonly seed: number;
  /** Swings to be drawn; absent: until the answer is steady, at most `MOST_TRIALS`. */
  readonly trials?: number;
}

export const MOST_TRIALS = 10_000;
/** Swings drawn in one go; the answer is looked at after each. */
export const BLOCK = 500;
/** The answer is steady when its interval is no wider: two points in a hundred to either side. */
const STEADY_WIDTH = 0.04;
/** ... and rests on at least so many swings. */
const STEADY_FROM = 400;
/** Fewer swings that a rule speaks of say nothing about it. */
export const FEWEST_MET = 30;

/** Some trials of a rule, by number. */
export interface RuleBlock {
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
export interface RuleCount {
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
export function createTally({ trials, of: rule }: Pick<RuleQuestion, 'trials' | 'of'>): RuleTally {
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
              FEATURES.map(({ id, round }, k) => ({ id, round, values: columns[k] })).filter(
                ({ id }) => !isClaimed(rule, id),
              ),
              failed,
            )
          : undefined;
      return { ...done, status: 'tried', ...(split && { split }), ...(counterexample && { counterexample }) };
    },
  };
}

/** Where nothing is changed, a number that the rule claims would only say again that it fails. */
const isClaimed = ({ change, expect }: Rule, id: FeatureId): boolean =>
  change.length === 0 &&
  expect.some((one) => (one.kind === 'verdict' ? judgedQuantity(one.at) : one.of).reading === id);
