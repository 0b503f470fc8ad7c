import type { FilmQuestion, NoFilm } from '../film/answerFilm';
import { createWorkerClient } from '../store/solver/workerClient';
import type { Movements } from '../model/movements';
import type { FilmWorkerAnswer, FilmWorkerQuestion, Outlines, SentAnswer } from './film.worker';

/** Reads marks in a worker, so that the page stays responsive. */
export interface MarkReader {
  read(question: FilmQuestion): Promise<SentAnswer | NoFilm>;
  /** Contours of an explanation (by its place in the last answer) at a frame; undefined where its time is not known. */
  outline(explanation: number, frame: number, target: Movements): Promise<Outlines | undefined>;
  close(): void;
}

/** A reader of marks; its worker starts with the first question. */
export function createMarkReader(): MarkReader {
  const worker = createWorkerClient<FilmWorkerQuestion, FilmWorkerAnswer>(
    () => new Worker(new URL('./film.worker.ts', import.meta.url), { type: 'module' }),
  );
  const ask = async (question: FilmWorkerQuestion): Promise<FilmWorkerAnswer | undefined> => {
    let heard: FilmWorkerAnswer | undefined;
    await worker.ask(question, (answer) => (heard = answer));
    return heard;
  };
  return {
    async read(question) {
      const answer = await ask({ what: 'read', question });
      return answer && 'read' in answer ? answer.read : { missing: 'not-finite' };
    },
    async outline(explanation, frame, target) {
      const answer = await ask({ what: 'outline', explanation, frame, target });
      return answer && 'outline' in answer ? answer.outline : undefined;
    },
    close: () => worker.end(),
  };
}
