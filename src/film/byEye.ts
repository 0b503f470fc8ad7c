import type { FilmMarks, FrameMarks, Pixel } from './marks';

/** What the picture shows to someone who takes it for true, m: scale from the club at address, the frame in which the shaft looks level. */
export interface ByEye {
  readonly leadArmParallel?: number;
  readonly shaftParallel?: number;
}

/** Farthest from the marked frames, in frames, that the level look may be taken to lie. */
const FARTHEST = 12;

/** Readings by eye. `clubLength` in m. Senses as in the readings themselves. */
export function readByEye({ address, leadArmParallel: arm, shaftParallel = [] }: FilmMarks, clubLength: number): ByEye {
  const { clubHead, gripEnd } = address;
  const scale = clubLength / Math.hypot(clubHead[0] - gripEnd[0], clubHead[1] - gripEnd[1]);
  const gap = arm && gapByEye(arm);
  const depth = depthByEye(shaftParallel);
  return {
    ...(gap !== undefined && { leadArmParallel: gap * scale }),
    ...(depth !== undefined && { shaftParallel: depth * scale }),
  };
}

/** From the shaft's line to the middle of the trail upper arm, px; undefined where the arm is not marked. */
function gapByEye({ shaft, hands, clubHead, trailShoulder, trailElbow }: FrameMarks): number | undefined {
  if (!trailShoulder || !trailElbow) return undefined;
  const [from, to]: readonly [Pixel, Pixel] = shaft ?? [hands, clubHead];
  const [first, last] = isNearer(from, to, hands) ? [from, to] : [to, from];
  const right = last[0] - first[0];
  const up = first[1] - last[1];
  const armRight = (trailShoulder[0] + trailElbow[0]) / 2 - first[0];
  const armUp = first[1] - (trailShoulder[1] + trailElbow[1]) / 2;
  return (armUp * right - armRight * up) / Math.hypot(right, up);
}

const isNearer = (a: Pixel, b: Pixel, to: Pixel): boolean =>
  Math.hypot(a[0] - to[0], a[1] - to[1]) <= Math.hypot(b[0] - to[0], b[1] - to[1]);

/** How far the head stands right of the hands where the shaft looks level, px: carried on from the frames that were marked. */
function depthByEye(frames: readonly FrameMarks[]): number | undefined {
  if (frames.length === 0) return undefined;
  const depth = ({ hands, clubHead }: FrameMarks): number => clubHead[0] - hands[0];
  const drop = ({ hands, clubHead }: FrameMarks): number => clubHead[1] - hands[1];
  const [first, second] = frames;
  if (!second) return depth(first);
  const fall = drop(second) - drop(first);
  const share = fall > 0 ? Math.max(-FARTHEST, Math.min(FARTHEST, -drop(first) / fall)) : 0;
  return depth(first) + share * (depth(second) - depth(first));
}
