import type { Part } from '../../figure/figure';
import type { Frame } from '../plate/frame';

/** Distance between two engraved lines along a part, m. */
const SPACING = 0.011;
/** Where the light comes from: over the viewer's left shoulder, seen down the line (world x, y, z; unit length). */
const LIGHT = [-0.42, 0.74, -0.525] as const;
/** Engraved where less light than this falls; chalked where more than the other. Cosines. */
const DARK = 0.12;
const LIT = 0.62;
/** Lines end a little before the contour, or the edge would double. Cosine of normal and view. */
const FACING = 0.16;

/** Rings of a part about 11 mm apart with their normals, worked out once for a player. */
export interface EngravedPart {
  readonly lines: number;
  readonly segments: number;
  /** Points and normals, the part's own axes: lines * segments * 3. */
  readonly points: Float64Array;
  readonly normals: Float64Array;
}

/** Prepares the engraving of one part; parts too short for a line get none. */
export function engrave({ rings, ringCount, segments }: Part): EngravedPart {
  const heights: number[] = [];
  const height = (ring: number): number => rings[ring * segments * 3 + 1];
  const from = height(0);
  const to = height(ringCount - 1);
  const count = Math.max(0, Math.floor((to - from) / SPACING) - 1);
  const start = from + (to - from - (count - 1) * SPACING) / 2;
  for (let i = 0; i < count; i++) heights.push(start + i * SPACING);
  const points = new Float64Array(count * segments * 3);
  const normals = new Float64Array(count * segments * 3);
  let ring = 0;
  heights.forEach((y, line) => {
    while (ring < ringCount - 2 && height(ring + 1) < y) ring++;
    const share = (y - height(ring)) / (height(ring + 1) - height(ring) || 1);
    for (let j = 0; j < segments; j++) {
      const a = (ring * segments + j) * 3;
      const b = a + segments * 3;
      const at = (line * segments + j) * 3;
      for (let i = 0; i < 3; i++) points[at + i] = rings[a + i] + share * (rings[b + i] - rings[a + i]);
      const next = (ring * segments + ((j + 1) % segments)) * 3;
      const last = (ring * segments + ((j + segments - 1) % segments)) * 3;
      writeNormal(rings, next, last, b, a, normals, at);
    }
  });
  return { lines: count, segments, points, normals };
}

/** Unit normal from the way round (`next` - `last`) and the way along (`b` - `a`), turned outward. */
function writeNormal(
  r: Float64Array,
  next: number,
  last: number,
  b: number,
  a: number,
  out: Float64Array,
  at: number,
): void {
  const ux = r[next] - r[last];
  const uy = r[next + 1] - r[last + 1];
  const uz = r[next + 2] - r[last + 2];
  const vx = r[b] - r[a];
  const vy = r[b + 1] - r[a + 1];
  const vz = r[b + 2] - r[a + 2];
  // Rings turn from x to z about -y, so along cross round points outward.
  const nx = vy * uz - vz * uy;
  const ny = vz * ux - vx * uz;
  const nz = vx * uy - vy * ux;
  const size = Math.hypot(nx, ny, nz) || 1;
  out[at] = nx / size;
  out[at + 1] = ny / size;
  out[at + 2] = nz / size;
}

/** Engraved lines of one placed part as SVG paths in tenths of a unit: the side turned from the light, and the lit side. */
export function engravingPaths(
  part: EngravedPart,
  placement: Float64Array,
  m: number,
  frame: Frame,
): { shade: string; lit: string } {
  const { lines, segments, points, normals } = part;
  let shade = '';
  let lit = '';
  // 0: not drawn here, 1: shade, 2: lit. A line starts where the state changes.
  for (let line = 0; line < lines; line++) {
    let state = 0;
    for (let j = 0; j <= segments; j++) {
      const at = (line * segments + (j % segments)) * 3;
      const now = stateOf(normals, placement, m, at);
      if (now !== 0) {
        const a = points[at];
        const b = points[at + 1];
        const c = points[at + 2];
        const z = placement[m + 2] * a + placement[m + 5] * b + placement[m + 8] * c + placement[m + 11];
        const y = placement[m + 1] * a + placement[m + 4] * b + placement[m + 7] * c + placement[m + 10];
        const x = Math.round(10 * (frame.x0 + frame.side * frame.scale * z));
        const step = `${state === now ? 'L' : 'M'}${x} ${Math.round(10 * (frame.y0 - frame.scale * y))}`;
        if (now === 1) shade += step;
        else lit += step;
      }
      state = now;
    }
  }
  return { shade, lit };
}

function stateOf(normals: Float64Array, p: Float64Array, m: number, at: number): 0 | 1 | 2 {
  const a = normals[at];
  const b = normals[at + 1];
  const c = normals[at + 2];
  const nx = p[m] * a + p[m + 3] * b + p[m + 6] * c;
  // The viewer stands behind the player: a surface faces the viewer when its normal points to -X.
  if (-nx < FACING) return 0;
  const ny = p[m + 1] * a + p[m + 4] * b + p[m + 7] * c;
  const nz = p[m + 2] * a + p[m + 5] * b + p[m + 8] * c;
  const light = nx * LIGHT[0] + ny * LIGHT[1] + nz * LIGHT[2];
  return light < DARK ? 1 : light > LIT ? 2 : 0;
}
