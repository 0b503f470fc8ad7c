import { encode } from 'uqr';

/** A QR code as squares: rows from the top, true is dark. Four squares of quiet zone all round, as the standard asks. */
export const codeOf = (text: string): readonly (readonly boolean[])[] =>
  encode(text, { ecc: text.length > HOLDS_AT_M ? 'L' : 'M', boostEcc: true, border: 4 }).data;

/** Letters that a code holds at most, and with the usual share of its squares for mending (ISO/IEC 18004, table 7, byte mode). */
const [HOLDS, HOLDS_AT_M] = [2953, 2331];

/** Whether a text fits into a code. */
export const fitsCode = (text: string): boolean => new TextEncoder().encode(text).length <= HOLDS;

/** The code as one SVG path in units of a square. */
export function codePath(squares: readonly (readonly boolean[])[]): string {
  let path = '';
  squares.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      path += `M${from} ${y}h${x - from + 1}v1h${from - x - 1}z`;
    }
  });
  return path;
}
