import { useEffect, useState } from 'react';

const MINUTE_MS = 60_000;

/** The time, anew every minute: a backup grows older while nothing happens. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), MINUTE_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
