import { work, type Answer, type Job } from '../../solving/diagnosis/solverJobs';
import { serveWorker } from './workerClient';

/** Lets a message in that has come meanwhile. */
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Between breaths, ms. */
const STRETCH_MS = 8;

// Maps, plans and explanations beside the screen. A new question puts the old one aside between two rows of a map.
serveWorker<Job, Answer>(async (job, say, isLast) => {
  let since = performance.now();
  for (const answer of work(job)) {
    if (answer) say(answer);
    if (performance.now() - since < STRETCH_MS) continue;
    await breathe();
    if (!isLast()) return;
    since = performance.now();
  }
});
