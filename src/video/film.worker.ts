import { answerFilm, type FilmAnswer, type FilmQuestion, type NoFilm } from '../film/answerFilm';
import { drawGround, type GroundLine } from '../film/ground';
import { createOutliner, type Outliner } from '../film/outline';
import type { Movements } from '../model/movements';
import { serveWorker } from '../store/solver/workerClient';

/** An answer that can leave the worker: without the search that it came from, and with the ground as the camera sees it. */
export interface SentAnswer extends Omit<FilmAnswer, 'fit' | 'explanations'> {
  readonly explanations: readonly Omit<FilmAnswer['explanations'][number], 'fit'>[];
  readonly ground: readonly GroundLine[];
}

/** Contours of the player at one frame, and of the same player with the movements that are worked toward. */
export interface Outlines {
  readonly before: readonly Float64Array[];
  readonly target: readonly Float64Array[];
}

/** What the page asks: to read a film, and then for the contours of one of its explanations (by place) at a frame. */
export type FilmWorkerQuestion =
  | { readonly what: 'read'; readonly question: FilmQuestion }
  | { readonly what: 'outline'; readonly explanation: number; readonly frame: number; readonly target: Movements };
export type FilmWorkerAnswer = { readonly read: SentAnswer | NoFilm } | { readonly outline: Outlines | undefined };

/** Reads films one after another, and keeps the last for its outlines. */
function createFilmReader() {
  let last: FilmAnswer | undefined;
  let outliners: (Outliner | undefined)[] = [];
  return (asked: FilmWorkerQuestion, say: (answer: FilmWorkerAnswer) => void): void => {
    if (asked.what === 'outline') {
      const found = last?.explanations[asked.explanation];
      const outliner = found && (outliners[asked.explanation] ??= createOutliner(found.fit));
      const before = outliner?.at(asked.frame);
      const target = outliner?.at(asked.frame, asked.target);
      return say({ outline: before && target && { before, target } });
    }
    const answer = answerFilm(asked.question);
    outliners = [];
    if ('missing' in answer) {
      last = undefined;
      return say({ read: answer });
    }
    last = answer;
    const { fit, explanations, ...rest } = answer;
    const [x, , z] = fit.expected.head;
    return say({
      read: {
        ...rest,
        explanations: explanations.map(({ fit: _fit, ...each }) => each),
        ground: drawGround(answer.camera, fit.marks.size, [x, z]),
      },
    });
  };
}

serveWorker<FilmWorkerQuestion, FilmWorkerAnswer>(createFilmReader());
