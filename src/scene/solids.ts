import { BufferAttribute, BufferGeometry } from 'three';
import type { Figure, Material } from '../figure/figure';
import { loft, reshape, type Rings } from '../figure/loft';

/** Surfaces, in the order of the geometry's groups. */
export const SURFACES = ['beech', 'walnut', 'dark', 'steel', 'head', 'brass'] as const;
export type Surface = (typeof SURFACES)[number];
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

/**
 * The whole figure with its club as one geometry: every vertex belongs rigidly to one part (attribute `part`), one group a surface.
 * Positions stay in the part's own axes: the grain of the wood is drawn from them.
 */
export function buildGeometry(figure: Figure): BufferGeometry {
  const solids = solidsOf(figure);
  const pointCount = solids.reduce((sum, { rings }) => sum + rings.ringCount * rings.segments, 0);
  const position = new Float32Array(pointCount * 3);
  const owner = new Float32Array(pointCount);
  const index: number[] = [];
  const geometry = new BufferGeometry();
  let base = 0;
  SURFACES.forEach((surface, group) => {
    const start = index.length;
    for (const solid of solids.filter((one) => one.surface === surface)) {
      const { rings, ringCount, segments } = solid.rings;
      position.set(rings, base * 3);
      owner.fill(solid.part, base, base + ringCount * segments);
      for (let i = 0; i < ringCount - 1; i++) {
        for (let j = 0; j < segments; j++) {
          const a = base + i * segments + j;
          const b = base + i * segments + ((j + 1) % segments);
          index.push(a, a + segments, b, b, a + segments, b + segments);
        }
      }
      base += ringCount * segments;
    }
    geometry.addGroup(start, index.length - start, group);
  });
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('part', new BufferAttribute(owner, 1));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  return geometry;
}
