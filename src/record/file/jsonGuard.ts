/** Why a text is not parsed, in words; undefined when it may be. */
export type Obstacle = string | undefined;

/**
 * Looks over a text before anything parses it: too long, brackets too deep, a key twice in one object, or the key
 * `__proto__`. One pass, no recursion. A text that is no JSON at all passes here and fails in the parser.
 */
export function findObstacle(text: string, longest: number, deepest: number): Obstacle {
  if (text.length > longest) return 'it is too long';
  const keys: (Set<string> | null)[] = [];
  for (let at = 0; at < text.length; at++) {
    const char = text.charCodeAt(at);
    if (char === QUOTE) {
      const end = endOfString(text, at);
      const raw = text.slice(at + 1, end);
      at = end;
      const own = keys.at(-1);
      if (!own || !isKey(text, end)) continue;
      const key = plain(raw);
      if (key === '__proto__') return 'it has a field "__proto__"';
      if (own.has(key)) return `it has the field "${key.slice(0, 40)}" twice`;
      own.add(key);
    } else if (char === OPEN_OBJECT || char === OPEN_LIST) {
      if (keys.length >= deepest) return 'its brackets go too deep';
      keys.push(char === OPEN_OBJECT ? new Set() : null);
    } else if (char === CLOSE_OBJECT || char === CLOSE_LIST) {
      keys.pop();
    }
  }
  return undefined;
}

const [QUOTE, BACKSLASH, COLON] = [34, 92, 58];
const [OPEN_OBJECT, CLOSE_OBJECT, OPEN_LIST, CLOSE_LIST] = [123, 125, 91, 93];

function endOfString(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text.charCodeAt(at) !== QUOTE) at += text.charCodeAt(at) === BACKSLASH ? 2 : 1;
  return at;
}

function isKey(text: string, end: number): boolean {
  let at = end + 1;
  while (at < text.length && /\s/.test(text[at])) at++;
  return text.charCodeAt(at) === COLON;
}

/** A key as the parser will read it: escapes may hide the same name. */
function plain(raw: string): string {
  if (!raw.includes('\\')) return raw;
  try {
    return JSON.parse(`"${raw}"`) as string;
  } catch {
    return raw;
  }
}
