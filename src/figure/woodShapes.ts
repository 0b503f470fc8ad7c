import type { Club } from '../model/club';
import type { Rings } from './loft';

/**
 * Heads of driver and wood, turned from walnut behind a steel face. The head's axes, as in every club: x heel to toe, y out of the
 * face, z up the face; the origin is the head's reference point on the line of the shaft. Metres.
 */

/** How far the face of any club stands in front of the reference point, m. */
export const FACE_FORWARD = 0.002;
/** Where on the face the ball meets it, m from the reference point toward the toe. */
export const STRIKE_TOWARD_TOE = 0.032;

/** A line drawn on the head, in the head's axes, m. */
export interface HeadLine {
  readonly id: string;
  readonly points: Float64Array;
  readonly radius: number;
  readonly material: 'ink' | 'brass';
}

type WoodKind = 'driver' | 'wood';
export type Wood = Club & { readonly kind: WoodKind };
/** Whether a club has a head of wood: a driver or a fairway wood. */
export const isWood = (club: Club): club is Wood => club.kind === 'driver' || club.kind === 'wood';

/**
 * Layers from the face to the back: depth behind the face, half-width, height over and depth under the belt, where the belt is up
 * the head, the middle toward the toe. Shares of the head's size. Doubled layers keep an edge sharp.
 */
const LAYERS: readonly (readonly [number, number, number, number, number, number])[] = [
  [0, 0.004, 0.004, 0.004, 0.46, 0.5],
  [0, 0.8, 0.4, 0.4, 0.46, 0.5],
  [0, 0.8, 0.4, 0.4, 0.46, 0.5],
  [0.025, 0.86, 0.46, 0.45, 0.46, 0.5],
  [0.09, 0.94, 0.52, 0.46, 0.46, 0.5],
  [0.22, 0.99, 0.55, 0.46, 0.47, 0.495],
  [0.38, 1, 0.54, 0.45, 0.48, 0.49],
  [0.54, 0.965, 0.49, 0.43, 0.49, 0.48],
  [0.69, 0.87, 0.41, 0.38, 0.5, 0.47],
  [0.82, 0.71, 0.31, 0.31, 0.51, 0.46],
  [0.92, 0.5, 0.2, 0.22, 0.52, 0.455],
  [0.98, 0.27, 0.1, 0.12, 0.53, 0.45],
  [1, 0.01, 0.01, 0.01, 0.53, 0.45],
];
/** The layer that is the rim of the face, and the one where the belt begins. */
const RIM = 2;
const BELT = 3;

/** Sizes, m: wide from heel to toe, high, deep from the face to the back. */
const SIZES = {
  driver: { wide: 0.121, high: 0.06, deep: 0.112 },
  wood: { wide: 0.1, high: 0.043, deep: 0.086 },
} as const;
/** How far below the reference point the sole lies, m. */
const SOLE = 0.021;
/** How far the face is rounded back at heel and toe, m. */
const BULGE = 0.0035;
/** Height of the middle of the face, m. */
const heartOf = (kind: WoodKind): number => SIZES[kind].high * 0.46 - SOLE;

/** A point of the skin, m, appended to `out`: layer `k`, `angle` round it (rad; 0 the toe, a quarter turn the crown). */
function pushPoint({ kind, loft }: Wood, k: number, angle: number, out: number[]): void {
  const { wide, high, deep } = SIZES[kind];
  const [back, width, over, under, belt, toward] = LAYERS[k];
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  // The crown is a dome, the sole nearly flat; over the heel the crown runs into the neck.
  const lift = s > 0 ? over * Math.pow(s, 0.95) : -under * Math.sqrt(-s);
  const neck = Math.max(0, -c) * Math.max(0, s) * 0.1 * (1 - back);
  const across = (width * wide * Math.sign(c) * Math.pow(Math.abs(c), 0.88)) / 2;
  const x = STRIKE_TOWARD_TOE + wide * (toward - 0.5) + across;
  const bulge = k <= BELT ? BULGE * ((x - STRIKE_TOWARD_TOE) / (wide / 2)) ** 2 : 0;
  // Level behind a face that leans back: sheared by the loft.
  const depth = back * deep;
  out.push(
    x,
    FACE_FORWARD - depth * Math.cos(loft) - bulge,
    high * (belt + lift + neck) - SOLE + 0.85 * depth * Math.sin(loft),
  );
}

/** The pear of wood: crown domed, sole flat. */
export function woodSolid(club: Wood, segments = 44): Rings {
  const rings: number[] = [];
  // From the back, so that rings climb along +Y as in every other solid.
  for (let k = LAYERS.length - 1; k >= 0; k--) {
    for (let j = 0; j < segments; j++) pushPoint(club, k, (2 * Math.PI * j) / segments, rings);
  }
  return { rings: Float64Array.from(rings), ringCount: LAYERS.length, segments };
}

/** Rows of the face plate: out of the face (m), share of the face's rim. */
const PLATE: readonly (readonly [number, number])[] = [
  [-0.001, 0.92],
  [0.0009, 0.92],
  [0.0009, 0.92],
  [0.0009, 0.004],
];

/** The steel plate let into the face. */
export function facePlate(club: Wood, segments = 44): Rings {
  const rim: number[] = [];
  for (let j = 0; j < segments; j++) pushPoint(club, RIM, (2 * Math.PI * j) / segments, rim);
  const heart = heartOf(club.kind);
  const rings = PLATE.flatMap(([out, share]) =>
    Array.from({ length: segments }, (_, j) => [
      STRIKE_TOWARD_TOE + (rim[3 * j] - STRIKE_TOWARD_TOE) * share,
      FACE_FORWARD + (rim[3 * j + 1] - FACE_FORWARD) * share * share + out,
      heart + (rim[3 * j + 2] - heart) * share,
    ]).flat(),
  );
  return { rings: Float64Array.from(rings), ringCount: PLATE.length, segments };
}

/** Half of the face that stays bare of grooves, where the ball is met, m. */
const BARE = 0.009;

/** Grooves either side of the middle, the brass edge of the sole, the brass seam between crown and sole. */
export function woodLines(club: Wood): HeadLine[] {
  const { wide, high } = SIZES[club.kind];
  const lines: HeadLine[] = [];
  const y = FACE_FORWARD + 0.0009;
  for (let i = -2; i <= 2; i++) {
    const z = heartOf(club.kind) + i * high * 0.135;
    const half = wide * (0.3 - 0.028 * Math.abs(i));
    for (const side of [-1, 1]) {
      const [near, far] = [STRIKE_TOWARD_TOE + side * BARE, STRIKE_TOWARD_TOE + side * half];
      const points = Float64Array.of(near, y, z, far, y - 0.0008, z);
      lines.push({ id: `groove${i + 3}${side < 0 ? 'Heel' : 'Toe'}`, points, radius: 0.0009, material: 'ink' });
    }
  }
  const sole: number[] = [];
  for (let i = 0; i < 22; i++) pushPoint(club, RIM, -Math.PI * (0.96 - (0.92 * i) / 21), sole);
  lines.push({ id: 'leadingEdge', points: Float64Array.from(sole), radius: 0.0026, material: 'brass' });
  const seam: number[] = [];
  for (let k = BELT; k < LAYERS.length - 1; k++) pushPoint(club, k, 0, seam);
  for (let k = LAYERS.length - 2; k >= BELT; k--) pushPoint(club, k, Math.PI, seam);
  lines.push({ id: 'seam', points: Float64Array.from(seam), radius: 0.0012, material: 'brass' });
  return lines;
}
