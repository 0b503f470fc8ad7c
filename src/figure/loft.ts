/** Where a loft is given by hand. Lengths in fractions of stature or in metres, as the caller scales them. */
interface Station {
  /** Place along the part, 0 start to 1 end. */
  readonly t: number;
  /** Half-width across and half-depth. */
  readonly x: number;
  readonly z: number;
  /** Centre of the ring off the part's axis. */
  readonly ox?: number;
  readonly oz?: number;
  /** Exponent of the superellipse: 2 is an ellipse, more is squarer. */
  readonly n?: number;
}

/** A turned solid: rings along +Y, the ends rounded over the given lengths. */
export interface Loft {
  readonly stations: readonly Station[];
  readonly startCap?: number;
  readonly endCap?: number;
  /** Exponents of the rounding, 2 is a quarter circle. */
  readonly startPower?: number;
  readonly endPower?: number;
  readonly steps?: number;
  readonly segments?: number;
}

/** Rings of a solid: `ringCount * segments` points, three numbers each, in the part's own axes. */
export interface Rings {
  readonly rings: Float64Array;
  readonly ringCount: number;
  readonly segments: number;
}

type Radius = 'x' | 'z' | 'ox' | 'oz' | 'n';
const DEFAULTS: Record<Radius, number> = { x: 0, z: 0, ox: 0, oz: 0, n: 2 };

/** The ends close to this share of their radius: a hole too small to see, and no two points alike. */
const CLOSED = 0.004;

/**
 * Value of one column of the stations at `t`, by a Catmull-Rom curve through them; ends repeat. Units of the column.
 */
function stationValue(stations: readonly Station[], key: Radius, t: number): number {
  const last = stations.length - 1;
  let i = 0;
  while (i < last - 1 && t > stations[i + 1].t) i++;
  const at = (index: number): number => stations[Math.max(0, Math.min(last, index))][key] ?? DEFAULTS[key];
  const from = stations[i].t;
  const u = Math.max(0, Math.min(1, (t - from) / (stations[i + 1].t - from)));
  const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
  return 0.5 * (2 * b + u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a))));
}

/** Share of the radius left `distance` from a rounded end of length `cap`: 0 at the tip, 1 past the cap. Dimensionless. */
function capShare(distance: number, cap: number, power: number): number {
  if (cap <= 0 || distance >= cap) return 1;
  return Math.pow(Math.max(0, 1 - Math.pow(1 - distance / cap, power)), 1 / power);
}

const raised = (value: number, power: number): number => Math.sign(value) * Math.pow(Math.abs(value), power);

/**
 * Rings of a loft from `from` to `to` along +Y (m). Radii, offsets and caps are multiplied by `scale`.
 * Rings stand closer toward the ends, where the rounding is.
 */
export function loft(shape: Loft, from: number, to: number, scale: number): Rings {
  const { stations, startCap = 0, endCap = 0, startPower = 2, endPower = 2, steps = 18, segments = 26 } = shape;
  const length = to - from;
  const rings = new Float64Array((steps + 1) * segments * 3);
  for (let k = 0; k <= steps; k++) {
    const t = (1 - Math.cos((Math.PI * k) / steps)) / 2;
    const y = t * length;
    const cap = capShare(y, startCap * scale, startPower) * capShare(length - y, endCap * scale, endPower);
    const share = Math.max(CLOSED, cap) * scale;
    const x = stationValue(stations, 'x', t) * share;
    const z = stationValue(stations, 'z', t) * share;
    const ox = stationValue(stations, 'ox', t) * scale;
    const oz = stationValue(stations, 'oz', t) * scale;
    const power = 2 / stationValue(stations, 'n', t);
    for (let j = 0; j < segments; j++) {
      const angle = (2 * Math.PI * j) / segments;
      const at = (k * segments + j) * 3;
      rings[at] = ox + x * raised(Math.cos(angle), power);
      rings[at + 1] = from + y;
      rings[at + 2] = oz + z * raised(Math.sin(angle), power);
    }
  }
  return { rings, ringCount: steps + 1, segments };
}

/** Rings of an ellipsoid around the origin with half-axes x, y, z (m). */
export function ball(x: number, y: number, z: number, steps = 12, segments = 20): Rings {
  const stations = [
    { t: 0, x, z },
    { t: 1, x, z },
  ];
  return loft({ stations, startCap: y, endCap: y, steps, segments }, -y, y, 1);
}

/** Changes every point of a solid in place, by its three coordinates (m). Returns the same solid. */
export function reshape(solid: Rings, change: (point: [number, number, number]) => void): Rings {
  const point: [number, number, number] = [0, 0, 0];
  for (let at = 0; at < solid.rings.length; at += 3) {
    for (let i = 0; i < 3; i++) point[i] = solid.rings[at + i];
    change(point);
    solid.rings.set(point, at);
  }
  return solid;
}
