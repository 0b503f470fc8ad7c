/** Where a box's or a codec's four letters stand for the `nth` time (from 0), bytes from the start. Throws where they do not. */
export function findLetters(bytes: Uint8Array, letters: string, nth = 0): number {
  const codes = Array.from(letters, (letter) => letter.charCodeAt(0));
  for (let at = 0, count = 0; at + 4 <= bytes.length; at++) {
    if (codes.every((code, i) => bytes[at + i] === code) && count++ === nth) return at;
  }
  throw new Error(`The file has no ${letters}.`);
}

/** A copy with other bytes from `at` on. */
export function withBytes(
  bytes: Uint8Array<ArrayBuffer>,
  at: number,
  others: readonly number[],
): Uint8Array<ArrayBuffer> {
  const copy = bytes.slice();
  copy.set(others, at);
  return copy;
}

/** A copy in which four letters are others, everywhere. */
export function withLetters(bytes: Uint8Array<ArrayBuffer>, from: string, to: string): Uint8Array<ArrayBuffer> {
  const copy = bytes.slice();
  const codes = Array.from(to, (letter) => letter.charCodeAt(0));
  for (let nth = 0; ; nth++) {
    try {
      copy.set(codes, findLetters(bytes, from, nth));
    } catch {
      if (nth === 0) throw new Error(`The file has no ${from}.`);
      return copy;
    }
  }
}

/** A copy with nothing but zeros in a part of its pictures: shares of the data box of an MP4. */
export function withHole(bytes: Uint8Array<ArrayBuffer>, from: number, to: number): Uint8Array<ArrayBuffer> {
  const name = findLetters(bytes, 'mdat');
  const view = new DataView(bytes.buffer);
  const short = view.getUint32(name - 4);
  const start = name + (short === 1 ? 12 : 4);
  const length = short === 1 ? Number(view.getBigUint64(name + 4)) - 16 : short - 8;
  return bytes.slice().fill(0, Math.floor(start + from * length), Math.floor(start + to * length));
}
