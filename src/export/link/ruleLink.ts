import type { NamedRule } from '../../edge/tradeRules';
import { readRule } from '../../store/rules/keptRules';
import { packJson, unpackJson } from './link';

/** What tells a rule's text from a document's: r in place of s. Otherwise both are written alike. */
const MARK = /^r(?=\d)/;

/** The address that opens a rule: nothing is sent anywhere, what follows # stays in the browser. */
export function toRuleAddress(rule: NamedRule, base: string): string {
  const url = new URL(base);
  url.hash = packJson(JSON.stringify(rule)).replace(/^s/, 'r');
  url.search = '';
  return url.href;
}

/** The rule that the end of an address carries, or what is wrong with it; undefined when it carries none. */
export function readRuleHash(hash: string): NamedRule | { readonly problem: string } | undefined {
  const text = hash.replace(/^#/, '');
  if (!MARK.test(text)) return undefined;
  const unpacked = unpackJson(text.replace(MARK, 's'));
  if ('problem' in unpacked) return unpacked;
  try {
    return readRule(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(unpacked.json)));
  } catch {
    return { problem: 'it is damaged' };
  }
}
