/** Keeps the last `size` answers; the one not asked for the longest goes first. */
export function createCache<T extends object>(size: number) {
  const known = new Map<string, T>();
  return (key: string, make: () => T): T => {
    const found = known.get(key);
    // A Map remembers the order of insertion: taken out and put back, an answer is the youngest.
    if (found) known.delete(key);
    const answer = found ?? make();
    known.set(key, answer);
    if (known.size > size) known.delete(known.keys().next().value!);
    return answer;
  };
}
