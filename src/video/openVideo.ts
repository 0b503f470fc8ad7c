import { createWorkerClient } from '../store/solver/workerClient';
import { createGlances } from './frames/glances';
import { playVideo } from './elementVideo';
import { VideoRefused, type OpenVideo } from './video';
import type { VideoAnswer, VideoQuestion } from './video.worker';

/**
 * Opens a film or a picture on the device: decoded in a worker, or by a video element where the browser decodes a codec only there. Rejects
 * with `VideoRefused`; then nothing is held.
 */
export async function openVideo(file: Blob): Promise<OpenVideo> {
  const worker = createWorkerClient<VideoQuestion, VideoAnswer>(
    () => new Worker(new URL('./video.worker.ts', import.meta.url), { type: 'module' }),
  );
  const ask = async (question: VideoQuestion): Promise<VideoAnswer | undefined> => {
    let heard: VideoAnswer | undefined;
    await worker.ask(question, (answer) => (heard = answer));
    if (heard && 'refused' in heard) throw new VideoRefused(heard.refused, heard.codec);
    return heard;
  };
  try {
    const opened = await ask({ what: 'open', file });
    if (!opened || !('info' in opened)) throw new VideoRefused('damaged');
    const { info } = opened;
    return {
      info,
      async frame(index) {
        const answer = await ask({ what: 'frame', index });
        return answer && 'picture' in answer ? answer.picture : undefined;
      },
      ...(info.kind === 'video' && {
        glance: createGlances(info, (indices, spare, hear) =>
          worker.ask(
            { what: 'glances', indices, spare },
            (answer) => {
              if ('glance' in answer) hear(answer.index, answer.glance);
              if ('refused' in answer) hear(indices[0], new VideoRefused(answer.refused, answer.codec));
            },
            spare,
          ),
        ),
      }),
      close: () => worker.end(),
    };
  } catch (error) {
    if (error instanceof VideoRefused && error.reason === 'no-decoder') {
      const table = await ask({ what: 'times', file }).finally(() => worker.end());
      if (table && 'times' in table) return playVideo(file, table.info, table.times, error.codec);
    }
    worker.end();
    throw error;
  }
}
