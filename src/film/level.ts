import { AT, createPose } from '../model/chain';
import { createFrameTimes } from './fit/checkpointTerms';
import type { FilmFit } from './fit/fitFilm';
import type { Player } from './fit/player';
import { GUESSED_FPS } from './fit/unknowns';

/** Where the shaft is level in the world. */
export interface LevelFrame {
  /** Counted as the film's frames are; between two of them as a fraction. */
  readonly frame: number;
  /** Whether a frame near shaft parallel was marked; otherwise it is what is expected of this player after lead arm parallel. */
  readonly isMarked: boolean;
}

/**
 * The frame in which the shaft is level in the world, as the found camera tells: a camera that stands high or low sees it level in another one.
 * Undefined while nothing near is marked, or in pictures.
 */
export function findLevelFrame({ expected, marks, player, x }: FilmFit): LevelFrame | undefined {
  const { leadArmParallel: arm, shaftParallel: [first, second] = [], fps, arePictures } = marks;
  if (arePictures) return undefined;
  const times = createFrameTimes(expected, marks);
  player.take(x);
  const from = first ? times.shaft(x) : times.arm(x);
  const marked = first ?? arm;
  // Without a frame rate nobody knows how far the next checkpoint is.
  if (!marked || (!first && fps === undefined)) return undefined;
  const perFrame = second ? (times.next(x) - from) / (second.frame - first.frame) : 1 / (fps ?? GUESSED_FPS);
  const level = findLevel(player, first ? from : expected.shaftTime);
  const frame = marked.frame + (level - from) / perFrame;
  return Number.isFinite(frame) ? { frame, isMarked: first !== undefined } : undefined;
}

/** How far from a marked frame is looked, and the step, s. A frame picked by eye may lie tens of ms beside level. */
const FARTHEST = 0.15;
const STEP = 0.002;
/** Scratch: one pose. */
const pose = createPose();

/** When the shaft of the downswing falls through level, nearest to `near`, s; NaN: not near. */
function findLevel(player: Player, near: number): number {
  const fall = (t: number): number => {
    player.pose('shaft', t, pose);
    return pose[AT.head + 1] - pose[AT.leadGrip + 1];
  };
  const here = fall(near);
  // Still above: it is to come. Below: it is past.
  const step = here > 0 ? STEP : -STEP;
  let before = here;
  for (let t = near + step; Math.abs(t - near) < FARTHEST; t += step) {
    const height = fall(t);
    if (height > 0 !== here > 0) return t - (step * height) / (height - before);
    before = height;
  }
  return NaN;
}
