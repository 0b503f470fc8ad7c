import { useEffect, useState } from 'react';
import { toRule } from '../../../edge/rule';
import { RULE_SEED, TRADE_RULES, type NamedRule } from '../../../edge/tradeRules';
import { toRuleAddress } from '../../../export/link/ruleLink';
import { desk } from '../../../store';
import { trialConditions } from '../../../store/rules/ruleActions';
import { dropRule, keepRule, LONGEST_NAME, offerRule, useDraft, useKeptRules } from '../../../store/rules/keptRules';
import { ruleClient, useRule } from '../../../store/rules/ruleClient';
import { LINK_COPIED, RULE_KEPT, sayRule, TRIED_ON } from '../../../words/why/rule';
import { TextField } from '../../fields/TextField';
import { Source } from '../Lead';
import { Pick } from '../Pick';
import { ChangeList, PartList } from './Parts';
import { RuleResult } from './RuleResult';
import { WhoFields } from './WhoFields';
import './rule.css';

const EMPTY: NamedRule = { name: '', rule: { expect: [] } };

/** Does the rule hold? A rule is put together by choosing words, and tried on swings at random. */
export default function RuleCheck() {
  const draft = useDraft();
  const isRunning = useRule(({ status }) => status === 'running' || status === 'shrinking');
  // Another rule, or the same one changed: what came of the last one is not said of it.
  useEffect(() => ruleClient.clear(), [draft]);
  return (
    <div className="rule">
      <Choose draft={draft} />
      <p className="rule-sentence">{sayRule(draft.rule)}</p>
      <RuleResult of={draft} />
      {!isRunning && (
        <button
          type="button"
          className="plain rule-try"
          onClick={() =>
            ruleClient.start({
              ...trialConditions(desk.getState().document),
              of: toRule(draft.rule),
              seed: RULE_SEED,
            })
          }
        >
          Try it
        </button>
      )}
      <details className="rule-words">
        <summary>Change the rule</summary>
        <h3>Who</h3>
        <WhoFields rule={draft.rule} />
        <h3>When</h3>
        <PartList rule={draft.rule} name="when" />
        <h3>Do</h3>
        <ChangeList rule={draft.rule} />
        <h3>Expect</h3>
        <PartList rule={draft.rule} name="expect" />
      </details>
      <Keep draft={draft} />
      <Source>{TRIED_ON}</Source>
    </div>
  );
}

/** Which rule: one that ships, one of the user's own, or a new one. */
function Choose({ draft }: { draft: NamedRule }) {
  const kept = useKeptRules();
  const all = [...TRADE_RULES, ...kept, EMPTY];
  const at = all.findIndex(({ name, rule }) => name === draft.name && rule === draft.rule);
  const option = ({ name }: NamedRule) => ({ value: name, text: name });
  return (
    <Pick
      label="Rule"
      options={at < 0 ? [{ value: '', text: draft.name || 'The rule below' }] : []}
      groups={[
        { label: 'Heard on the practice tee', options: TRADE_RULES.map(option) },
        ...(kept.length > 0 ? [{ label: 'My rules', options: kept.map(option) }] : []),
        { label: 'New', options: [{ value: 'new rule', text: 'A new rule' }] },
      ]}
      value={at < 0 ? '' : draft.name || 'new rule'}
      onPick={(name) => offerRule(all.find((one) => one.name === name) ?? EMPTY)}
    />
  );
}

/** Keeps the rule under a name, takes it out, or copies its link. */
function Keep({ draft }: { draft: NamedRule }) {
  const kept = useKeptRules();
  const [said, setSaid] = useState<string>();
  const isShipped = TRADE_RULES.includes(draft);
  const isKept = kept.includes(draft);
  const share = async (): Promise<void> => {
    const address = toRuleAddress(draft, location.href);
    try {
      await navigator.clipboard.writeText(address);
      setSaid(LINK_COPIED);
    } catch {
      setSaid(address);
    }
  };
  return (
    <div className="rule-keep">
      {!isShipped && (
        <TextField
          label="Name"
          value={draft.name}
          most={LONGEST_NAME}
          onType={(name) => offerRule({ ...draft, name })}
        />
      )}
      <div className="plan-acts">
        {!isShipped && !isKept && (
          <button
            type="button"
            className="plain"
            onClick={() => {
              const named = { ...draft, name: draft.name || 'My rule' };
              offerRule(named);
              setSaid(keepRule(named) ?? RULE_KEPT);
            }}
          >
            Keep
          </button>
        )}
        {isKept && (
          <button type="button" className="plain" onClick={() => setSaid(dropRule(draft.name) ?? 'Taken out.')}>
            Take out
          </button>
        )}
        <button type="button" className="plain" onClick={() => void share()}>
          Copy its link
        </button>
      </div>
      {said !== undefined && <output className="fine rule-said">{said}</output>}
    </div>
  );
}
