import type { Rings } from '../../figure/loft';

/** Numbers an entry: a point's normal and how far its faces lean away from it. */
const ROW = 4;
/** Room for rounding, sine. */
const SLACK = 1e-3;
/** Some face turns away from the middle by a right angle or more, or has no area: such a point can always be on the contour. */
const ALWAYS = 2;

/**
 * Which points of a solid can be on its contour, seen from where. A point can only if the faces around it do not all face the viewer
 * and do not all look away: if the angle between view and normal is within `lean` of a right angle. The two ends count as closed by
 * a flat face. Rows of normal (unit, the part's own axes) and sine of the lean, one a point. Worked out once for a player.
 */
export function findSilhouetteCandidates(solid: Rings): Float32Array {
  const { ringCount, segments } = solid;
  const leans = new Float32Array(ringCount * segments * ROW);
  const faces = faceNormals(solid);
  for (let ring = 0; ring < ringCount; ring++) {
    for (let j = 0; j < segments; j++) {
      writeLean(faces, facesAround(solid, ring, j), leans, (ring * segments + j) * ROW);
    }
  }
  return leans;
}

/** Where the normals of the faces around a point stand. Faces are counted from the flat one below the first ring. */
function facesAround({ ringCount, segments }: Rings, ring: number, j: number): number[] {
  const around: number[] = [];
  for (const band of [ring, ring + 1]) {
    for (const s of [(j + segments - 1) % segments, j]) {
      const isFlat = band === 0 || band === ringCount;
      around.push((band * segments + s) * 6, ...(isFlat ? [] : [(band * segments + s) * 6 + 3]));
    }
  }
  return around;
}

/** Unit normals of the two triangles of every face between two rings; before the first and after the last the flat face of the end. */
function faceNormals({ rings, ringCount, segments }: Rings): Float64Array {
  const faces = new Float64Array((ringCount + 1) * segments * 6);
  const flat = new Float64Array(3);
  for (let j = 0; j < segments; j++) {
    writeEnd(rings, 0, segments, 1, flat);
    faces.set(flat, j * 6);
    writeEnd(rings, (ringCount - 1) * segments * 3, segments, -1, flat);
    faces.set(flat, (ringCount * segments + j) * 6);
  }
  for (let ring = 0; ring < ringCount - 1; ring++) {
    for (let j = 0; j < segments; j++) {
      const a = (ring * segments + j) * 3;
      const b = (ring * segments + ((j + 1) % segments)) * 3;
      const at = ((ring + 1) * segments + j) * 6;
      writeNormal(rings, a, a + segments * 3, b, faces, at);
      writeNormal(rings, b, a + segments * 3, b + segments * 3, faces, at + 3);
    }
  }
  return faces;
}

function writeNormal(p: Float64Array, a: number, b: number, c: number, out: Float64Array, at: number): void {
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  writeUnit(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx, out, at);
}

/** Normal of the flat face that closes an end: half the sum of the cross products around its rim (the vector area of a polygon). */
function writeEnd(p: Float64Array, rim: number, segments: number, sense: 1 | -1, out: Float64Array): void {
  let [x, y, z] = [0, 0, 0];
  for (let j = 1; j + 1 < segments; j++) {
    const [b, c] = [rim + j * 3, rim + j * 3 + 3];
    const [ux, uy, uz] = [p[b] - p[rim], p[b + 1] - p[rim + 1], p[b + 2] - p[rim + 2]];
    const [vx, vy, vz] = [p[c] - p[rim], p[c + 1] - p[rim + 1], p[c + 2] - p[rim + 2]];
    x += uy * vz - uz * vy;
    y += uz * vx - ux * vz;
    z += ux * vy - uy * vx;
  }
  writeUnit(sense * x, sense * y, sense * z, out, 0);
}

function writeUnit(x: number, y: number, z: number, out: Float64Array, at: number): void {
  const size = Math.hypot(x, y, z);
  if (size > 0) out.set([x / size, y / size, z / size], at);
}

/**
 * The middle of the normals around a point, and the sine of the widest angle to one of them. A face without an area has no
 * normal: what lies beyond it is not known. */
function writeLean(faces: Float64Array, around: readonly number[], out: Float32Array, at: number): void {
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
