import type { Rad } from '../math/angle';
import { CHECKPOINT_IDS, type CheckpointId } from '../reading/checkpointTable';
import { DEFAULT_ARM_ANGLE } from '../reading/checkpoints';
import type { Swing } from '../reading/swing';
import { DEFAULT_BANDS, type Bands } from '../reading/verdicts';
import { readByEye, type ByEye } from './byEye';
import { ALL_DIALS, explainFilm, type FilmExplanation } from './explain';
import { fitFilm, propagate, type FilmFit } from './fit/fitFilm';
import { findMovedCamera, isProvenStill, judgeFilm, type JudgedReading, type MovedCamera } from './judgeFilm';
import { findLevelFrame, type LevelFrame } from './level';
import type { FilmMarks } from './marks';
import type { Pinhole } from './pinhole';
import { findExpected } from './fit/player';
import { readFilm } from './readings';

/** What a film is read for. */
export interface FilmQuestion {
  /** Player, club and reference; its movements do not matter. */
  readonly swing: Swing;
  readonly marks: FilmMarks;
  readonly bands?: Bands;
  readonly armAngle?: Rad;
}

/** The camera that was found, and the standard deviation of each of its numbers. */
export interface FoundCamera extends Pinhole {
  readonly sd: Pinhole;
}

/** What the marks of a film tell. */
export interface FilmAnswer {
  readonly camera: FoundCamera;
  readonly costPerFreedom: number;
  /** The mark that fits the rest worst, and by how many of its standard deviations. */
  readonly worst: { readonly name: string; readonly spreads: number };
  readonly leadArmParallel?: JudgedReading;
  readonly shaftParallel?: JudgedReading;
  readonly byEye: ByEye;
  readonly level?: LevelFrame;
  /** The most likely first; empty while nothing at a checkpoint is marked. */
  readonly explanations: readonly FilmExplanation[];
  readonly fit: FilmFit;
}

/** Why a film gives no answer. `camera-moved` says by which mark; `hand-held`: nothing shows that the camera stood still. */
export type NoFilm =
  | { readonly missing: 'no-checkpoint' | 'not-finite' }
  | { readonly missing: 'hand-held'; readonly at: CheckpointId }
  | { readonly missing: 'camera-moved'; readonly moved: MovedCamera };

/** Reads a film: camera, readings with what may be said of them, and what would look like this. A few tens of ms. */
export function answerFilm({
  swing,
  marks,
  bands = DEFAULT_BANDS,
  armAngle = DEFAULT_ARM_ANGLE,
}: FilmQuestion): FilmAnswer | NoFilm {
  const expected = findExpected(swing, armAngle);
  if (!expected) return { missing: 'no-checkpoint' };
  const moved = findMovedCamera(marks);
  if (moved) return { missing: 'camera-moved', moved };
  const shaken = marks.isHandHeld ? findUnproven(marks) : undefined;
  if (shaken) return { missing: 'hand-held', at: shaken };
  const fit = fitFilm(expected, marks, ALL_DIALS);
  if (fit.status === 'not-finite') return { missing: 'not-finite' };
  const readings = readFilm(fit);
  const { costPerFreedom, terms, x } = fit;
  const judged: { [id in CheckpointId]?: JudgedReading } = {};
  for (const id of CHECKPOINT_IDS) {
    const reading = readings[id];
    if (reading && Number.isFinite(reading.value))
      judged[id] = judgeFilm(id, reading, bands[id], marks, costPerFreedom);
  }
  const level = findLevelFrame(fit);
  return {
    camera: findCamera(fit),
    ...(level && { level }),
    costPerFreedom,
    worst: terms.worst(x),
    ...judged,
    byEye: readByEye(marks, expected.swing.rig.club.length),
    explanations: marks.leadArmParallel || marks.shaftParallel ? explainFilm(fit) : [],
    fit,
  };
}

function findUnproven(marks: FilmMarks): CheckpointId | undefined {
  const { leadArmParallel, shaftParallel = [] } = marks;
  if (leadArmParallel && !isProvenStill(marks, leadArmParallel)) return 'leadArmParallel';
  return shaftParallel.some((frame) => isProvenStill(marks, frame)) || shaftParallel.length === 0
    ? undefined
    : 'shaftParallel';
}

function findCamera(fit: FilmFit): FoundCamera {
  const { terms, camera } = fit;
  const sd = (read: (found: Pinhole) => number): number => propagate(fit, (x) => read(terms.camera(x))).sd;
  return {
    ...camera,
    sd: {
      eye: [sd(({ eye }) => eye[0]), sd(({ eye }) => eye[1]), sd(({ eye }) => eye[2])],
      yaw: sd(({ yaw }) => yaw),
      pitch: sd(({ pitch }) => pitch),
      roll: sd(({ roll }) => roll),
      focal: sd(({ focal }) => focal),
    },
  };
}
