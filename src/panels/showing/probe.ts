import { desk } from '../../store';
import { sayWho } from '../Status';
import { showing, subjectNow } from './work';

/** Frames of the clip that stands in the drawer, drawn on the page and not encoded, as PNG. What tests compare a clip with. */
async function drawFrames(frames: readonly number[]): Promise<string[]> {
  const [{ openReel }, { prepareFilm }, { pixelSize }] = await Promise.all([
    import('../../export/film'),
    import('../../export/prepareFilm'),
    import('../../export/formats'),
  ]);
  const { wish } = showing.getState();
  const job = await prepareFilm(await subjectNow(), wish, sayWho(desk.getState().document));
  const reel = await openReel(job, pixelSize(wish.shape, wish.size), wish.fps);
  try {
    return frames.map((frame) => {
      reel.paint(frame);
      return (reel.canvas as HTMLCanvasElement).toDataURL('image/png');
    });
  } finally {
    reel.dispose();
  }
}

/** Puts it on the window when the address asks for it with `?probe`. */
export function exposeFrames(): void {
  if (!new URLSearchParams(location.search).has('probe')) return;
  Object.defineProperty(window, 'slantwiseFrames', { value: drawFrames, configurable: true });
}
