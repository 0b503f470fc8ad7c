import { createFigure } from '../figure/figure';
import { createPlacement, PART } from '../figure/partIds';
import { placeFigure } from '../figure/place';
import { heelLiftAt } from '../figure/stance';
import { createPose } from '../model/chain';
import { K } from '../model/keys';
import { DIALS, type Movements } from '../model/movements';
import { createFrameTimes } from './fit/checkpointTerms';
import type { FilmFit } from './fit/fitFilm';
import { DIAL_SD, FIRST_DIAL } from './fit/unknowns';
import { sightOf } from './pinhole';
import { traceParts } from './trace';

/** The club's parts are the last of a contour: from this one on. */
export const FIRST_CLUB_PART = PART.grip;

/** Draws the fitted player over the film. */
export interface Outliner {
  /**
   * Contour of every solid of the figure and the club as the found camera sees it at a frame, px: x and y in turn, convex. Undefined for a frame
   * whose time against the checkpoints is not known. With `target` it makes these movements at the same instant in place of its own.
   */
  at(frame: number, target?: Movements): readonly Float64Array[] | undefined;
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
    at(frame, target) {
      const when = timeOf(frame);
      if (!when) return undefined;
      fit.player.take(target ? withMovements(fit.x, target) : fit.x);
      fit.player.between(when.share, when.t, pose);
      const stance = { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, when.t) };
      placeFigure(figure, pose, stance, placement);
      return traceParts(figure, placement, sight, fit.marks.size);
    },
  };
}

/** What a search found, with other movements. */
function withMovements(x: Float64Array, movements: Movements): Float64Array {
  const moved = x.slice();
  DIALS.forEach(({ id, neutral }, i) => (moved[FIRST_DIAL + i] = (movements[id] - neutral) / DIAL_SD[i]));
  return moved;
}

/** Time of a frame, s of the reference, and its share of the way between the checkpoints. */
function createClock({ expected, marks, x }: FilmFit): (frame: number) => { t: number; share: number } | undefined {
  const times = createFrameTimes(expected, marks);
  const { leadArmParallel: arm, shaftParallel = [], fps, impact, arePictures } = marks;
  const impactTime = expected.swing.reference.times[K.impact];
  const [shaft] = shaftParallel;
  return (frame) => {
    if (arePictures) {
      if (frame === arm?.frame) return { t: times.arm(x), share: 0 };
      return frame === shaft?.frame ? { t: times.shaft(x), share: 1 } : undefined;
    }
    if (shaft && impact !== undefined && frame > shaft.frame && impact > shaft.frame) {
      const along = (frame - shaft.frame) / (impact - shaft.frame);
      const from = times.shaft(x);
      return along > 1 ? undefined : { t: from + along * (impactTime - from), share: 1 };
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
