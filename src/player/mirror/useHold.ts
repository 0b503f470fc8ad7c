import { useEffect, useState } from 'react';

const GET_READY = 3;
const HOLD = 5;
const SECOND_MS = 1000;

interface Counting {
  readonly phase: 'ready' | 'hold';
  /** Whole seconds left of it. */
  readonly left: number;
}

function next({ phase, left }: Counting): Counting | undefined {
  if (left > 1) return { phase, left: left - 1 };
  return phase === 'ready' ? { phase: 'hold', left: HOLD } : undefined;
}

/** Counts three to get ready, five to hold, then one more held. A page that hides breaks off. */
export function useHold() {
  const [counting, setCounting] = useState<Counting>();
  const [held, setHeld] = useState(0);
  useEffect(() => {
    if (!counting) return undefined;
    const timer = setTimeout(() => {
      const then = next(counting);
      setCounting(then);
      if (!then) setHeld((count) => count + 1);
    }, SECOND_MS);
    const hide = (): void => setCounting(undefined);
    document.addEventListener('visibilitychange', hide);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', hide);
    };
  }, [counting]);
  return {
    counting,
    held,
    toggle: () => setCounting(counting ? undefined : { phase: 'ready', left: GET_READY }),
    startOver: () => {
      setCounting(undefined);
      setHeld(0);
    },
  };
}
