import type { Figure } from '../figure/figure';
import { createPlacement, PART, type PartId } from '../figure/partIds';
import { placeFigure } from '../figure/place';
import { heelLiftAt } from '../figure/stance';
import { AT, createPose } from '../model/chain';
import { K } from '../model/keys';
import { swingPose, type Swing } from '../reading/swing';
import { GLASS_X } from './ground';

const SAMPLES = 14;
const PARTS: readonly PartId[] = [
  'footLead',
  'footTrail',
  'elbowLead',
  'elbowTrail',
  'pelvis',
  'kneeLead',
  'fistTrail',
];
/** Room round the figure's joints for its flesh, fractions of stature. */
const FLESH = 0.04;

/**
 * Points of a swing that a picture of it must hold: the figure from the top to the exit, the head's trace from the top to
 * impact, the ball, the foot of the glass sheet (on the ground at `glassFootZ`). World frame, m, three numbers each.
 */
export function framePoints(swing: Swing, figure: Figure, ball: Float64Array, glassFootZ: number): Float64Array {
  const { times } = swing.reference;
  const pose = createPose();
  const out = createPlacement();
  const { k } = figure.measures;
  const points: number[] = [...ball, GLASS_X.from, 0, glassFootZ, GLASS_X.to, 0, glassFootZ];
  const round = (x: number, y: number, z: number, r: number): void => {
    points.push(x - r, y, z, x + r, y, z, x, Math.max(0, y - r), z, x, y + r, z, x, y, z - r, x, y, z + r);
  };
  for (let i = 0; i <= SAMPLES; i++) {
    const t = times[K.top] + ((times[K.exit] - times[K.top]) * i) / SAMPLES;
    swingPose(swing, t, pose);
    placeFigure(figure, pose, { ballPoint: ball, heelLift: heelLiftAt(swing, t) }, out);
    for (const id of PARTS) {
      const at = PART[id] * 12 + 9;
      round(out[at], out[at + 1], out[at + 2], FLESH * k);
    }
    const head = PART.headEgg * 12;
    const crown = 0.132 * k;
    round(
      out[head + 9] + out[head + 3] * crown,
      out[head + 10] + out[head + 4] * crown,
      out[head + 11] + out[head + 5] * crown,
      0.03,
    );
    if (t <= times[K.impact]) round(pose[AT.head], pose[AT.head + 1], pose[AT.head + 2], 0.05);
  }
  return Float64Array.from(points);
}
