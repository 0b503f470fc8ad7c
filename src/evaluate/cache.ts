/** Keeps the last `size` answers; the one not asked for the longest goes first. */
export function createCache<T extends object>(size: number) {
  const known = new Map<string, T>();
  return (key: string, make: () => T): T => {
    const found = known.get(key);
    // A Map keeps insertion order: an answer that is deleted and set again becomes the newest.
    if (found) known.delete(key);
    const answer = found ?? make();
    known.set(key, answer);
    if (known.size > size) known.delete(known.keys().next().value!);
    return answer;
  };
}
