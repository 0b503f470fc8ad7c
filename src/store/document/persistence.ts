import { DEFAULT_DOCUMENT, type Document } from './document';
import { NO_HISTORY, type History, type Step } from './history';
import { readDocument, readPart } from './validate';

/** The part of the browser's storage that is used: any object with these will do. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem'>;

export const DOCUMENT_KEY = 'slantwise.document';
export const HISTORY_KEY = 'slantwise.history';
const ASIDE_KEY = 'slantwise.kept-aside';
/** Undo steps kept over a reload, each way. */
const STORED_STEPS = 300;

export interface Loaded {
  readonly document: Document;
  readonly history: History;
  /** What the user should know, in words. */
  readonly notice: string | null;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** Keeps a text under a key that is still free. Answers the key, or undefined when there is no room. */
function keepAside(shelf: Shelf, text: string): string | undefined {
  let number = 1;
  while (shelf.getItem(`${ASIDE_KEY}.${number}`) !== null) {
    if (shelf.getItem(`${ASIDE_KEY}.${number}`) === text) return `${ASIDE_KEY}.${number}`;
    number++;
  }
  try {
    shelf.setItem(`${ASIDE_KEY}.${number}`, text);
    return `${ASIDE_KEY}.${number}`;
  } catch {
    return undefined;
  }
}

/**
 * The stored document and its history. One that cannot be read is kept aside under another key and said in words:
 * the app starts all the same.
 */
export function load(shelf: Shelf): Loaded {
  const text = shelf.getItem(DOCUMENT_KEY);
  if (text === null) return { document: DEFAULT_DOCUMENT, history: NO_HISTORY, notice: null };
  const read = readDocument(parse(text));
  if ('document' in read) {
    const { document, notice = null } = read;
    return { document, history: readHistory(shelf.getItem(HISTORY_KEY)), notice };
  }
  const key = keepAside(shelf, text);
  const kept = key === undefined ? 'There was no room to keep it.' : `It is kept aside as "${key}".`;
  return {
    document: DEFAULT_DOCUMENT,
    history: NO_HISTORY,
    notice: `The saved document could not be opened: ${read.problem}. ${kept} You start afresh.`,
  };
}

function readSteps(value: unknown): readonly Step[] | undefined {
  if (!Array.isArray(value)) return undefined;
  const steps: Step[] = [];
  for (const one of value as unknown[]) {
    if (typeof one !== 'object' || one === null) return undefined;
    const { label, before, after } = one as Partial<Record<keyof Step, unknown>>;
    const [from, to] = [readPart(before), readPart(after)];
    if (typeof label !== 'string' || !from || !to) return undefined;
    steps.push({ label, before: from, after: to });
  }
  return steps;
}

/** A history that cannot be read is no history: the document stands by itself. */
function readHistory(text: string | null): History {
  const value = text === null ? undefined : parse(text);
  if (typeof value !== 'object' || value === null) return NO_HISTORY;
  const { past, future } = value as Partial<Record<keyof History, unknown>>;
  const [back, forward] = [readSteps(past), readSteps(future)];
  return back && forward ? { past: back, future: forward } : NO_HISTORY;
}

/**
 * Saves document and history; within a gesture the document alone: no step is recorded before the gesture ends. Answers what went
 * wrong, in words, or null.
 */
export function save(shelf: Shelf, document: Document, history: History | undefined): string | null {
  try {
    shelf.setItem(DOCUMENT_KEY, JSON.stringify(document));
    if (!history) return null;
    const { past, future } = history;
    const stored = { past: past.slice(-STORED_STEPS), future: future.slice(0, STORED_STEPS) };
    shelf.setItem(HISTORY_KEY, JSON.stringify(stored));
    return null;
  } catch {
    return 'This browser has no room to save. What you see stays until the page closes.';
  }
}
