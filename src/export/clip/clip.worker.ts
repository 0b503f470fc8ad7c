import { serveWorker } from '../../store/solver/workerClient';
import type { Progress } from '../task/exportTask';
import type { ClipJob } from './clipJob';
import { renderClip, sketch, type Board, type RenderedClip } from './renderClip';

/** A request to the worker. */
export interface Errand {
  readonly what: 'film' | 'sketch';
  readonly job: ClipJob;
}

/** Its messages: progress, and at the end the result. */
export type Answer = { readonly progress: Progress } | { readonly done: RenderedClip | Board };

/** Renders in a worker, so that the page stays responsive. The page terminates it. */
serveWorker<Errand, Answer>(async ({ what, job }, say) => {
  if (!new OffscreenCanvas(1, 1).getContext('webgl2')) {
    throw Object.assign(new Error('A worker draws no picture here.'), { name: 'NotHere' });
  }
  const along = { tell: (progress: Progress) => say({ progress }), pass: () => {} };
  say({ done: await (what === 'film' ? renderClip(job, along) : sketch(job, along)) });
});
