import { RULE_SEED, type NamedRule } from '../../src/edge/tradeRules';
import { toRule } from '../../src/edge/rule';
import { DEFAULT_ARM_ANGLE } from '../../src/reading/checkpoints';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { solveRule } from '../../src/solving/rule/solveRule';
import type { RuleAnswer } from '../../src/solving/rule/tally';

/** How a rule comes out, as it is kept in a file: plain numbers. */
export function tryTradeRule({ rule }: NamedRule): RuleAnswer {
  const question = { of: toRule(rule), seed: RULE_SEED, bands: DEFAULT_BANDS, armAngle: DEFAULT_ARM_ANGLE };
  return asKept(solveRule(question));
}

function asKept(answer: RuleAnswer): RuleAnswer {
  const { counterexample } = answer;
  if (!counterexample) return answer;
  const { tried, differs } = counterexample;
  const dials = Array.from(tried.dials, (value) => Number(value.toFixed(12)));
  return { ...answer, counterexample: { differs, tried: { ...tried, dials: dials as unknown as Float64Array } } };
}
