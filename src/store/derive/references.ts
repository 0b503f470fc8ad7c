import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import type { ReferenceSwing } from '../../model/keys';
import { solveReference, type ReferenceFit } from '../../solving/reference/reference';
import { findShipped } from '../../solving/reference/shipped';
import { judgeFit } from '../../solving/reference/usable';
import { findKept, keepReference } from './keptReferences';
import type { Shelf } from '../document/persistence';
import { createWorkerClient } from '../solver/workerClient';

export type Found = { readonly reference: ReferenceSwing } | { readonly solving: true } | { readonly failed: string };

/** What goes to the worker. A fit comes back. */
export interface ReferenceQuestion {
  readonly body: Body;
  readonly club: Club;
}

/** Answers kept at hand; the one not asked for the longest goes first, to be found again where it is asked for again. */
const MOST_KNOWN = 32;
const known = new Map<string, Found>();
const worker = createWorkerClient<ReferenceQuestion, ReferenceFit>(
  () => new Worker(new URL('../solver/reference.worker.ts', import.meta.url), { type: 'module' }),
);
let keptOn: Shelf | undefined;
let onFound: () => void = () => {};

/** Called when an answer has come in. */
export function whenFound(tell: () => void): void {
  onFound = tell;
}

/** Keeps an answer as the youngest: a Map remembers the order in which its keys came. */
function know(key: string, found: Found): Found {
  known.delete(key);
  known.set(key, found);
  if (known.size > MOST_KNOWN) known.delete(known.keys().next().value!);
  return found;
}

/** Solved swings are kept on this shelf from now on, and looked for there before they are solved. */
export function keepReferencesOn(shelf: Shelf): void {
  keptOn = shelf;
}

const keyOf = (body: Body, { name: _, ...club }: Club): string => JSON.stringify([body, club]);

/**
 * The reference swing of a body with a club: shipped, known from before, or being looked for in the background from now on.
 */
export function referenceFor(body: Body, club: Club): Found {
  const shipped = findShipped(body, club);
  if (shipped) return { reference: shipped };
  const key = keyOf(body, club);
  const found = known.get(key);
  if (found) return know(key, found);
  const kept = keptOn && findKept(keptOn, key, body, club);
  return know(key, kept ? { reference: kept } : ask(key, { body, club }));
}

/** Where there are no workers (tests, command line) the answer comes at once. */
function ask(key: string, question: ReferenceQuestion): Found {
  if (typeof Worker === 'undefined') return judge(key, solveReference(question.body, question.club));
  const tell = (found: Found): void => {
    know(key, found);
    onFound();
  };
  worker.ask(question, (fit) => tell(judge(key, fit))).catch(() => tell({ failed: STOPPED }));
  return { solving: true };
}

const STOPPED = 'The search for this reference swing stopped. Change the set-up and back to try again.';

function judge(key: string, fit: ReferenceFit): Found {
  const usable = judgeFit(fit);
  if ('refused' in usable) return { failed: usable.refused };
  if (keptOn) keepReference(keptOn, key, usable.reference);
  return usable;
}

/** Forgets failed searches, so that asking again searches again. */
export function forgetFailures(): void {
  for (const [key, found] of known) if ('failed' in found) known.delete(key);
}
