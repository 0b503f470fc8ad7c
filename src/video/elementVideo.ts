import { VideoRefused, type OpenVideo, type VideoInfo } from './video';

/** How long a browser may take to show that it can play a film at all, ms. */
const PATIENCE = 4000;

/**
 * Frames by a video element, sought to the middle of each by the film's own frame table: where a browser decodes a codec only there. Rejects with
 * `VideoRefused` and the codec where it does not either.
 */
export async function playVideo(
  file: Blob,
  info: VideoInfo,
  times: Float64Array,
  codec: string | undefined,
): Promise<OpenVideo> {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.preload = 'auto';
  const url = URL.createObjectURL(file);
  const close = (): void => {
    video.removeAttribute('src');
    video.load();
    URL.revokeObjectURL(url);
  };
  try {
    await new Promise<void>((resolve, reject) => {
      const fail = (): void => reject(new VideoRefused('codec', codec));
      video.addEventListener('loadeddata', () => (video.videoWidth > 0 ? resolve() : fail()), { once: true });
      video.addEventListener('error', fail, { once: true });
      setTimeout(fail, PATIENCE);
      video.src = url;
    });
  } catch (error) {
    close();
    throw error;
  }
  let wanted = 0;
  return {
    info,
    async frame(index) {
      const mine = ++wanted;
      const step = index + 1 < times.length ? times[index + 1] - times[index] : times[index] - (times[index - 1] ?? 0);
      await seek(video, times[index] + step / 2);
      return mine === wanted ? createImageBitmap(video) : undefined;
    },
    close,
  };
}

/** How long after a seek its picture may take to be reported, ms: one that is shown already is not reported again. */
const REPORTED = 150;

/** Goes to a time, s, and waits until the picture there is the one that is shown. */
const seek = (video: HTMLVideoElement, time: number): Promise<void> =>
  new Promise((resolve) => {
    if ('requestVideoFrameCallback' in video) video.requestVideoFrameCallback(() => resolve());
    video.addEventListener('seeked', () => setTimeout(resolve, REPORTED), { once: true });
    video.currentTime = time;
  });
