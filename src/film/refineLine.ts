import type { Pixel } from './marks';

/** Brightness of a picture, or of a part of one, row by row, 0 to 255. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly data: ArrayLike<number>;
}

/** A line found along the shaft: where it runs beside the two taps, and how well it stands out. */
export interface RefinedLine {
  readonly line: readonly [Pixel, Pixel];
  /** How far the line stands out, over what stands out beside it. */
  readonly contrast: number;
}

/** Farthest from a tap that the line may lie, px. */
const REACH = 14;
/** Half widths at either end that are tried, px: from a thin shaft to one that its motion blurs, more toward the head. */
const HALF_WIDTHS = [
  [1.5, 1.5],
  [3, 3],
  [6, 6],
  [1.5, 4],
  [1.5, 9],
  [3, 9],
  [4, 1.5],
  [9, 1.5],
  [9, 3],
] as const;
/** Room beside the reach for the widest. */
const MARGIN = 36;
const SIDE = REACH + MARGIN;
const WIDTH = 2 * SIDE + 1;
/** Places along the line that are looked at. */
const PLACES = 96;
/** Most that one place counts, in brightness: one bright spot is no line. More in the search, where a bright shaft outdoes the shade on its side. */
const MOST = 25;
const MOST_SEARCHED = 60;
/** The part of the shaft, from the hands to the head, that neither covers. */
const BARE = [0.25, 0.97] as const;
/** Less contrast is no line: pictures without one stayed below 3.7 in 450 (our measurement). */
const LEAST_CONTRAST = 6;
const ROUNDS = 4;

/**
 * Finds the line of the shaft between two taps, which may lie some px beside it: first the best of all straight lines within reach, light or
 * dark, then its middle along its length by least squares. Undefined where nothing stands out.
 */
export function refineLine(picture: Grey, from: Pixel, to: Pixel): RefinedLine | undefined {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 4)) return undefined;
  const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  const across = [-along[1], along[0]] as const;
  const profiles = sampleAcross(picture, from, along, across, length);
  const coarse = findCoarse(profiles);
  const fine = settle(profiles, coarse);
  const contrast = contrastOf(profiles, fine);
  if (!(contrast >= LEAST_CONTRAST) || Math.abs(fine.start) > REACH || Math.abs(fine.end) > REACH) return undefined;
  const beside = (p: Pixel, off: number): Pixel => [p[0] + off * across[0], p[1] + off * across[1]];
  return { line: [beside(from, fine.start), beside(to, fine.end)], contrast };
}

/** The same between the marks of hands and head, where neither covers the shaft. */
export function refineShaft(picture: Grey, hands: Pixel, head: Pixel): RefinedLine | undefined {
  const at = (share: number): Pixel => [
    hands[0] + share * (head[0] - hands[0]),
    hands[1] + share * (head[1] - hands[1]),
  ];
  return refineLine(picture, at(BARE[0]), at(BARE[1]));
}

/** A line among the profiles: its offset at either end, px across, its half width there, and whether it is lighter (+1) or darker (-1). */
interface Candidate {
  readonly start: number;
  readonly end: number;
  readonly halves: readonly [number, number];
  readonly sign: number;
}

/** Brightness across the line at every place along it. */
function sampleAcross(
  { width, height, data }: Grey,
  from: Pixel,
  along: readonly [number, number],
  across: readonly [number, number],
  length: number,
): Float64Array {
  const out = new Float64Array(PLACES * WIDTH);
  const read = (x: number, y: number): number => {
    const cx = Math.max(0, Math.min(width - 1.001, x));
    const cy = Math.max(0, Math.min(height - 1.001, y));
    const ix = Math.floor(cx);
    const iy = Math.floor(cy);
    const fx = cx - ix;
    const fy = cy - iy;
    const i = iy * width + ix;
    return (
      (data[i] * (1 - fx) + data[i + 1] * fx) * (1 - fy) + (data[i + width] * (1 - fx) + data[i + width + 1] * fx) * fy
    );
  };
  for (let p = 0; p < PLACES; p++) {
    const s = (p / (PLACES - 1)) * length;
    for (let k = 0; k < WIDTH; k++) {
      const o = k - SIDE;
      out[p * WIDTH + k] = read(from[0] + s * along[0] + o * across[0], from[1] + s * along[1] + o * across[1]);
    }
  }
  return out;
}

const valueAt = (profiles: Float64Array, place: number, offset: number): number => {
  const at = Math.max(0, Math.min(WIDTH - 1.001, offset + SIDE));
  const i = Math.floor(at);
  const f = at - i;
  const row = place * WIDTH + i;
  return profiles[row] * (1 - f) + profiles[row + 1] * f;
};

/**
 * How far the middle stands out against the nearer of both sides, in brightness, or 0 where it lies between them: a dark line beside a light one is
 * the shade of that. Lighter is positive.
 */
function crest(profiles: Float64Array, place: number, offset: number, half: number): number {
  const middle =
    (valueAt(profiles, place, offset) * 2 +
      valueAt(profiles, place, offset - half / 2) +
      valueAt(profiles, place, offset + half / 2)) /
    4;
  const a = middle - valueAt(profiles, place, offset - 2 * half);
  const b = middle - valueAt(profiles, place, offset + 2 * half);
  return a * b <= 0 ? 0 : Math.abs(a) < Math.abs(b) ? a : b;
}

const halfAt = ([start, end]: readonly [number, number], place: number): number =>
  start + ((end - start) * place) / (PLACES - 1);
const offsetAt = ({ start, end }: Candidate, place: number): number => start + ((end - start) * place) / (PLACES - 1);

/** The line that stands out most among all whole offsets at either end. */
function findCoarse(profiles: Float64Array): Candidate {
  let best: Candidate = { start: 0, end: 0, halves: HALF_WIDTHS[0], sign: 1 };
  let most = -Infinity;
  for (const halves of HALF_WIDTHS) {
    const table = new Float64Array(PLACES * (2 * REACH + 1));
    for (let p = 0; p < PLACES; p++) {
      const half = halfAt(halves, p);
      for (let o = -REACH; o <= REACH; o++) {
        const value = crest(profiles, p, o, half);
        table[p * (2 * REACH + 1) + o + REACH] = Math.max(-MOST_SEARCHED, Math.min(MOST_SEARCHED, value));
      }
    }
    for (let start = -REACH; start <= REACH; start++) {
      for (let end = -REACH; end <= REACH; end++) {
        let sum = 0;
        for (let p = 0; p < PLACES; p += 2) {
          const o = Math.round(start + ((end - start) * p) / (PLACES - 1)) + REACH;
          sum += table[p * (2 * REACH + 1) + o];
        }
        if (Math.abs(sum) > most + 1e-9)
          [most, best] = [Math.abs(sum), { start, end, halves, sign: Math.sign(sum) || 1 }];
      }
    }
  }
  return best;
}

/** Moves a line to the middle of what stands out along it, by least squares over the places where something does. */
function settle(profiles: Float64Array, coarse: Candidate): Candidate {
  let line = coarse;
  for (let round = 0; round < ROUNDS; round++) {
    const { halves, sign } = line;
    let [n, sx, sxx, sy, sxy] = [0, 0, 0, 0, 0];
    for (let p = 0; p < PLACES; p++) {
      const half = halfAt(halves, p);
      const middle = offsetAt(line, p);
      const floor = (sign * (valueAt(profiles, p, middle - 2 * half) + valueAt(profiles, p, middle + 2 * half))) / 2;
      let weight = 0;
      let moment = 0;
      for (let d = -1.5 * half; d <= 1.5 * half + 1e-9; d += half / 4) {
        const over = Math.max(0, sign * valueAt(profiles, p, middle + d) - floor);
        weight += over;
        moment += over * d;
      }
      if (weight <= 0) continue;
      const x = p / (PLACES - 1);
      const y = middle + moment / weight;
      const w = Math.min(weight, 60 * half);
      n += w;
      sx += w * x;
      sxx += w * x * x;
      sy += w * y;
      sxy += w * x * y;
    }
    const spread = n * sxx - sx * sx;
    if (!(spread > 1e-9)) return line;
    const slope = (n * sxy - sx * sy) / spread;
    const start = (sy - slope * sx) / n;
    line = { ...line, start, end: start + slope };
  }
  return line;
}

/** Lines beside the one that was found, in half widths: what stands out there is no shaft. */
const BESIDE = [-5, -4.5, -4, 4, 4.5, 5];

/** What stands out along the line, over what stands out along lines beside it. */
function contrastOf(profiles: Float64Array, line: Candidate): number {
  const mean = (aside: number): number => {
    let sum = 0;
    for (let p = 0; p < PLACES; p++) {
      const half = halfAt(line.halves, p);
      sum += Math.max(-MOST, Math.min(MOST, line.sign * crest(profiles, p, offsetAt(line, p) + aside * half, half)));
    }
    return sum / PLACES;
  };
  const beside = Math.sqrt(BESIDE.reduce((sum, aside) => sum + mean(aside) ** 2, 0) / BESIDE.length);
  // On an even ground nothing stands out: half a step of brightness counts at least.
  return mean(0) / Math.max(0.5, beside);
}
