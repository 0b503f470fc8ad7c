import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import { read } from '../../checking/read';
import { fields, listUpTo, textUpTo } from '../../checking/schemas';
import { ruleSchema, type WrittenRule } from '../../edge/rule';
import { TRADE_RULES, type NamedRule } from '../../edge/tradeRules';

/** Where this browser keeps the user's rules. */
const KEY = 'slantwise.rules';
const MOST = 40;
export const LONGEST_NAME = 60;

const named = fields({ name: textUpTo(LONGEST_NAME), rule: ruleSchema });
const file = listUpTo(named, MOST);

function load(): readonly NamedRule[] {
  try {
    const found = read(file, JSON.parse(localStorage.getItem(KEY) ?? '[]'));
    return 'value' in found ? found.value : [];
  } catch {
    return [];
  }
}

const kept = createStore<{ readonly rules: readonly NamedRule[] }>(() => ({ rules: load() }));

/** The user's own rules, for React. */
export const useKeptRules = (): readonly NamedRule[] => useStore(kept, ({ rules }) => rules);

function store(rules: readonly NamedRule[]): string | undefined {
  kept.setState({ rules });
  try {
    localStorage.setItem(KEY, JSON.stringify(rules));
    return undefined;
  } catch {
    return 'This browser keeps nothing. The rule is lost when the page closes; share it.';
  }
}

/** Keeps a rule under its name, in place of one of the same name. Answers why it could not be kept, in words. */
export function keepRule(rule: NamedRule): string | undefined {
  const others = kept.getState().rules.filter(({ name }) => name !== rule.name);
  if (others.length >= MOST) return `No more than ${MOST} rules are kept. Take one out first.`;
  return store([...others, rule]);
}

/** Takes a rule out. */
export const dropRule = (name: string): string | undefined =>
  store(kept.getState().rules.filter((rule) => rule.name !== name));

/** The rule that is being put together: it waits while its drawer is closed. A rule from a link is put here. */
const draft = createStore<NamedRule>(() => TRADE_RULES[0]);
/** The rule that is being put together, for React. */
export const useDraft = (): NamedRule => useStore(draft);
/** Takes another rule to be put together. */
export const offerRule = (rule: NamedRule): void => draft.setState(rule, true);
/** Changes the rule itself: a rule that ships becomes one of the user's own. */
export const editRule = (part: Partial<WrittenRule>): void =>
  draft.setState(({ name, rule }) => ({ name: isShipped(name) ? '' : name, rule: { ...rule, ...part } }), true);
const isShipped = (name: string): boolean => TRADE_RULES.some((one) => one.name === name);

/** A rule from outside, or what is wrong with it in words. */
export function readRule(value: unknown): NamedRule | { readonly problem: string } {
  const found = read(named, value);
  if ('value' in found) return found.value;
  return { problem: `${found.fault.path}: ${found.fault.message}` };
}
