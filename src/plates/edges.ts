import type { Rings } from '../figure/loft';

/** Numbers an entry: a point's normal and how far its faces lean away from it. */
const ROW = 4;
/** Room for rounding, sine. */
const SLACK = 1e-3;
/** On the rim of a solid faces are missing: such a point can always be on the contour. */
const ALWAYS = 2;

/**
 * Which points of a solid can be on its contour, seen from where. A point can only if the faces around it do not all face the viewer
 * and do not all look away: if the angle between view and normal is within `lean` of a right angle. Rows of normal (unit, the part's
 * own axes) and sine of the lean, one a point. Worked out once for a player.
 */
export function findLeans({ rings, ringCount, segments }: Rings): Float64Array {
  const leans = new Float64Array(ringCount * segments * ROW);
  const faces = faceNormals(rings, ringCount, segments);
  for (let ring = 0; ring < ringCount; ring++) {
    for (let j = 0; j < segments; j++) {
      const at = (ring * segments + j) * ROW;
      const around: number[] = [];
      for (const r of [ring - 1, ring]) {
        for (const s of [(j + segments - 1) % segments, j]) {
          if (r >= 0 && r < ringCount - 1) around.push((r * segments + s) * 6, (r * segments + s) * 6 + 3);
        }
      }
      writeLean(faces, around, leans, at);
      if (ring === 0 || ring === ringCount - 1) leans[at + 3] = ALWAYS;
    }
  }
  return leans;
}

/** Unit normals of the two triangles of every face between two rings. */
function faceNormals(rings: Float64Array, ringCount: number, segments: number): Float64Array {
  const faces = new Float64Array(Math.max(0, ringCount - 1) * segments * 6);
  for (let ring = 0; ring < ringCount - 1; ring++) {
    for (let j = 0; j < segments; j++) {
      const a = (ring * segments + j) * 3;
      const b = (ring * segments + ((j + 1) % segments)) * 3;
      const at = (ring * segments + j) * 6;
      writeNormal(rings, a, a + segments * 3, b, faces, at);
      writeNormal(rings, b, a + segments * 3, b + segments * 3, faces, at + 3);
    }
  }
  return faces;
}

function writeNormal(p: Float64Array, a: number, b: number, c: number, out: Float64Array, at: number): void {
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(x, y, z) || 1;
  out.set([x / size, y / size, z / size], at);
}

/** The middle of the normals around a point, and the sine of the widest angle to one of them. */
function writeLean(faces: Float64Array, around: readonly number[], out: Float64Array, at: number): void {
  let [x, y, z] = [0, 0, 0];
  for (const i of around) {
    x += faces[i];
    y += faces[i + 1];
    z += faces[i + 2];
  }
  const size = Math.hypot(x, y, z) || 1;
  let least = 1;
  for (const i of around) least = Math.min(least, (faces[i] * x + faces[i + 1] * y + faces[i + 2] * z) / size);
  const lean = least <= 0 ? ALWAYS : Math.sqrt(Math.max(0, 1 - least * least)) + SLACK;
  out.set([x / size, y / size, z / size, lean], at);
}
