/** One line as bytes came in: its text, or that it is too long to be read. `number` counts from 1. */
export type Line = { readonly number: number } & ({ readonly text: string } | { readonly tooLong: true });

export const LONGEST_LINE_BYTES = 1 << 20;
const NEWLINE = 0x0a;
const RETURN = 0x0d;
/** Some editors begin a file with it to say that it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Cuts a stream of bytes into lines and keeps no more than one line: a line over the limit is dropped as it comes in.
 * Call `push` for every chunk and `end` once; a last line needs no newline. `\r\n` counts as one newline, and one byte order mark at
 * the very start as nothing.
 */
export function createSplitter(longest = LONGEST_LINE_BYTES) {
  let parts: Buffer[] = [];
  let size = 0;
  let tooLong = false;
  let count = 0;

  function keep(part: Buffer): void {
    size += part.length;
    if (size > longest) {
      tooLong = true;
      parts = [];
    } else if (part.length > 0) {
      parts.push(part);
    }
  }

  function finish(): Line {
    count += 1;
    const bytes = parts.length === 1 ? parts[0] : Buffer.concat(parts);
    const end = bytes.length > 0 && bytes[bytes.length - 1] === RETURN ? bytes.length - 1 : bytes.length;
    const text = bytes.toString('utf8', 0, end);
    const isMarked = count === 1 && text.startsWith(BYTE_ORDER_MARK);
    const line: Line = tooLong ? { number: count, tooLong } : { number: count, text: isMarked ? text.slice(1) : text };
    parts = [];
    size = 0;
    tooLong = false;
    return line;
  }

  return {
    *push(chunk: Buffer): Generator<Line> {
      let from = 0;
      for (let at = chunk.indexOf(NEWLINE); at >= 0; at = chunk.indexOf(NEWLINE, from)) {
        keep(chunk.subarray(from, at));
        from = at + 1;
        yield finish();
      }
      keep(chunk.subarray(from));
    },
    *end(): Generator<Line> {
      if (size > 0) yield finish();
    },
  };
}
