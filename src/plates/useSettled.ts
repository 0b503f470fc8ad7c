import { useEffect, useState } from 'react';

/** Longest wait for an idle moment, ms. */
const PATIENCE_MS = 400;

/** Asks for an idle moment; where the browser knows none, the next task will do. Answers how to call it off. */
export function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const id = requestIdleCallback(work, { timeout: PATIENCE_MS });
    return () => cancelIdleCallback(id);
  }
  const id = setTimeout(work, 0);
  return () => clearTimeout(id);
}

/** True once `key` has stayed the same up to an idle moment with no gesture going on: the time for fine work. */
export function useSettled(key: unknown, isBusy: boolean): boolean {
  const [settled, setSettled] = useState<unknown>();
  useEffect(() => (isBusy ? undefined : whenIdle(() => setSettled(key))), [key, isBusy]);
  return settled === key;
}
