import { renderClip, sketch } from './renderClip';
import type { Answer, Errand } from './clipWorker';

const answer = (message: Answer): void => self.postMessage(message);

/** Films beside the page, so that the page stays free. Ends when the page ends it. */
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
