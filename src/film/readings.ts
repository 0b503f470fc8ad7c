import { bicepGap, headDepth } from '../reading/readings';
import { createFrameTimes } from './fit/checkpointTerms';
import { poseAt, propagate, type FilmFit } from './fit/fitFilm';

/** A reading off a film, m, with its standard deviation by first-order propagation. */
export interface FilmReading {
  readonly value: number;
  readonly sd: number;
}

/** Both judged readings, each as far as it was marked. Senses as in the readings themselves. */
export interface FilmReadings {
  readonly leadArmParallel?: FilmReading;
  readonly shaftParallel?: FilmReading;
}

/** The readings of the fitted player at his own events, not at the frames: what is left of a frame's time is taken out. */
export function readFilm(fit: FilmFit): FilmReadings {
  const { marks, player, expected } = fit;
  const times = createFrameTimes(expected, marks);
  const arm =
    marks.leadArmParallel && propagate(fit, (x) => bicepGap(poseAt(fit, 'arm', player.armTime(times.arm(x)))));
  const shaft =
    marks.shaftParallel?.length &&
    propagate(fit, (x) => headDepth(poseAt(fit, 'shaft', player.shaftTime(times.shaft(x)))));
  return { ...(arm && { leadArmParallel: arm }), ...(shaft && { shaftParallel: shaft }) };
}
