import type { Board, Filmed } from './renderClip';
import type { FilmJob } from './clipJob';
import { Stopped, type Companion, type Progress } from '../task/exportTask';

/** What a worker is asked for. */
export interface Errand {
  readonly what: 'film' | 'sketch';
  readonly job: FilmJob;
}

/** What it says: how far it is, and at the end what came of it. */
export interface Answer {
  readonly progress?: Progress | undefined;
  readonly done?: Filmed | Board;
  readonly failed?: { readonly name: string; readonly message: string };
}

/** Films in a worker, or on the page where workers cannot draw. Stopping ends the worker at once: what it had is gone with it. */
export const filmBeside = (job: FilmJob, companion: Companion): Promise<Filmed> =>
  send({ what: 'film', job }, companion) as Promise<Filmed>;

/** Draws a storyboard in the same way. */
export const sketchBeside = (job: FilmJob, companion: Companion): Promise<Board> =>
  send({ what: 'sketch', job }, companion) as Promise<Board>;

async function send(errand: Errand, companion: Companion): Promise<Filmed | Board> {
  if (companion.signal.aborted) throw new Stopped();
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return onPage(errand, companion);
  try {
    return await inWorker(errand, companion);
  } catch (error) {
    if (error instanceof Error && error.name === 'NotHere') return onPage(errand, companion);
    throw error;
  }
}

function inWorker(errand: Errand, { signal, tell }: Companion): Promise<Filmed | Board> {
  const worker = new Worker(new URL('./clip.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Filmed | Board>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(new Stopped()), { once: true });
    worker.onmessage = ({ data: { progress, done, failed } }: MessageEvent<Answer>) => {
      if (progress) tell(progress);
      if (done) resolve(done);
      if (failed) reject(Object.assign(new Error(failed.message), { name: failed.name }));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      // What never started can be done here; what broke off has had its chance.
      reject(Object.assign(new Error(event.message || 'the worker stopped'), { name: 'NotHere' }));
    };
    worker.postMessage(errand);
  }).finally(() => worker.terminate());
}

async function onPage({ what, job }: Errand, { signal, tell }: Companion): Promise<Filmed | Board> {
  const { film, sketch } = await import('./renderClip');
  const pass = (): void => {
    if (signal.aborted) throw new Stopped();
  };
  return what === 'film' ? film(job, { tell, pass }) : sketch(job, { tell, pass });
}
