import { serveWorker } from '../store/solver/workerClient';
import { openFrames, type FrameReader } from './frames/frameReader';
import type { Glance } from './frames/glance';
import { readFrameTable } from './frameTable';
import { VideoRefused, type VideoInfo } from './video';

/**
 * What the page asks: to open a file, for a frame of it (counted from 0), for glances at frames, the most wanted first, for the times of its frames
 * alone, s. With a question for glances comes memory that they may be written into.
 */
export type VideoQuestion =
  | { readonly what: 'open'; readonly file: Blob }
  | { readonly what: 'times'; readonly file: Blob }
  | { readonly what: 'frame'; readonly index: number }
  | { readonly what: 'glances'; readonly indices: readonly number[]; readonly spare: readonly ArrayBuffer[] };
/** What it hears. A picture is a copy of its own. */
export type VideoAnswer =
  | { readonly info: VideoInfo }
  | { readonly times: Float64Array; readonly info: VideoInfo; readonly codec: string | undefined }
  | { readonly index: number; readonly picture: ImageBitmap }
  | { readonly index: number; readonly glance: Glance }
  | { readonly refused: VideoRefused['reason']; readonly codec?: string };

/** Pieces of memory that wait to be used again. */
const MOST_SPARE = 6;

/** Decodes one file at a time, one question after another; a refusal is an answer. */
function createDecoder() {
  let reader: FrameReader | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let spare: readonly ArrayBuffer[] = [];
  /** Of each open question, the glances that went out since it came in: it need not have them again. */
  const open = new Set<Set<number>>();
  const answer = async (
    question: VideoQuestion,
    say: (answer: VideoAnswer, goesOver?: Transferable[]) => void,
    isLast: () => boolean,
    said: ReadonlySet<number>,
  ): Promise<void> => {
    if (question.what === 'open') {
      reader?.close();
      reader = undefined;
      reader = await openFrames(question.file);
      return say({ info: reader.info });
    }
    if (question.what === 'times') {
      const { times, info, codec, input } = await readFrameTable(question.file);
      input.dispose();
      return say({ times, info, codec });
    }
    if (question.what === 'glances') spare = [...question.spare, ...spare].slice(0, MOST_SPARE);
    // A frame that was passed over while others were decoded is not wanted any more.
    if (!reader || !isLast()) return undefined;
    if (question.what === 'frame') {
      const { index } = question;
      const picture = await reader.frame(index);
      return say({ index, picture }, [picture]);
    }
    for (const [k, index] of question.indices.entries()) {
      // A breath before each but the first: whatever was asked for meanwhile comes before it.
      if (k > 0) await new Promise((resolve) => setTimeout(resolve));
      if (!isLast()) break;
      if (said.has(index)) continue;
      const [into, ...left] = spare;
      spare = left;
      const glance = await reader.glance?.(index, into);
      if (!glance) continue;
      say({ index, glance }, [glance.pixels.buffer]);
      for (const others of open) others.add(index);
    }
    return undefined;
  };
  return (question: VideoQuestion, say: Parameters<typeof answer>[1], isLast: () => boolean): Promise<void> => {
    const said = new Set<number>();
    open.add(said);
    const turn = queue.then(() =>
      answer(question, say, isLast, said)
        .catch((error: unknown) => {
          if (!(error instanceof VideoRefused)) throw error;
          const { reason, codec } = error;
          say({ refused: reason, ...(codec !== undefined && { codec }) });
        })
        .finally(() => open.delete(said)),
    );
    queue = turn.catch(() => {});
    return turn;
  };
}

serveWorker<VideoQuestion, VideoAnswer>(createDecoder());
