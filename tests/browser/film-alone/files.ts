import { createRandom } from '../../reference/random';
import { evenTimes, makeNumbered, makeSound, type Numbered } from './films';
import { findLetters, withBytes, withHole, withLetters } from './patch';

export type Bytes = Uint8Array<ArrayBuffer> | Blob;

/** A file as it might be chosen, and the number that its first frame that can be seen carries. */
interface FileSpec {
  readonly make: () => Promise<Bytes> | Bytes;
  readonly first?: number;
  readonly rotation?: Numbered['rotation'];
}

const FRAMES = 24;
const BASE: Numbered = { container: 'mp4', codec: 'avc', times: evenTimes(FRAMES, 60) };
const made = new Map<string, Promise<Uint8Array<ArrayBuffer>>>();
/** A film that differs from the usual one by `part`; each is encoded once. */
const film = (part: Partial<Numbered> = {}): Promise<Uint8Array<ArrayBuffer>> => {
  const key = JSON.stringify(part);
  if (!made.has(key)) made.set(key, makeNumbered({ ...BASE, ...part }));
  return made.get(key)!;
};
const half = (bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> => bytes.slice(0, Math.floor(bytes.length / 2));
const text = (words: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(words);

/** A PNG's first bytes: so many pixels, and nothing of them there. */
function header(w: number, h: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(64);
  const view = new DataView(bytes.buffer);
  // Signature, and the name of the first chunk.
  view.setUint32(0, 0x89504e47);
  view.setUint32(4, 0x0d0a1a0a);
  view.setUint32(12, 0x49484452);
  view.setUint32(16, w);
  view.setUint32(20, h);
  return bytes;
}

async function picture(): Promise<Blob> {
  const canvas = new OffscreenCanvas(30, 50);
  canvas.getContext('2d')!.fillRect(0, 0, 30, 50);
  return canvas.convertToBlob({ type: 'image/png' });
}

/** Two steps of a phone that was busy: from 4 to 60 ms. */
const uneven = (): readonly number[] => {
  const random = createRandom(3);
  let at = 0;
  return Array.from({ length: FRAMES }, () => {
    const time = at;
    at += 0.004 + 0.056 * random();
    return time;
  });
};
/** 240 frames a second, of which the middle was slowed to an eighth by the phone that saved it. */
const retimed = (): readonly number[] => {
  let at = 0;
  return Array.from({ length: FRAMES }, (_, i) => {
    const time = at;
    at += i > 6 && i < 18 ? 8 / 240 : 1 / 240;
    return time;
  });
};

/** What may be chosen instead of a film, or is one and hard to read. */
export const FILES: Readonly<Record<string, FileSpec>> = {
  empty: { make: () => new Uint8Array(0) },
  noise: {
    make: () => {
      const random = createRandom(5);
      return Uint8Array.from({ length: 40_000 }, () => Math.floor(random() * 256));
    },
  },
  words: { make: () => text('This is a letter.') },
  'film named as a picture': { make: async () => new File([await film()], 'film.jpg', { type: 'image/jpeg' }) },
  'picture named as a film': { make: async () => new File([await picture()], 'film.mp4', { type: 'video/mp4' }) },
  'HEIC photo': { make: () => Uint8Array.from([0, 0, 0, 24, ...text('ftypheic'), 0, 0, 0, 0, ...text('mif1heic')]) },
  'cut MP4': { make: async () => half(await film()) },
  'cut MP4 with its index in front': { make: async () => half(await film({ isFastStart: true })) },
  'cut WebM': { make: async () => half(await film({ container: 'webm', codec: 'vp8' })) },
  'picture 100,000 px wide': { make: () => header(100_000, 100_000) },
  'film 65,535 px wide': {
    make: async () => {
      const bytes = await film();
      // Width and height stand 28 bytes behind the name of the sample entry, which follows its table's (ISO/IEC 14496-12, 12.1.3).
      const table = findLetters(bytes, 'stsd');
      const entry = table + findLetters(bytes.subarray(table), 'avc1');
      return withBytes(bytes, entry + 28, [255, 255, 255, 255]);
    },
  },
  'over 4 GB': {
    make: () => {
      // Many times the same megabytes: nothing of it is copied.
      const piece = new Blob([new Uint8Array(16 * 1024 ** 2)]);
      return new Blob(Array.from({ length: 257 }, () => piece));
    },
  },
  'over a minute': { make: () => film({ times: evenTimes(70, 1) }) },
  'over a minute and says nothing of its length': {
    make: () => film({ container: 'webm', codec: 'vp8', times: evenTimes(70, 1), isLive: true }),
  },
  'no track': { make: async () => withLetters(await film(), 'trak', 'skip') },
  'sound only': { make: makeSound },
  HEVC: { make: async () => withLetters(withLetters(await film(), 'avc1', 'hvc1'), 'avcC', 'hvcC') },
  'codec that nobody knows': { make: async () => withLetters(await film(), 'avc1', 'xyz1') },
  'codec that nobody plays': { make: async () => withLetters(await film(), 'avc1', 'apcn') },
  'hole at the start': { make: async () => withHole(await film(), 0, 0.3) },
  'turned by 90': { make: () => film({ rotation: 90 }), rotation: 90 },
  'turned by 180': { make: () => film({ rotation: 180 }), rotation: 180 },
  'turned by 270': { make: () => film({ rotation: 270, container: 'mov' }), rotation: 270 },
  'uneven times': { make: () => film({ times: uneven() }) },
  're-timed slow motion': { make: () => film({ times: retimed() }) },
  'start cut off by an edit list': {
    make: () => film({ times: evenTimes(FRAMES, 60).map((time) => time - 5 / 60) }),
    first: 5,
  },
  'late start by an edit list': { make: () => film({ times: evenTimes(FRAMES, 60).map((time) => time + 0.5) }) },
  'with sound': { make: () => film({ hasSound: true }) },
  'hole in the middle': { make: async () => withHole(await film({ times: evenTimes(90, 60) }), 0.4, 0.5) },
};
