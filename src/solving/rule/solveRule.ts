import { checkRule } from './checkRule';
import { FEATURES } from './features';
import { createReferenceBook, playersFor, type ReferenceBook } from './players';
import { shrink, type Shrunk } from './shrink';
import {
  BLOCK,
  createTally,
  FEWEST_MET,
  MOST_TRIALS,
  type RuleAnswer,
  type RuleBlock,
  type RuleQuestion,
} from './tally';
import { createTrier, type Trier } from './trial';

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

/** Tries a rule in one go. Throws `SetupError` for a rule that cannot be. */
export function solveRule(question: RuleQuestion, book?: ReferenceBook): RuleAnswer {
  const run = createRuleRun(question, book);
  const tally = createTally(question);
  const most = question.trials ?? MOST_TRIALS;
  for (let from = 0; !tally.count().isDone; from += BLOCK) tally.add(run.runBlock(from, Math.min(BLOCK, most - from)));
  return tally.answer(tally.count().met >= FEWEST_MET ? run.shrinkFrom(tally.failures()) : undefined);
}
