/** A frame of a film as it is shown while stepping: smaller than the film where that is large, its own rotation applied. */
export interface Glance {
  readonly w: number;
  readonly h: number;
  /** Red, green, blue, opaque; row by row from the top left. */
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
}

/** A decoded frame as the decoder gave it: a plane of brightness, and colour at half its size. Half as much memory as drawn pixels need, or less. */
export interface Planes {
  readonly format: 'I420' | 'NV12';
  /** Plane after plane without gaps, 8 bits each (ITU-R BT.601 or BT.709). */
  readonly data: Uint8Array<ArrayBuffer>;
  readonly w: number;
  readonly h: number;
  /** Clockwise, deg: how it has to be turned. */
  readonly rotation: 0 | 90 | 180 | 270;
  readonly matrix: 'bt709' | 'smpte170m';
  readonly isFullRange: boolean;
}

/** Longer side of a glance, px, at least: a tablet shows a film some 700 high. */
const LONGEST = 900;

/** How many pixels of a film become one of its glance, in each direction. */
export const findStep = (w: number, h: number): number => Math.max(1, Math.floor(Math.max(w, h) / LONGEST));

/** Shares of red and blue in brightness: ITU-R BT.709-6, 3.2; BT.601-7, 2.5.1. */
const SHARES = { bt709: [0.2126, 0.0722], smpte170m: [0.299, 0.114] } as const;

/** The glance of a frame: each of its pixels is the mean of those it stands for. Into the memory `into`, where that has its size. */
export function toGlance({ format, data, w, h, rotation, matrix, isFullRange }: Planes, into?: ArrayBuffer): Glance {
  const step = findStep(w, h);
  const [wide, tall] = [Math.floor(w / step), Math.floor(h / step)];
  const [kr, kb] = SHARES[matrix];
  const kg = 1 - kr - kb;
  // Limited range: brightness 16 to 235, colour 16 to 240.
  const [black, gain, swing] = isFullRange ? [0, 1, 1] : [16, 255 / 219, 255 / 224];
  const red = 2 * (1 - kr) * swing;
  const blue = 2 * (1 - kb) * swing;
  const greenU = (-2 * kb * (1 - kb) * swing) / kg;
  const greenV = (-2 * kr * (1 - kr) * swing) / kg;
  const half = (w + 1) >> 1;
  const size = half * ((h + 1) >> 1);
  // Where the colours of a pixel stand: in planes of their own, or one beside the other.
  const [apart, v0] = format === 'I420' ? [1, size] : [2, 1];
  const u0 = w * h;

  const isTurned = rotation === 90 || rotation === 270;
  const across = isTurned ? tall : wide;
  // From one pixel of the frame to the next, to the right and down, on the turned picture.
  const [start, right, down] = {
    0: [0, 1, across],
    90: [tall - 1, across, -1],
    180: [wide * tall - 1, -1, -across],
    270: [across * (wide - 1), -across, 1],
  }[rotation];
  const bytes = 4 * wide * tall;
  const pixels = new Uint8ClampedArray(into?.byteLength === bytes ? into : new ArrayBuffer(bytes));
  // Four bytes at a time: every screen's machine has the first one lowest.
  const words = new Uint32Array(pixels.buffer);
  // In 65,536ths, rounded: whole numbers are added faster.
  const whole = (share: number): number => Math.round(65_536 * share);
  const [light, r, gu, gv, b] = [gain / (step * step), red, greenU, greenV, blue].map(whole);
  const dark = whole(0.5 - black * gain);
  const middle = step >> 1;
  for (let y = 0; y < tall; y++) {
    const row = y * step * w;
    const colours = u0 + ((y * step + middle) >> 1) * half * apart;
    let to = start + y * down;
    for (let x = 0; x < wide; x++, to += right) {
      let at = row + x * step;
      let sum = 0;
      if (step === 2) sum = data[at] + data[at + 1] + data[at + w] + data[at + w + 1];
      else for (let j = 0; j < step; j++, at += w) for (let i = 0; i < step; i++) sum += data[at + i];
      const colour = colours + ((x * step + middle) >> 1) * apart;
      const u = data[colour] - 128;
      const v = data[colour + v0] - 128;
      const bright = sum * light + dark;
      const R = (bright + r * v) >> 16;
      const G = (bright + gu * u + gv * v) >> 16;
      const B = (bright + b * u) >> 16;
      words[to] =
        0xff000000 |
        ((B < 0 ? 0 : B > 255 ? 255 : B) << 16) |
        ((G < 0 ? 0 : G > 255 ? 255 : G) << 8) |
        (R < 0 ? 0 : R > 255 ? 255 : R);
    }
  }
  return isTurned ? { w: tall, h: wide, pixels } : { w: wide, h: tall, pixels };
}
