import { createFigure, type Figure } from '../figure/figure';
import { createPlacement, MATRIX_SIZE } from '../figure/partIds';
import { placeFigure } from '../figure/place';
import { heelLiftAt } from '../figure/stance';
import { createPose } from '../model/chain';
import { createFrameTimes } from './fit/checkpointTerms';
import type { FilmFit } from './fit/fitFilm';
import type { PictureSize } from './marks';
import { sightOf, toImage } from './pinhole';

/** Draws the fitted player over the film. */
export interface Outliner {
  /**
   * Contour of every solid of the figure and the club as the found camera sees it at a frame, px: x and y in turn, convex. Undefined for a frame
   * whose time against the checkpoints is not known.
   */
  at(frame: number): readonly Float64Array[] | undefined;
}

/** Frames before lead arm parallel and after shaft parallel that are still drawn, as a share of the time between them. */
const BEYOND = 1;

/** Prepares drawing the player of a fit. */
export function createOutliner(fit: FilmFit): Outliner {
  const { swing } = fit.expected;
  const figure = createFigure(swing.rig.body, swing.rig.club);
  const placement = createPlacement();
  const pose = createPose();
  const sight = sightOf(fit.camera);
  const timeOf = createClock(fit);
  return {
    at(frame) {
      const when = timeOf(frame);
      if (!when) return undefined;
      fit.player.take(fit.x);
      fit.player.between(when.share, when.t, pose);
      const stance = { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, when.t) };
      placeFigure(figure, pose, stance, placement);
      return traceParts(figure, placement, sight, fit.marks.size);
    },
  };
}

/** Time of a frame, s of the reference, and its share of the way between the checkpoints. */
function createClock({ expected, marks, x }: FilmFit): (frame: number) => { t: number; share: number } | undefined {
  const times = createFrameTimes(expected, marks);
  const { leadArmParallel: arm, shaftParallel = [], fps } = marks;
  const [shaft] = shaftParallel;
  return (frame) => {
    if (arm && shaft && shaft.frame > arm.frame) {
      const along = (frame - arm.frame) / (shaft.frame - arm.frame);
      if (along < -BEYOND || along > 1 + BEYOND) return undefined;
      const from = times.arm(x);
      return { t: from + along * (times.shaft(x) - from), share: Math.max(0, Math.min(1, along)) };
    }
    const [only, t, share] = arm ? [arm, times.arm(x), 0] : [shaft, times.shaft(x), 1];
    if (!only || (fps === undefined && frame !== only.frame)) return undefined;
    const off = frame === only.frame ? 0 : (frame - only.frame) / fps!;
    return Math.abs(off) > 0.05 ? undefined : { t: t + off, share };
  };
}

/** Contour of every part of a placed figure as a camera sees it, px: x and y in turn, convex. */
export function traceParts(
  { parts }: Figure,
  placement: Float64Array,
  sight: Float64Array,
  size: PictureSize,
): readonly Float64Array[] {
  const image = new Float64Array(2);
  return parts.map(({ rings }, part) => {
    const m = part * MATRIX_SIZE;
    const points: [number, number][] = [];
    for (let i = 0; i < rings.length; i += 3) {
      const at = (axis: number): number =>
        placement[m + 9 + axis] +
        rings[i] * placement[m + axis] +
        rings[i + 1] * placement[m + 3 + axis] +
        rings[i + 2] * placement[m + 6 + axis];
      toImage(sight, size, at(0), at(1), at(2), image);
      points.push([image[0], image[1]]);
    }
    return hullOf(points);
  });
}

/** Convex hull by Andrew's monotone chain (Information Processing Letters 9, 1979). */
function hullOf(points: [number, number][]): Float64Array {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: readonly [number, number][]): [number, number][] => {
    const chain: [number, number][] = [];
    for (const p of from) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2)!, chain.at(-1)!];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return Float64Array.from([...half(sorted), ...half(sorted.toReversed())].flat());
}
