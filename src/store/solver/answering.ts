import { createStore } from 'zustand/vanilla';

/** How long a picture waits for an answer, ms: most come within ten, and nobody sees a picture that much later. */
const LONGEST_WAIT_MS = 60;

/** Since when a drawer waits for an answer, by `performance.now()`; undefined: none is on its way. */
const answering = createStore<{ readonly since: number | undefined }>(() => ({ since: undefined }));

/** A drawer has asked. What it asks again before there was an answer does not count anew. */
export function noteAsked(): void {
  if (answering.getState().since === undefined) answering.setState({ since: performance.now() });
}

/** The answer is there, or nobody waits for it any more. */
export function noteAnswered(): void {
  if (answering.getState().since !== undefined) answering.setState({ since: undefined });
}

/**
 * Whether the picture lets the answer of the open drawer go first. What it buys: where drawing is slow the page stands still until a
 * picture is drawn, and the answer would come after it. In software drawing a map's outline comes 24 ms after a step of a slider
 * instead of 252, a plan after 40 instead of 225 (`npm run bench -- why`, with and without).
 */
export function isAnswerFirst(): boolean {
  const { since } = answering.getState();
  return since !== undefined && performance.now() - since < LONGEST_WAIT_MS;
}
