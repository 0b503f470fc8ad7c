import { pixelSize } from '../../export';
import { desk } from '../../store';
import { sayWho } from '../../words/showing/who';
import { readOwnLook } from './own/ownLook';
import { showing, subjectNow } from './task/showingStore';

/** The reel of the clip that stands in the drawer, on the page. */
async function openHere() {
  const [{ openReel }, { prepareClip }] = await Promise.all([
    import('../../export/clip/renderClip'),
    import('../../export/clip/prepareClip'),
  ]);
  const { wish } = showing.getState();
  const job = prepareClip(await subjectNow(), wish, sayWho(desk.getState().document), await readOwnLook());
  const size = pixelSize(wish.shape, wish.size);
  return { job, size, reel: await openReel(job, size, wish.fps) };
}

/** Frames drawn on the page and not encoded, as PNG. What tests compare a clip with. */
async function drawFrames(frames: readonly number[]): Promise<string[]> {
  const { reel } = await openHere();
  try {
    return frames.map((frame) => {
      reel.paint(frame);
      return (reel.canvas as HTMLCanvasElement).toDataURL('image/png');
    });
  } finally {
    reel.dispose();
  }
}

/** How long frames `from` to `to` take drawn alone, encoded alone (one picture over and over) and both together, ms. */
async function timeFrames(from: number, to: number) {
  const { openWriter } = await import('../../export/clip/writers');
  const { job, size, reel } = await openHere();
  const run = async (draws: boolean, encodes: boolean): Promise<number> => {
    const { fps, canvas } = reel;
    const writer = encodes
      ? await openWriter({ kind: 'mp4', canvas, size, fps, title: 'Slantwise', mark: job.mark })
      : undefined;
    const started = performance.now();
    for (let frame = from; frame < to; frame++) {
      if (draws) reel.paint(frame);
      await writer?.add();
    }
    await writer?.finish();
    return performance.now() - started;
  };
  try {
    reel.paint(from);
    await run(true, true);
    return { drawn: await run(true, false), encoded: await run(false, true), both: await run(true, true) };
  } finally {
    reel.dispose();
  }
}

/** Puts both on the window when the address asks for it with `?probe`. */
export function exposeFrames(): void {
  if (!new URLSearchParams(location.search).has('probe')) return;
  Object.defineProperty(window, 'slantwiseFrames', { value: drawFrames, configurable: true });
  Object.defineProperty(window, 'slantwiseTiming', { value: timeFrames, configurable: true });
}
