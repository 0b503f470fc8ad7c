import type { Pixel, PictureSize } from './marks';
import { sightOf, toImage, type Pinhole } from './pinhole';

/** A straight line in the world as the camera sees it. */
export interface GroundLine {
  readonly kind: 'grid' | 'target' | 'post';
  readonly from: Pixel;
  readonly to: Pixel;
}

/** The grid: half a metre a square, from behind the ball to beyond it and from behind the player to beyond the ball line, m. */
const STEP = 0.5;
const ALONG = { from: -1.5, to: 3 };
const ACROSS = { from: -1.5, to: 1 };
/** The post stands where the ball lies, m. */
const POST = 1.8;
/** Lines are cut this far in front of the camera, m. */
const NEAREST = 0.3;

type Place = readonly [number, number, number];

/** The ground about the ball, the target line through it and an upright post on it: what a coach holds against the film. `ball`: m, world. */
export function drawGround(camera: Pinhole, size: PictureSize, ball: readonly [number, number]): readonly GroundLine[] {
  const [x, z] = ball;
  const sight = sightOf(camera);
  const depth = (p: Place): number =>
    (p[0] - sight[0]) * sight[9] + (p[1] - sight[1]) * sight[10] + (p[2] - sight[2]) * sight[11];
  const image = (p: Place): Pixel => {
    const out = new Float64Array(2);
    toImage(sight, size, p[0], p[1], p[2], out);
    return [out[0], out[1]];
  };
  const lines: GroundLine[] = [];
  const add = (kind: GroundLine['kind'], a: Place, b: Place): void => {
    const [near, far] = depth(a) <= depth(b) ? [a, b] : [b, a];
    if (depth(far) <= NEAREST) return;
    const cut = Math.max(0, (NEAREST - depth(near)) / (depth(far) - depth(near)));
    const from: Place = [0, 1, 2].map((i) => near[i] + cut * (far[i] - near[i])) as unknown as Place;
    lines.push({ kind, from: image(from), to: image(far) });
  };
  for (let dz = ACROSS.from; dz <= ACROSS.to; dz += STEP) {
    if (dz !== 0) add('grid', [x + ALONG.from, 0, z + dz], [x + ALONG.to, 0, z + dz]);
  }
  for (let dx = ALONG.from; dx <= ALONG.to; dx += STEP)
    add('grid', [x + dx, 0, z + ACROSS.from], [x + dx, 0, z + ACROSS.to]);
  add('target', [x + ALONG.from, 0, z], [x + 30, 0, z]);
  add('post', [x, 0, z], [x, POST, z]);
  return lines;
}
