import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { findPictureSize } from '../../src/video/pictureHeader';

// PNG by pngjs; JPEG and WebP headers byte by byte from ITU-T T.81 B.2.2 and the WebP container specification.

describe('the size of a picture stands in its header', () => {
  test('PNG', () => {
    const png = PNG.sync.write(new PNG({ width: 37, height: 91 }));
    expect(findPictureSize(png)).toEqual({ w: 37, h: 91 });
  });

  test('JPEG, behind other segments and fill bytes', () => {
    const exif = [0xff, 0xe1, 0x00, 0x06, 1, 2, 3, 4];
    const table = [0xff, 0xc4, 0x00, 0x04, 9, 9];
    const frame = [0xff, 0xff, 0xc2, 0x00, 0x11, 8, 0x02, 0x58, 0x03, 0x20, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0];
    expect(findPictureSize(Uint8Array.from([0xff, 0xd8, ...exif, ...table, ...frame]))).toEqual({ w: 800, h: 600 });
  });

  test('WebP, all three kinds', () => {
    const webp = (kind: string, rest: readonly number[]): Uint8Array =>
      Uint8Array.from([
        ...Buffer.from(`RIFF0000WEBP${kind}`),
        0,
        0,
        0,
        0,
        ...rest,
        ...Array.from({ length: 16 }, () => 0),
      ]);
    expect(findPictureSize(webp('VP8X', [0, 0, 0, 0, 99, 0, 0, 199, 0, 0]))).toEqual({ w: 100, h: 200 });
    expect(findPictureSize(webp('VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a, 100, 0, 200, 0]))).toEqual({ w: 100, h: 200 });
    // 14 bits each, less one: 99 and 199.
    const bits = 99 | (199 << 14);
    expect(
      findPictureSize(webp('VP8L', [0x2f, bits & 255, (bits >> 8) & 255, (bits >> 16) & 255, bits >>> 24])),
    ).toEqual({
      w: 100,
      h: 200,
    });
  });

  test('of anything else it does not', () => {
    expect(findPictureSize(new Uint8Array(0))).toBeUndefined();
    expect(findPictureSize(Buffer.from('This is a letter that goes on for a while.'))).toBeUndefined();
    expect(findPictureSize(Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0xff, 0xff]))).toBeUndefined();
  });
});
