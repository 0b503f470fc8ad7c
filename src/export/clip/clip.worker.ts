import { serveWorker } from '../../store/solver/workerClient';
import type { Progress } from '../task/exportTask';
import { drawHandout, type HandoutJob } from '../painting/handout';
import type { ClipJob } from './clipJob';
import { renderClip, sketch, type Board, type RenderedClip } from './renderClip';

/** A request to the worker. */
export type Errand =
  { readonly what: 'film' | 'sketch'; readonly job: ClipJob } | { readonly what: 'handout'; readonly job: HandoutJob };

/** Its messages: progress, and at the end the result. */
export type Answer = { readonly progress: Progress } | { readonly done: RenderedClip | Board | Blob };

/** Renders in a worker, so that the page stays responsive. The page terminates it. */
serveWorker<Errand, Answer>(async (errand, say) => {
  if (!new OffscreenCanvas(1, 1).getContext('webgl2')) {
    throw Object.assign(new Error('A worker draws no picture here.'), { name: 'NotHere' });
  }
  const along = { tell: (progress: Progress) => say({ progress }), pass: () => {} };
  if (errand.what === 'handout') say({ done: await drawHandout(errand.job) });
  else say({ done: await (errand.what === 'film' ? renderClip : sketch)(errand.job, along) });
});
