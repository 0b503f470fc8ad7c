import { createWorkerClient, WorkerStopped } from '../../store/solver/workerClient';
import type { Board, RenderedClip } from './renderClip';
import type { Answer, Errand } from './clip.worker';
import type { HandoutJob } from '../painting/handout';
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

/** Draws a still with numbers, in the same places. */
export const drawInWorker = (job: HandoutJob, companion: TaskControl): Promise<Blob> =>
  send({ what: 'handout', job }, companion) as Promise<Blob>;

type Done = RenderedClip | Board | Blob;

async function send(errand: Errand, companion: TaskControl): Promise<Done> {
  if (companion.signal.aborted) throw new Stopped();
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return onPage(errand, companion);
  try {
    return await inWorker(errand, companion);
  } catch (error) {
    if (companion.signal.aborted) throw new Stopped();
    // Where no worker comes up, or it cannot draw: on the page.
    if (error instanceof WorkerStopped || (error instanceof Error && error.name === 'NotHere')) {
      return onPage(errand, companion);
    }
    throw error;
  }
}

async function inWorker(errand: Errand, { signal, tell }: TaskControl): Promise<Done> {
  const worker = createWorkerClient<Errand, Answer>(
    () => new Worker(new URL('./clip.worker.ts', import.meta.url), { type: 'module' }),
  );
  const end = (): void => worker.end();
  signal.addEventListener('abort', end, { once: true });
  let done: Done | undefined;
  try {
    await worker.ask(errand, (answer) => {
      if ('progress' in answer) tell(answer.progress);
      else done = answer.done;
    });
  } finally {
    signal.removeEventListener('abort', end);
    worker.end();
  }
  return done!;
}

async function onPage(errand: Errand, { signal, tell }: TaskControl): Promise<Done> {
  if (errand.what === 'handout') return (await import('../painting/handout')).drawHandout(errand.job);
  const { renderClip, sketch } = await import('./renderClip');
  const pass = (): void => {
    if (signal.aborted) throw new Stopped();
  };
  return (errand.what === 'film' ? renderClip : sketch)(errand.job, { tell, pass });
}
