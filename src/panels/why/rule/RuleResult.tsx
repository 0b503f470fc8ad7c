import { results } from '../../../../assets/tradeRules.json';
import { toRule } from '../../../edge/rule';
import { TRADE_RULES, type NamedRule } from '../../../edge/tradeRules';
import { loadCounterexample } from '../../../store/rules/ruleActions';
import { ruleClient, useRule } from '../../../store/rules/ruleClient';
import {
  sayAnswer,
  sayCase,
  sayCount,
  sayProgress,
  saySplit,
  STOPPED_EARLY,
  TRIED_BEFORE,
} from '../../../words/why/rule';
import type { RuleAnswer, RuleCount } from '../../../solving/rule/tally';
import { Lead } from '../Lead';

const KEPT = results as unknown as Readonly<Record<string, RuleAnswer>>;

/** What came of the rule: live, or, of a rule that ships and was not tried yet, what its file says. */
export function RuleResult({ of }: { of: NamedRule }) {
  const state = useRule((one) => one);
  if (state.status === 'refused') return <Lead text={state.message} />;
  if (state.status === 'idle') {
    const isShipped = TRADE_RULES.includes(of);
    return isShipped ? <Answer answer={KEPT[of.name]} of={of} note={TRIED_BEFORE} /> : null;
  }
  if (state.status === 'done') return <Answer answer={state.answer} of={of} />;
  return (
    <div className="rule-result" aria-live="polite">
      <Counted count={state.count} />
      {state.status === 'stopped' ? (
        <p className="fine">{STOPPED_EARLY}</p>
      ) : (
        <>
          <p className="fine">{sayProgress(state.count, state.status === 'shrinking')}</p>
          <button type="button" className="plain" onClick={() => ruleClient.stop()}>
            Stop
          </button>
        </>
      )}
    </div>
  );
}

function Counted({ count }: { count: RuleCount }) {
  if (count.met === 0) return null;
  const { text, interval } = sayCount(count);
  const { low, high } = count.interval;
  return (
    <>
      <p className="rule-count">
        <b>{text}</b> True share: {interval} (95 in 100).
      </p>
      <div className="rule-bar" aria-hidden="true">
        <i style={{ left: `${100 * low}%`, right: `${100 * (1 - high)}%` }} />
      </div>
    </>
  );
}

function Answer({ answer, of, note }: { answer: RuleAnswer; of: NamedRule; note?: string }) {
  const { split, counterexample, unread } = answer;
  return (
    <div className="rule-result" aria-live="polite">
      <Lead text={sayAnswer(answer)} />
      {answer.status === 'tried' && <Counted count={answer} />}
      {split && <p>{saySplit(split)}</p>}
      {unread > 0 && <p className="fine">{unread} swings never reached what the rule asks about.</p>}
      {counterexample && (
        <>
          <p>Simplest swing on which it fails: {sayCase(counterexample)}.</p>
          <button
            type="button"
            className="plain"
            onClick={() => loadCounterexample(counterexample, toRule(of.rule).change)}
          >
            Load on the desk
          </button>
        </>
      )}
      {note !== undefined && <p className="fine">{note}</p>}
    </div>
  );
}
