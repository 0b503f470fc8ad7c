import type { Measures } from './measures';
import { loft, reshape, type Loft, type Rings } from './loft';
import { SHAPES } from './shapes';

/** Parts that are carved after turning: fingers, sole, the lines of the face. */

const HEAD_LENGTH = 0.132;

/** The egg of the head for stature `k` (m): chin at y = 0, +Y to the crown, +Z to the face. */
export const headEgg = (k: number): Rings => loft(SHAPES.headEgg, 0, HEAD_LENGTH * k, k);

/**
 * The two construction lines with which a draughtsman starts a head: brow and centre. In the egg's axes, m, for stature `k`.
 */
export function faceLines(k: number): { id: string; points: Float64Array }[] {
  const shape: Loft = { ...SHAPES.headEgg, steps: 60, segments: 72 };
  const { rings, segments } = loft(shape, 0, HEAD_LENGTH * k, k);
  const point = (step: number, segment: number): number[] => {
    const at = (step * segments + segment) * 3;
    return [...rings.subarray(at, at + 3)];
  };
  const centre = Array.from({ length: 23 }, (_, i) => point(6 + 2 * i, 18)).flat();
  const brow = Array.from({ length: 15 }, (_, i) => point(32, 4 + 2 * i)).flat();
  return [
    { id: 'faceCentre', points: Float64Array.from(centre) },
    { id: 'faceBrow', points: Float64Array.from(brow) },
  ];
}

/** Four fingers closed round the grip: a barrel of `length` (m) along the shaft, grooved on the side away from the wrist. */
export function fistSolid(length: number, k: number): Rings {
  return reshape(loft(SHAPES.fist, -length / 2, length / 2, k), (point) => {
    const t = point[1] / length + 0.5;
    const groove = t > 0.1 && t < 0.9 ? Math.pow(Math.abs(Math.cos(4 * Math.PI * t)), 9) : 0;
    // Grooves fade toward the back of the hand, which is one piece.
    const fingers = Math.max(0, Math.min(1, 0.6 - point[2] / (0.016 * k)));
    const share = 1 - 0.17 * groove * fingers;
    point[0] *= share;
    point[2] *= share;
  });
}

/** A foot: +Y to the toes, +Z up, origin under the ankle on the ground; the sole is flat. m. */
export function footSolid({ k, ankle, footScale }: Measures): Rings {
  const heel = -0.042 * k * footScale;
  const solid = loft(SHAPES.foot, heel, heel + 0.152 * k * footScale, k);
  const height = ankle / (0.039 * k);
  return reshape(solid, (point) => {
    const t = (point[1] - heel) / (0.152 * k * footScale);
    // The arch of the sole is hollow on the inside: the foot's middle line bends a little.
    point[0] += 0.0035 * k * Math.sin(Math.PI * Math.min(1, t * 1.05));
    point[2] = Math.max(0.0007 * k, point[2] * height);
    // A welt: the sole stands a hair wider than what is above it.
    point[0] *= 1 + 0.07 * Math.exp(-(((point[2] / k - 0.0042) / 0.0026) ** 2));
  });
}
