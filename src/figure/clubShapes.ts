import type { Club } from '../model/club';
import { FACE_FORWARD, isWood, woodLines, woodSolid, type HeadLine } from './woodShapes';
import { loft, type Rings } from './loft';

/**
 * The club's solids, metres. The head's axes: x heel to toe, y out of the face, z up the face; the origin is the head's
 * reference point on the line of the shaft.
 */

/** End of the rubber grip, m from the butt. */
const GRIP_LENGTH = 0.27;
const HOSEL_LENGTH = 0.055;

type Outline = readonly (readonly [number, number])[];

/** Blade of an iron seen from the front: heel, sole, toe, top line. Millimetres, x to the toe, z up. */
// prettier-ignore
const IRON: Outline = [
  [-8, 8], [-7, -4], [-1, -14], [14, -19], [38, -20], [58, -18], [69, -11], [76, 4], [78, 22], [75, 35], [67, 41], [57, 39],
  [43, 31], [26, 20], [13, 13], [2, 13],
];
/** Of a wedge: rounder toe, higher, deeper sole. */
// prettier-ignore
const WEDGE: Outline = [
  [-8, 8], [-7, -5], [-1, -15], [14, -20], [36, -22], [56, -20], [68, -12], [76, 4], [78, 24], [74, 39], [65, 46], [53, 44],
  [40, 34], [25, 21], [13, 13], [2, 13],
];

/** A closed outline by Catmull-Rom, `count` points, millimetres. */
function smoothOutline(outline: Outline, count: number): [number, number][] {
  const n = outline.length;
  return Array.from({ length: count }, (_, k) => {
    const s = (k * n) / count;
    const i = Math.floor(s);
    const u = s - i;
    const [a, b, c, d] = [-1, 0, 1, 2].map((step) => outline[(i + step + n) % n]);
    const at = (j: 0 | 1): number =>
      0.5 *
      (2 * b[j] +
        u * (c[j] - a[j] + u * (2 * a[j] - 5 * b[j] + 4 * c[j] - d[j] + u * (3 * (b[j] - c[j]) + d[j] - a[j]))));
    return [at(0), at(1)];
  });
}

/** Layers of a blade from the face to the back: depth behind the face (mm), share of the outline. */
const BLADE_LAYERS: readonly (readonly [number, number])[] = [
  [0, 0],
  [0, 0.95],
  [0, 0.95],
  [0.6, 0.985],
  [1.8, 1],
  [8, 1],
  [9.6, 0.97],
  [9.6, 0.97],
  [10, 0.82],
  [7.6, 0.74],
  [7.4, 0],
];

/**
 * A blade: the outline laid in layers from the face to a hollowed back, the sole thicker than the top line. Doubled layers
 * keep an edge sharp. Metres.
 */
function blade(outline: Outline, segments = 44): Rings {
  const points = smoothOutline(outline, segments);
  const rings = new Float64Array(BLADE_LAYERS.length * segments * 3);
  BLADE_LAYERS.forEach(([depth, share], k) => {
    const row = BLADE_LAYERS.length - 1 - k; // from the back, so that rings climb along +Y as in every other solid
    points.forEach(([x, z], j) => {
      // The heart of the blade runs from heel to toe, rising; outlines shrink toward it, so that no layer folds over.
      const heart = Math.max(14, Math.min(62, x));
      const heartZ = -3 + (heart - 14) * 0.3;
      const layerZ = heartZ + (z - heartZ) * share;
      const low = Math.max(0, Math.min(1, (4 - layerZ) / 24));
      const at = (row * segments + j) * 3;
      rings[at] = (heart + (x - heart) * share) / 1000;
      rings[at + 1] = FACE_FORWARD - (depth * (1 + 0.9 * low)) / 1000;
      rings[at + 2] = layerZ / 1000;
    });
  });
  return { rings, ringCount: BLADE_LAYERS.length, segments };
}

/** The head of a club in the head's axes, m. */
export function headSolid(club: Club): Rings {
  return isWood(club) ? woodSolid(club) : blade(club.kind === 'wedge' ? WEDGE : IRON);
}

/** The grip: +Y from the butt toward the head, m from the butt. */
export function gripSolid(): Rings {
  const stations = [
    { t: 0, x: 0.0138, z: 0.0138 },
    { t: 0.5, x: 0.0122, z: 0.0122 },
    { t: 1, x: 0.0104, z: 0.0104 },
  ];
  return loft({ stations, startCap: 0.005, endCap: 0.0015, steps: 8, segments: 16 }, 0, GRIP_LENGTH, 1);
}

/** The steel: +Y from the butt, from inside the grip to the reference point, thicker at the hosel. m from the butt. */
export function shaftSolid(club: Club): Rings {
  const from = GRIP_LENGTH - 0.01;
  const to = club.length + 0.004;
  const hosel = club.length - HOSEL_LENGTH;
  const thick = isWood(club) ? 0.0062 : 0.0066;
  const profile: readonly (readonly [number, number])[] = [
    [from, 0.0068],
    [hosel - 0.003, 0.0049],
    [hosel + 0.003, thick],
    [to, thick + 0.0004],
  ];
  const segments = 14;
  const rings = new Float64Array((profile.length + 2) * segments * 3);
  const rows = [[from, 0.00002] as const, ...profile, [to, 0.00002] as const];
  rows.forEach(([y, radius], k) => {
    for (let j = 0; j < segments; j++) {
      const angle = (2 * Math.PI * j) / segments;
      const place = (k * segments + j) * 3;
      rings[place] = radius * Math.cos(angle);
      rings[place + 1] = y;
      rings[place + 2] = radius * Math.sin(angle);
    }
  });
  return { rings, ringCount: rows.length, segments };
}

/** The dark sleeve where the shaft enters the head, m from the butt. */
export function sleeveSolid(club: Club): Rings {
  const end = club.length - HOSEL_LENGTH;
  const stations = [
    { t: 0, x: 0.0056, z: 0.0056 },
    { t: 1, x: 0.0074, z: 0.0074 },
  ];
  return loft({ stations, startCap: 0.001, endCap: 0.001, steps: 4, segments: 14 }, end - 0.018, end + 0.001, 1);
}

/** Grooves of an iron: the lowest, from heel to toe; how much higher the next lies, and how much further its ends. m. */
const GROOVES = {
  low: -0.0122,
  from: 0.012,
  to: 0.06,
  up: 0.0088,
  fromBy: 0.0052,
  toBy: 0.0024,
  radius: 0.0011,
} as const;

/** Lines drawn on the head, in its axes, m: grooves across the face and the bright edge round to the toe; on a wood its seam. */
export function headLines(club: Club): HeadLine[] {
  if (isWood(club)) return woodLines(club);
  const y = FACE_FORWARD + 0.0003;
  // Five, as far apart as the face allows: any closer and they are a grey from a distance.
  const lines = Array.from({ length: 5 }, (_, i): HeadLine => {
    const z = GROOVES.low + i * GROOVES.up;
    const [from, to] = [GROOVES.from + i * GROOVES.fromBy, GROOVES.to + i * GROOVES.toBy];
    return {
      id: `groove${i + 1}`,
      points: Float64Array.of(from, y, z, to, y, z),
      radius: GROOVES.radius,
      material: 'ink',
    };
  });
  const edge = smoothOutline(club.kind === 'wedge' ? WEDGE : IRON, 64).slice(6, 31);
  const points = Float64Array.from(edge.flatMap(([x, z]) => [x / 1000, FACE_FORWARD - 0.0004, z / 1000]));
  lines.push({ id: 'leadingEdge', points, radius: 0.0031, material: 'brass' });
  return lines;
}
