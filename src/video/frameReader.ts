import { VideoSampleSink, type VideoSample } from 'mediabunny';
import { readFrameTable, type FrameTable } from './frameTable';
import { HEADER_BYTES, findPictureSize } from './pictureHeader';
import { VIDEO_LIMITS, VideoRefused, type VideoInfo } from './video';

/** Gives the frames of one file as pictures the size of the film. */
export interface FrameReader {
  readonly info: VideoInfo;
  /** The picture of a frame, counted from 0; the reader's own, not to be closed. */
  frame(index: number): Promise<ImageBitmap>;
  close(): void;
}

/** Full-size frames that are kept for stepping back: of a film of 1920 by 1080, 8.3 MB each. */
const KEPT = 12;

/** Opens a film or a picture. Throws `VideoRefused`; then nothing is held. */
export async function openFrames(file: Blob): Promise<FrameReader> {
  if (file.size === 0) throw new VideoRefused('empty');
  if (file.size > VIDEO_LIMITS.bytes) throw new VideoRefused('too-large');
  const size = findPictureSize(new Uint8Array(await file.slice(0, HEADER_BYTES).arrayBuffer()));
  if (size) return openPicture(file, size);
  const table = await readFrameTable(file);
  if (typeof VideoDecoder === 'undefined' || !(await table.track.canDecode())) {
    const { codec } = table;
    table.input.dispose();
    throw new VideoRefused('no-decoder', codec);
  }
  return readFrames(table);
}

async function openPicture(file: Blob, { w, h }: { readonly w: number; readonly h: number }): Promise<FrameReader> {
  if (w * h > VIDEO_LIMITS.pixels || Math.max(w, h) > VIDEO_LIMITS.side) throw new VideoRefused('too-many-pixels');
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new VideoRefused('damaged');
  });
  return {
    info: { kind: 'picture', w: bitmap.width, h: bitmap.height, frames: 1 },
    frame: () => Promise.resolve(bitmap),
    close: () => bitmap.close(),
  };
}

function readFrames({ input, track, times, info }: FrameTable): FrameReader {
  const sink = new VideoSampleSink(track);
  const canvas = new OffscreenCanvas(info.w, info.h);
  const context = canvas.getContext('2d', { alpha: false })!;
  const kept = new Map<number, ImageBitmap>();
  let running: AsyncGenerator<VideoSample, void, unknown> | undefined;
  let next = -1;

  const keep = (index: number, sample: VideoSample): ImageBitmap => {
    sample.draw(context, 0, 0, info.w, info.h);
    sample.close();
    const bitmap = canvas.transferToImageBitmap();
    kept.get(index)?.close();
    kept.set(index, bitmap);
    // The farthest from where the coach is goes first.
    while (kept.size > KEPT) {
      const farthest = [...kept.keys()].reduce((a, b) => (Math.abs(a - index) >= Math.abs(b - index) ? a : b));
      kept.get(farthest)!.close();
      kept.delete(farthest);
    }
    return bitmap;
  };
  const indexOf = (time: number): number => {
    let [low, high] = [0, times.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (times[middle] <= time + 1e-6) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const stop = async (): Promise<void> => {
    const before = running;
    running = undefined;
    await before?.return();
  };
  /** Decodes on from `from` until `index` is there. */
  const runTo = async (index: number, from: number): Promise<ImageBitmap> => {
    if (!running || next !== from) {
      await stop();
      running = sink.samples(times[from]);
    }
    for (;;) {
      const step = await running.next();
      if (step.done) throw new VideoRefused('damaged');
      const at = indexOf(step.value.timestamp);
      next = at + 1;
      const bitmap = keep(at, step.value);
      if (at >= index) return bitmap;
    }
  };
  return {
    info,
    async frame(index) {
      const known = kept.get(index);
      if (known) return known;
      const isBack = kept.has(index + 1);
      // One step back decodes the run before it once: the next ones are there already.
      return runTo(index, next === index ? index : isBack ? Math.max(0, index - KEPT + 2) : index);
    },
    close() {
      void stop();
      for (const bitmap of kept.values()) bitmap.close();
      kept.clear();
      input.dispose();
    },
  };
}
