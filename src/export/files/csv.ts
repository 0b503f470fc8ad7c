/** A cell: text, a number already printed, or nothing. */
export type Cell = { readonly text: string } | { readonly number: string } | undefined;

/**
 * A text as a spreadsheet may read it without taking it for a formula: what starts with a sign of calculation, behind any
 * blanks, gets an apostrophe in front (the usual defence of the Open Worldwide Application Security Project).
 */
function toSafe(text: string): string {
  return /^[\s\u200b\ufeff]*[=+\-@\t\r\n|\uff1d\uff0b\uff0d\uff20]/.test(text) ? `'${text}` : text;
}

function toCell(cell: Cell): string {
  if (cell === undefined) return '';
  if ('number' in cell) return cell.number;
  const safe = toSafe(cell.text);
  return /[",\r\n;\t]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Comma-separated values (RFC 4180): decimal points whatever the device's language, lines end with CR LF. */
export const toCsv = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [head.map((text): Cell => ({ text })), ...rows].map((row) => `${row.map(toCell).join(',')}\r\n`).join('');

/** A number with so many decimals; nothing where there is none. Never "-0". */
export function toNumber(value: number, decimals: number): Cell {
  if (!Number.isFinite(value)) return undefined;
  const number = value.toFixed(decimals);
  return { number: Number(number) === 0 ? (0).toFixed(decimals) : number };
}
