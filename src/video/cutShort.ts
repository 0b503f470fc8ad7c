/** Boxes looked at, at most. */
const MOST_BOXES = 4000;
const FIRST_BOXES: ReadonlySet<string> = new Set(['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip']);

/**
 * Whether a film goes on behind the end of its file, as when a copy broke off: pictures would be missing where its index still counts them.
 * Sources: MP4 and MOV, ISO/IEC 14496-12, 4.2; WebM, RFC 8794, 4 and 6, and RFC 9559, 5.1.
 */
export async function isCutShort(file: Blob): Promise<boolean> {
  let at = 0;
  for (let count = 0; count < MOST_BOXES && at + 16 <= file.size; count++) {
    const view = await viewOf(file, at, 16);
    if (count === 0 && view.getUint32(0) === EBML) return isSegmentCut(file);
    const type = String.fromCharCode(...new Uint8Array(view.buffer, 4, 4));
    if (count === 0 && !FIRST_BOXES.has(type)) return false;
    const short = view.getUint32(0);
    // 0: up to the end of the file. 1: the length stands behind the name.
    const length = short === 1 ? Number(view.getBigUint64(8)) : short;
    if (length < 8) return false;
    at += length;
    if (at > file.size) return type === 'mdat' || type === 'moov';
  }
  return false;
}

const EBML = 0x1a45dfa3;
const SEGMENT = 0x18538067;

/** The same of a WebM, whose second element holds everything. */
async function isSegmentCut(file: Blob): Promise<boolean> {
  const head = readLength(await viewOf(file, 4, 8));
  if (!head) return false;
  const at = 4 + head.bytes + head.length;
  const view = await viewOf(file, at, 12);
  if (view.byteLength < 12 || view.getUint32(0) !== SEGMENT) return false;
  const segment = readLength(new DataView(view.buffer, 4));
  return segment !== undefined && at + 4 + segment.bytes + segment.length > file.size;
}

/** A length of one to eight bytes; undefined where it is not known (all ones), or longer. */
function readLength(view: DataView): { readonly bytes: number; readonly length: number } | undefined {
  if (view.byteLength < 8) return undefined;
  const first = view.getUint8(0);
  const bytes = Math.clz32(first) - 23;
  if (bytes > 8) return undefined;
  let length = first & (0xff >> bytes);
  let isUnknown = length === 0xff >> bytes;
  for (let i = 1; i < bytes; i++) {
    length = 256 * length + view.getUint8(i);
    isUnknown &&= view.getUint8(i) === 0xff;
  }
  return isUnknown ? undefined : { bytes, length };
}

const viewOf = async (file: Blob, from: number, length: number): Promise<DataView> =>
  new DataView(await file.slice(from, from + length).arrayBuffer());
