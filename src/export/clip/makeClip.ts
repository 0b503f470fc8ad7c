import { renderInWorker, sketchInWorker } from './clipWorker';
import type { Board } from './renderClip';
import type { ClipWish, OwnLook } from './clipJob';
import { KIND_WORDS } from './formats';
import { breathe, fileName, type TaskControl, type Made } from '../task/exportTask';
import { prepareClip } from './prepareClip';
import type { ExportSnapshot } from '../task/exportSnapshot';

/** Makes a clip. Throws `Stopped` when it was stopped; no partial file is left behind. */
export async function makeClip(
  subject: ExportSnapshot,
  wish: ClipWish,
  who: string,
  own: OwnLook,
  companion: TaskControl,
): Promise<Made> {
  companion.tell({ doing: 'Getting ready', share: 0, secondsLeft: undefined });
  await breathe();
  const job = prepareClip(subject, wish, who, own);
  const { blob, kind, size, fps, seconds } = await renderInWorker(job, companion);
  const { label, extension } = KIND_WORDS[kind];
  return {
    name: `${fileName('clip', wish.arrangement, wish.shape.replace(':', 'x'))}.${extension}`,
    format: `${label}, ${size.width} × ${size.height}, ${fps} frames a second, ${seconds.toFixed(1)} s`,
    blob,
  };
}

/** A frame of each shot and each stop of a clip, before it is made. */
export const sketchClip = async (
  subject: ExportSnapshot,
  wish: ClipWish,
  who: string,
  own: OwnLook,
  signal: AbortSignal,
): Promise<Board> => sketchInWorker(prepareClip(subject, wish, who, own), { signal, tell: () => {} });
