import { AT, type Pose } from './pose';

/** The trail elbow points to this side, in the thorax's axes: a little outward, down, forward. */
export const TRAIL_POLE = [-0.2, -1, 0.35] as const;

/**
 * The trail arm: elbow, centre of the upper arm and how far it reaches, from the trail shoulder to the trail grip.
 * Out of reach, the arm is drawn straight and the shortfall (m) stands in the pose. Writes into `p`, allocates nothing.
 */
export function placeTrailArm(upper: number, fore: number, p: Pose): void {
  const s = AT.trailShoulder;
  const g = AT.trailGrip;
  const r = AT.thoraxAxes;
  const dx = p[g] - p[s];
  const dy = p[g + 1] - p[s + 1];
  const dz = p[g + 2] - p[s + 2];
  const distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const reach = upper + fore;
  p[AT.reachRatio] = distance / reach;
  p[AT.reachShortfall] = distance > reach ? distance - reach : 0;
  const scale = distance > 1e-9 ? 1 / distance : 0;
  const ux = dx * scale;
  const uy = scale === 0 ? -1 : dy * scale;
  const uz = dz * scale;
  let px = r9(p, r, 0);
  let py = r9(p, r, 1);
  let pz = r9(p, r, 2);
  let dot = px * ux + py * uy + pz * uz;
  px -= ux * dot;
  py -= uy * dot;
  pz -= uz * dot;
  let size = Math.sqrt(px * px + py * py + pz * pz);
  if (size < 1e-9) {
    // The pole lies along the arm: any side will do, take the thorax's own sideways axis.
    dot = p[r] * ux + p[r + 1] * uy + p[r + 2] * uz;
    px = p[r] - ux * dot;
    py = p[r + 1] - uy * dot;
    pz = p[r + 2] - uz * dot;
    size = Math.sqrt(px * px + py * py + pz * pz);
  }
  const span = Math.min(Math.max(distance, Math.abs(upper - fore) + 1e-9), reach);
  const along = distance > reach ? upper : (upper * upper - fore * fore + span * span) / (2 * span);
  const off = Math.sqrt(Math.max(0, upper * upper - along * along)) / size;
  const ex = ux * along + px * off;
  const ey = uy * along + py * off;
  const ez = uz * along + pz * off;
  p[AT.trailElbow] = p[s] + ex;
  p[AT.trailElbow + 1] = p[s + 1] + ey;
  p[AT.trailElbow + 2] = p[s + 2] + ez;
  p[AT.bicep] = p[s] + ex / 2;
  p[AT.bicep + 1] = p[s + 1] + ey / 2;
  p[AT.bicep + 2] = p[s + 2] + ez / 2;
}

/** Sine of the angle between the trail arm, shoulder to grip, and the side its elbow points to. Zero: the elbow has no side. */
export function sineToPole(p: Pose): number {
  const s = AT.trailShoulder;
  const g = AT.trailGrip;
  const r = AT.thoraxAxes;
  const [dx, dy, dz] = [p[g] - p[s], p[g + 1] - p[s + 1], p[g + 2] - p[s + 2]];
  const [px, py, pz] = [r9(p, r, 0), r9(p, r, 1), r9(p, r, 2)];
  const across = Math.hypot(py * dz - pz * dy, pz * dx - px * dz, px * dy - py * dx);
  return across / (Math.hypot(dx, dy, dz) * Math.hypot(px, py, pz));
}

/** Component `i` of the pole in the world. */
function r9(p: Pose, r: number, i: number): number {
  return TRAIL_POLE[0] * p[r + i] + TRAIL_POLE[1] * p[r + 3 + i] + TRAIL_POLE[2] * p[r + 6 + i];
}
