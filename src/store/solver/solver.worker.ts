import { work, type Answer, type Job } from './solverJobs';

// Maps, plans and explanations beside the screen. A new question puts the old one aside between two rows of a map.
let next: { readonly number: number; readonly job: Job } | undefined;
let isBusy = false;

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

async function run(): Promise<void> {
  isBusy = true;
  while (next) {
    const { number, job } = next;
    next = undefined;
    let since = performance.now();
    for (const answer of work(job)) {
      if (answer) self.postMessage({ number, answer } satisfies { number: number; answer: Answer });
      if (performance.now() - since < STRETCH_MS) continue;
      await breathe();
      // A newer question may have come in while this one breathed.
      if (next as unknown) break;
      since = performance.now();
    }
  }
  isBusy = false;
}

self.onmessage = ({ data }: MessageEvent<{ number: number; job: Job }>) => {
  next = data;
  if (!isBusy) void run();
};
