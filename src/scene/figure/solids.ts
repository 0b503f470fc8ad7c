import { BufferAttribute, BufferGeometry, SphereGeometry } from 'three';
import type { Figure, Material } from '../../figure/figure';
import { loft, reshape, type Rings } from '../../figure/loft';
import { PART_IDS } from '../../figure/partIds';
import { BALL_RADIUS } from '../../figure/stance';

/** Surfaces of figure and club, in the order in which the shader of the solids knows them. */
export const SURFACES = ['beech', 'walnut', 'dark', 'steel', 'head', 'brass'] as const;
export type Surface = (typeof SURFACES)[number];
/** The surfaces of everything solid: the ball comes last. */
const SOLIDITIES = [...SURFACES, 'ball'] as const;
export type Solidity = (typeof SOLIDITIES)[number];
const SURFACE_OF: Record<Material | 'ink', Surface> = {
  beech: 'beech',
  walnut: 'walnut',
  grip: 'dark',
  ink: 'dark',
  steel: 'steel',
  head: 'head',
  brass: 'brass',
};

/** One solid of the figure: its surface, the part that carries it, its rings in that part's axes. */
export interface Solid {
  readonly surface: Surface;
  readonly part: number;
  readonly rings: Rings;
}

/** A pin: a domed cylinder along the x or z axis of its ball. */
function pinRings(half: number, radius: number, axis: 'x' | 'z'): Rings {
  const stations = [
    { t: 0, x: 1, z: 1 },
    { t: 1, x: 1, z: 1 },
  ];
  const dome = 0.4;
  const solid = loft({ stations, startCap: dome, endCap: dome, steps: 7, segments: 12 }, -half, half, radius);
  // Turning the axes cyclically keeps the hand.
  return reshape(solid, (p) => {
    const [x, y, z] = p;
    if (axis === 'x') {
      p[0] = y;
      p[1] = z;
      p[2] = x;
    } else {
      p[0] = z;
      p[1] = x;
      p[2] = y;
    }
  });
}

/** A thin tube along a polyline, for drawn lines that belong to a solid. */
function tubeRings(points: Float64Array, radius: number): Rings {
  const count = points.length / 3;
  const segments = 5;
  const rings = new Float64Array((count + 2) * segments * 3);
  const at = (i: number, axis: number): number => points[Math.max(0, Math.min(count - 1, i)) * 3 + axis];
  for (let row = 0; row < count + 2; row++) {
    const i = Math.max(0, Math.min(count - 1, row - 1));
    const t = [0, 1, 2].map((axis) => at(i + 1, axis) - at(i - 1, axis));
    const size = Math.hypot(...t) || 1;
    const d = t.map((v) => v / size);
    const side = Math.abs(d[1]) < 0.9 ? [d[2], 0, -d[0]] : [0, -d[2], d[1]];
    const length = Math.hypot(...side) || 1;
    const u = side.map((v) => v / length);
    const v = [d[1] * u[2] - d[2] * u[1], d[2] * u[0] - d[0] * u[2], d[0] * u[1] - d[1] * u[0]];
    const r = row === 0 || row === count + 1 ? radius * 0.01 : radius;
    for (let j = 0; j < segments; j++) {
      const angle = (2 * Math.PI * j) / segments;
      for (let axis = 0; axis < 3; axis++) {
        rings[(row * segments + j) * 3 + axis] =
          at(i, axis) + r * (Math.cos(angle) * v[axis] + Math.sin(angle) * u[axis]);
      }
    }
  }
  return { rings, ringCount: count + 2, segments };
}

/** Parts, pins and drawn lines of a figure. */
export function solidsOf(figure: Figure): Solid[] {
  return [
    ...figure.parts.map((part, i): Solid => ({ surface: SURFACE_OF[part.material], part: i, rings: part })),
    ...figure.inlays.map(({ part, material, rings }): Solid => ({ surface: SURFACE_OF[material], part, rings })),
    ...figure.pins.map((pin): Solid => ({
      surface: 'brass',
      part: pin.part,
      rings: pinRings(pin.half, pin.radius, pin.axis),
    })),
    ...figure.marks.map((mark): Solid => ({
      surface: SURFACE_OF[mark.material],
      part: mark.part,
      rings: tubeRings(mark.points, mark.radius),
    })),
  ];
}

/** The ball follows the figure's parts. */
export const BALL_PART = PART_IDS.length;

/**
 * The rims of two neighbouring rings joined by triangles, `base` the first vertex of the solid. With a `stride` of 2 only every other
 * ring and, where they are even in number, every other segment is taken; the last ring always.
 */
function joinRings({ ringCount, segments }: Rings, base: number, stride: 1 | 2, index: number[]): void {
  const skip = segments % 2 === 0 ? stride : 1;
  const last = ringCount - 1;
  for (let i = 0; i < last; i += stride) {
    const next = (Math.min(i + stride, last) - i) * segments;
    for (let j = 0; j < segments; j += skip) {
      const a = base + i * segments + j;
      const b = base + i * segments + ((j + skip) % segments);
      index.push(a, a + next, b, b, a + next, b + next);
    }
  }
}

/** One geometry; how many of its indices are seen, and how many behind them cast the shadow. */
interface SolidGeometry {
  readonly geometry: BufferGeometry;
  readonly seen: number;
  readonly coarse: number;
}

/**
 * The whole figure with its club and the ball as one geometry: every vertex belongs rigidly to one part (attribute `part`) and has one
 * surface (attribute `surface`, its place in `SOLIDITIES`). Positions stay in the part's own axes: the grain of the wood is drawn from them.
 * Behind the triangles that are seen come coarser ones, a quarter as many, for the shadow: it is blurred anyway.
 */
export function buildGeometry(figure: Figure): SolidGeometry {
  const solids = solidsOf(figure);
  const ball = new SphereGeometry(BALL_RADIUS, 28, 18);
  const [ballPlaces, ballNormals] = [ball.getAttribute('position'), ball.getAttribute('normal')];
  const ringed = solids.reduce((sum, { rings }) => sum + rings.ringCount * rings.segments, 0);
  const count = ringed + ballPlaces.count;
  const position = new Float32Array(count * 3);
  const owner = new Float32Array(count).fill(BALL_PART);
  const surface = new Float32Array(count).fill(SOLIDITIES.indexOf('ball'));
  const index: number[] = [];
  const coarse: number[] = [];
  let base = 0;
  for (const { rings, part, surface: own } of solids) {
    const end = base + rings.ringCount * rings.segments;
    position.set(rings.rings, base * 3);
    owner.fill(part, base, end);
    surface.fill(SOLIDITIES.indexOf(own), base, end);
    joinRings(rings, base, 1, index);
    joinRings(rings, base, 2, coarse);
    base = end;
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('part', new BufferAttribute(owner, 1));
  geometry.setAttribute('surface', new BufferAttribute(surface, 1));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  // A sphere's normals are known exactly.
  position.set(ballPlaces.array, ringed * 3);
  geometry.getAttribute('normal').array.set(ballNormals.array, ringed * 3);
  for (const i of ball.index!.array) {
    index.push(ringed + i);
    coarse.push(ringed + i);
  }
  geometry.setIndex([...index, ...coarse]);
  geometry.setDrawRange(0, index.length);
  return { geometry, seen: index.length, coarse: coarse.length };
}
