import { nearest } from './nearest';
import { VideoRefused, type OpenVideo, type VideoInfo } from './video';

/** How long a browser may take to show that it can play a film at all, ms, and to go to one of its frames. */
const PATIENCE = { open: 4000, seek: 4000 } as const;

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
      setTimeout(fail, PATIENCE.open);
      video.src = url;
    });
  } catch (error) {
    close();
    throw error;
  }
  let wanted = 0;
  let queue: Promise<unknown> = Promise.resolve();
  let shown = -1;
  /** Shows a frame and copies it. One after another: a picture that comes late would be taken for that of the next. */
  const show = async (index: number): Promise<ImageBitmap> => {
    if (index !== shown) {
      shown = -1;
      const step = index + 1 < times.length ? times[index + 1] - times[index] : times[index] - (times[index - 1] ?? 0);
      await seek(video, times[index] + step / 2, (time) => nearest(times, time) === index);
      shown = index;
    }
    return createImageBitmap(video);
  };
  return {
    info,
    frame(index) {
      const mine = ++wanted;
      const turn = queue.then(() => (mine === wanted ? show(index) : undefined));
      queue = turn.catch(() => undefined);
      return turn;
    },
    close,
  };
}

/** How long after a seek its picture is waited for, ms: where a browser reports pictures, and where it reports none. */
const SHOWN = { reported: 1000, unreported: 300 } as const;

/**
 * Goes to a time, s, and waits until the picture that is shown is the right one by its own time: a browser may report the one before first.
 * Rejects where it does not come.
 */
async function seek(video: HTMLVideoElement, time: number, isRight: (time: number) => boolean): Promise<void> {
  const watch = new AbortController();
  const { signal } = watch;
  const turn = new Promise<void>((resolve, reject) => {
    const fail = (): void => reject(new VideoRefused('damaged'));
    let isReported = false;
    const look = (): number =>
      video.requestVideoFrameCallback((_, { mediaTime }) => {
        isReported = true;
        if (isRight(mediaTime)) resolve();
        else if (!signal.aborted) look();
      });
    if ('requestVideoFrameCallback' in video) look();
    const unreported = (): void => void (isReported || resolve());
    const seeked = (): void => {
      setTimeout(unreported, SHOWN.unreported);
      setTimeout(fail, SHOWN.reported);
    };
    video.addEventListener('seeked', seeked, { once: true, signal });
    setTimeout(fail, PATIENCE.seek);
    video.currentTime = time;
  });
  return turn.finally(() => watch.abort());
}
