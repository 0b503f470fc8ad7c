import { SECTIONS, type Document } from './document';

/** One undo step: the sections of the document that it changed, before and after, and what it is called. */
export interface Step {
  readonly label: string;
  readonly before: Partial<Document>;
  readonly after: Partial<Document>;
}
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const NO_HISTORY: History = { past: [], future: [] };
/** Steps kept in memory; the oldest go first. */
const LONGEST_HISTORY = 5000;

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** The step that leads from one document to another; undefined when nothing differs. */
export function stepBetween(label: string, from: Document, to: Document): Step | undefined {
  const changed = SECTIONS.filter((name) => !same(from[name], to[name]));
  if (changed.length === 0) return undefined;
  const pick = (document: Document): Partial<Document> =>
    Object.fromEntries(changed.map((name) => [name, document[name]])) as Partial<Document>;
  return { label, before: pick(from), after: pick(to) };
}

/** History with one more step; what was undone before is forgotten. */
export const withStep = ({ past }: History, step: Step): History => ({
  past: [...past.slice(-(LONGEST_HISTORY - 1)), step],
  future: [],
});

export interface Turned {
  readonly document: Document;
  readonly history: History;
  readonly label: string;
}

/** One step back; undefined at the start. */
export function turnBack(document: Document, { past, future }: History): Turned | undefined {
  const step = past.at(-1);
  if (!step) return undefined;
  return {
    document: { ...document, ...step.before },
    history: { past: past.slice(0, -1), future: [step, ...future] },
    label: step.label,
  };
}

/** One step forward again; undefined when nothing was undone. */
export function turnForward(document: Document, { past, future }: History): Turned | undefined {
  const step = future[0];
  if (!step) return undefined;
  return {
    document: { ...document, ...step.after },
    history: { past: [...past, step], future: future.slice(1) },
    label: step.label,
  };
}
