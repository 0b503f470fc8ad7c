import type { Board, RenderedClip } from './renderClip';
import type { Answer, Errand } from './clip.worker';
import type { ClipJob } from './clipJob';
import { Stopped, type TaskControl } from '../task/exportTask';

/**
 * Renders in a worker, or on the page where workers cannot draw. Stopping terminates the worker at once and discards its
 * work.
 */
export const renderInWorker = (job: ClipJob, companion: TaskControl): Promise<RenderedClip> =>
  send({ what: 'film', job }, companion) as Promise<RenderedClip>;

/** Draws a storyboard, in the same places. */
export const sketchInWorker = (job: ClipJob, companion: TaskControl): Promise<Board> =>
  send({ what: 'sketch', job }, companion) as Promise<Board>;

async function send(errand: Errand, companion: TaskControl): Promise<RenderedClip | Board> {
  if (companion.signal.aborted) throw new Stopped();
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return onPage(errand, companion);
  try {
    return await inWorker(errand, companion);
  } catch (error) {
    if (error instanceof Error && error.name === 'NotHere') return onPage(errand, companion);
    throw error;
  }
}

function inWorker(errand: Errand, { signal, tell }: TaskControl): Promise<RenderedClip | Board> {
  const worker = new Worker(new URL('./clip.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<RenderedClip | Board>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(new Stopped()), { once: true });
    worker.onmessage = ({ data: { progress, done, failed } }: MessageEvent<Answer>) => {
      if (progress) tell(progress);
      if (done) resolve(done);
      if (failed) reject(Object.assign(new Error(failed.message), { name: failed.name }));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      // Fall back to the page.
      reject(Object.assign(new Error(event.message || 'the worker stopped'), { name: 'NotHere' }));
    };
    worker.postMessage(errand);
  }).finally(() => worker.terminate());
}

async function onPage({ what, job }: Errand, { signal, tell }: TaskControl): Promise<RenderedClip | Board> {
  const { renderClip, sketch } = await import('./renderClip');
  const pass = (): void => {
    if (signal.aborted) throw new Stopped();
  };
  return what === 'film' ? renderClip(job, { tell, pass }) : sketch(job, { tell, pass });
}
