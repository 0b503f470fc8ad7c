/** What the first bytes of a picture file tell: its format and its size, px. */
export interface ImageHeader {
  readonly format: 'png' | 'jpeg' | 'webp';
  readonly width: number;
  readonly height: number;
}

const starts = (bytes: Uint8Array, at: number, text: string): boolean =>
  Array.from(text).every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/**
 * Format and size of a PNG, JPEG or WebP, read from its header without decoding anything: what claims to be huge is never unpacked.
 * Nothing for any other file, or a damaged one. PNG: ISO/IEC 15948, 11.2.2; JPEG: ITU-T T.81, B.2.2; WebP: RFC 9649, 2.5 to 2.7.
 */
export function readImageHeader(bytes: Uint8Array): ImageHeader | undefined {
  const found = readPng(bytes) ?? readJpeg(bytes) ?? readWebp(bytes);
  return found && found.width > 0 && found.height > 0 ? found : undefined;
}

function readPng(bytes: Uint8Array): ImageHeader | undefined {
  if (bytes.length < 24 || !starts(bytes, 0, '\x89PNG\r\n\x1a\n') || !starts(bytes, 12, 'IHDR')) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  return { format: 'png', width: view.getUint32(16), height: view.getUint32(20) };
}

/** Frame headers: all of SOF0 to SOF15 but the tables DHT, JPG and DAC among them. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

function readJpeg(bytes: Uint8Array): ImageHeader | undefined {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return undefined;
  const word = (at: number): number => (bytes[at] << 8) | bytes[at + 1];
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (isFrame(marker)) return { format: 'jpeg', width: word(at + 7), height: word(at + 5) };
    // The picture begins, or ends: no frame header came before it.
    if (marker === 0xda || marker === 0xd9) return undefined;
    at += 2 + word(at + 2);
  }
  return undefined;
}

function readWebp(bytes: Uint8Array): ImageHeader | undefined {
  if (bytes.length < 30 || !starts(bytes, 0, 'RIFF') || !starts(bytes, 8, 'WEBP')) return undefined;
  const three = (at: number): number => bytes[at] | (bytes[at + 1] << 8) | (bytes[at + 2] << 16);
  if (starts(bytes, 12, 'VP8X')) return { format: 'webp', width: three(24) + 1, height: three(27) + 1 };
  if (starts(bytes, 12, 'VP8L') && bytes[20] === 0x2f) {
    const packed = (bytes[21] | (bytes[22] << 8) | (bytes[23] << 16) | (bytes[24] << 24)) >>> 0;
    return { format: 'webp', width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1 };
  }
  if (starts(bytes, 12, 'VP8 ') && starts(bytes, 23, '\x9d\x01\x2a')) {
    return { format: 'webp', width: three(26) & 0x3fff, height: three(28) & 0x3fff };
  }
  return undefined;
}
