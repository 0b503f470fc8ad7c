import { change, desk, endGesture, put, setDrawer, type Document, type Session } from '../../store';
import { offerRule } from '../../store/rules/keptRules';
import type { Read } from '../../store/document/validate';
import { readEmbedded } from '../files/embedded';
import { readHash, toText } from './link';
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

/** What the address says after # goes: a reload keeps later changes. */
const clearAddress = (): void => history.replaceState(history.state, '', location.pathname + location.search);

const show = (guest: Session['guest']): void => put({ session: { ...desk.getState().session, guest } });

/**
 * A document with a plan is shown as the player's page; the desk stays as it is behind it. The address carries the document, so that a
 * reload shows the page again.
 */
function receive(read: Read, what: string): void {
  if ('problem' in read || !read.document.plan) {
    clearAddress();
    show(null);
    return take(read, what);
  }
  history.replaceState(history.state, '', `${location.pathname}${location.search}#${toText(read.document)}`);
  show(read.document);
}

/** Opens the document that the address carries, if it carries one: as the player's page, or on the desk. */
export function openLink(): void {
  if (openRule()) return show(null);
  const read = readHash(location.hash);
  if (read) receive(read, 'The link');
  else show(null);
}

/** Puts what the player's page shows on the desk. */
export function openOnDesk(document: Document): void {
  clearAddress();
  show(null);
  take({ document }, 'The link');
}

/** Opens the drawer of rules with the rule that the address carries, if it carries one. */
function openRule(): boolean {
  const rule = readRuleHash(location.hash);
  if (!rule) return false;
  clearAddress();
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
  return receive(read, what);
}
