import { GIFEncoder } from 'gifenc';
import { PNG } from 'pngjs';

/** Two grey squares, written by an independent library. */
export function smallPng(): Uint8Array {
  const png = new PNG({ width: 2, height: 1 });
  png.data.set([80, 80, 80, 255, 160, 160, 160, 255]);
  return new Uint8Array(PNG.sync.write(png));
}

/** Two frames of one square. */
export function smallGif(): Uint8Array {
  const gif = GIFEncoder();
  const palette = [
    [80, 80, 80],
    [160, 160, 160],
  ];
  gif.writeFrame(Uint8Array.of(0), 1, 1, { palette, delay: 40 });
  gif.writeFrame(Uint8Array.of(1), 1, 1, { palette, delay: 40 });
  gif.finish();
  return gif.bytes();
}
