import { serveWorker } from '../store/solver/workerClient';
import { openFrames, type FrameReader } from './frames/frameReader';
import type { Glance } from './frames/glance';
import { readFrameTable } from './frameTable';
import { VideoRefused, type VideoInfo } from './video';

/**
 * What the page asks: to open a file, for a frame of it (counted from 0), for glances at frames, the most wanted first, for the times of its frames
 * alone, s.
 */
export type VideoQuestion =
  | { readonly what: 'open'; readonly file: Blob }
  | { readonly what: 'times'; readonly file: Blob }
  | { readonly what: 'frame'; readonly index: number }
  | { readonly what: 'glances'; readonly indices: readonly number[] };
/** What it hears. A picture is a copy of its own. */
export type VideoAnswer =
  | { readonly info: VideoInfo }
  | { readonly times: Float64Array; readonly info: VideoInfo; readonly codec: string | undefined }
  | { readonly index: number; readonly picture: ImageBitmap }
  | { readonly index: number; readonly glance: Glance }
  | { readonly refused: VideoRefused['reason']; readonly codec?: string };

/** Decodes one file at a time, one question after another; a refusal is an answer. */
function createDecoder() {
  let reader: FrameReader | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  const answer = async (
    question: VideoQuestion,
    say: (answer: VideoAnswer, goesOver?: Transferable[]) => void,
    isLast: () => boolean,
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
      const glance = await reader.glance?.(index);
      if (glance) say({ index, glance }, [glance.pixels.buffer]);
    }
    return undefined;
  };
  return (question: VideoQuestion, say: Parameters<typeof answer>[1], isLast: () => boolean): Promise<void> => {
    const turn = queue.then(() =>
      answer(question, say, isLast).catch((error: unknown) => {
        if (!(error instanceof VideoRefused)) throw error;
        const { reason, codec } = error;
        say({ refused: reason, ...(codec !== undefined && { codec }) });
      }),
    );
    queue = turn.catch(() => {});
    return turn;
  };
}

serveWorker<VideoQuestion, VideoAnswer>(createDecoder());
