import type { Progress } from '../task/exportTask';
import type { ClipJob } from './clipJob';
import { renderClip, sketch, type Board, type RenderedClip } from './renderClip';

/** A request to the worker. */
export interface Errand {
  readonly what: 'film' | 'sketch';
  readonly job: ClipJob;
}

/** Its messages: progress, and at the end the result or an error. */
export interface Answer {
  readonly progress?: Progress | undefined;
  readonly done?: RenderedClip | Board;
  readonly failed?: { readonly name: string; readonly message: string };
}

const answer = (message: Answer): void => self.postMessage(message);

/** Renders in a worker, so that the page stays responsive. The page terminates it. */
self.onmessage = ({ data: { what, job } }: MessageEvent<Errand>) => {
  const along = { tell: (progress: Answer['progress']) => answer({ progress }), pass: () => {} };
  const work = new OffscreenCanvas(1, 1).getContext('webgl2')
    ? what === 'film'
      ? renderClip(job, along)
      : sketch(job, along)
    : Promise.reject(Object.assign(new Error('A worker draws no picture here.'), { name: 'NotHere' }));
  work.then(
    (done) => answer({ done }),
    (error: unknown) => {
      const { name, message } = error instanceof Error ? error : { name: '', message: String(error) };
      answer({ failed: { name, message } });
    },
  );
};
