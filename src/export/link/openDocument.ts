import { change, desk, endGesture, put, setDrawer } from '../../store';
import { offerRule } from '../../store/rules/keptRules';
import type { Read } from '../../store/document/validate';
import { readEmbedded } from '../files/embedded';
import { readHash } from './link';
import { readRuleHash } from './ruleLink';

/** Files above this are not read at all, bytes. The longest clips stay far below. */
const LARGEST_FILE = 400e6;

const say = (notice: string): void => put({ notice });

/** Puts a document that came from outside on the desk, as one step that can be undone; a problem changes nothing. */
function take(read: Read, what: string): void {
  if ('problem' in read) return say(`${what} could not be opened: ${read.problem}. Nothing was changed.`);
  endGesture();
  change(`Opened ${what.toLowerCase()}`, () => read.document);
  put({ session: { ...desk.getState().session, ghost: null, bench: null } });
  const { notice } = read;
  say(`${what} is open. Undo brings back what you had.${notice ? ` ${notice}` : ''}`);
}

/** Opens the document that the address carries, if it carries one, and takes it out of the address: a reload keeps later changes. */
export function openLink(): void {
  if (openRule()) return;
  const read = readHash(location.hash);
  if (!read) return;
  history.replaceState(history.state, '', location.pathname + location.search);
  take(read, 'The link');
}

/** Opens the drawer of rules with the rule that the address carries, if it carries one. */
function openRule(): boolean {
  const rule = readRuleHash(location.hash);
  if (!rule) return false;
  history.replaceState(history.state, '', location.pathname + location.search);
  if ('problem' in rule) say(`The rule could not be opened: ${rule.problem}. Nothing was changed.`);
  else {
    offerRule(rule);
    if (desk.getState().session.drawer !== 'rule') setDrawer('rule');
  }
  return true;
}

/** Opens the document inside a picture, clip or model file. */
export async function openFile(file: File): Promise<void> {
  const what = 'The file';
  if (file.size > LARGEST_FILE) return say(`${what} is too large to be one of ours. Nothing was changed.`);
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return say(`${what} cannot be read on this device. Nothing was changed.`);
  }
  const read = readEmbedded(bytes);
  if (!read)
    return say(`${what} carries no swing. Its link, or the code on its last card, opens it. Nothing was changed.`);
  return take(read, what);
}
