import { createFigure } from '../figure/figure';
import { createPlacement } from '../figure/partIds';
import { placeFigure } from '../figure/place';
import { heelLiftAt } from '../figure/stance';
import { createPose } from '../model/chain';
import { createFrameTimes } from './fit/checkpointTerms';
import type { FilmFit } from './fit/fitFilm';
import { sightOf } from './pinhole';
import { traceParts } from './trace';

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
  const { leadArmParallel: arm, shaftParallel = [], fps, arePictures } = marks;
  const [shaft] = shaftParallel;
  return (frame) => {
    if (arePictures) {
      if (frame === arm?.frame) return { t: times.arm(x), share: 0 };
      return frame === shaft?.frame ? { t: times.shaft(x), share: 1 } : undefined;
    }
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
