import { VideoSampleSink, type VideoSample } from 'mediabunny';
import { readFrameTable, type FrameTable } from '../frameTable';
import type { Glance } from './glance';
import { createKeeper, type KeptFrame } from './keptFrame';
import { nearest } from '../nearest';
import { HEADER_BYTES, findPhotoFormat, findPictureSize } from '../pictureHeader';
import { VIDEO_LIMITS, VideoRefused, type VideoInfo } from '../video';

/** Gives the frames of one file as pictures the size of the film. */
export interface FrameReader {
  readonly info: VideoInfo;
  /** The picture of a frame, counted from 0; whoever takes it closes it. */
  frame(index: number): Promise<ImageBitmap>;
  /** What is shown of it while stepping; a picture alone has no other frames. */
  glance?(index: number, into?: ArrayBuffer): Promise<Glance>;
  close(): void;
}

/**
 * Frames that are kept for stepping back, and how many are decoded at once for it: of a film of 1920 by 1080, 3.1 MB each, or 8.3 drawn. The run
 * before the shown frame leaves room for those around it.
 */
const KEPT = { most: 12, least: 3, bytes: 75e6, run: 11 } as const;

/** Nobody has asked for a frame for this long, ms: the decoder goes, with about 150 MB of a film of 1920 by 1080; the next frame asked for brings it again. */
const IDLE_MS = 1500;

/** Opens a film or a picture. Throws `VideoRefused`; then nothing is held. */
export async function openFrames(file: Blob): Promise<FrameReader> {
  if (file.size === 0) throw new VideoRefused('empty');
  if (file.size > VIDEO_LIMITS.bytes) throw new VideoRefused('too-large');
  const header = new Uint8Array(await file.slice(0, HEADER_BYTES).arrayBuffer());
  const size = findPictureSize(header);
  if (size) return openPicture(file, size);
  const photo = findPhotoFormat(header);
  if (photo !== undefined) throw new VideoRefused('photo', photo);
  const table = await readFrameTable(file);
  if (typeof VideoDecoder === 'undefined' || !(await table.track.canDecode())) {
    const { codec } = table;
    table.input.dispose();
    throw new VideoRefused('no-decoder', codec);
  }
  const reader = readFrames(table);
  try {
    // A film whose first picture does not come is refused here, not shown empty.
    await reader.glance(0);
  } catch (error) {
    reader.close();
    throw error;
  }
  return reader;
}

async function openPicture(file: Blob, { w, h }: { readonly w: number; readonly h: number }): Promise<FrameReader> {
  if (w * h > VIDEO_LIMITS.pixels || Math.max(w, h) > VIDEO_LIMITS.side) throw new VideoRefused('too-many-pixels');
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new VideoRefused('damaged');
  });
  return {
    info: { kind: 'picture', w: bitmap.width, h: bitmap.height, frames: 1 },
    frame: () => createImageBitmap(bitmap),
    close: () => bitmap.close(),
  };
}

function readFrames({ input, track, times, info }: FrameTable): Required<FrameReader> {
  const sink = new VideoSampleSink(track);
  const keepOne = createKeeper(info);
  let most: number = KEPT.least;
  const kept = new Map<number, KeptFrame>();
  let running: AsyncGenerator<VideoSample, void, unknown> | undefined;
  let next = -1;
  let idle: ReturnType<typeof setTimeout> | undefined;

  const keep = async (index: number, sample: VideoSample): Promise<void> => {
    const frame = await keepOne(sample);
    most = Math.max(KEPT.least, Math.min(KEPT.most, Math.floor(KEPT.bytes / frame.bytes)));
    kept.get(index)?.close();
    kept.set(index, frame);
    // The farthest from where the coach is goes first.
    while (kept.size > most) {
      const farthest = [...kept.keys()].reduce((a, b) => (Math.abs(a - index) >= Math.abs(b - index) ? a : b));
      kept.get(farthest)!.close();
      kept.delete(farthest);
    }
  };
  const stop = async (): Promise<void> => {
    const before = running;
    running = undefined;
    await before?.return();
  };
  /** Decodes on from `from` until `index` is there, or was passed: where a film has a hole, frames are missing. */
  const runTo = async (index: number, from: number): Promise<KeptFrame> => {
    if (!running || next !== from) {
      await stop();
      running = sink.samples(times[from]);
    }
    try {
      for (let at = -1; at < index; next = at + 1) {
        const step = await running.next();
        if (step.done) break;
        at = nearest(times, step.value.timestamp);
        await keep(at, step.value);
      }
    } catch {
      // What cannot be decoded ends the run; the next frame asked for starts another from the key frame before it.
      await stop().catch(() => undefined);
    }
    const found = kept.get(index);
    if (!found) throw new VideoRefused('damaged');
    return found;
  };
  const search = async (index: number): Promise<KeptFrame> => {
    const known = kept.get(index);
    if (known) return known;
    if (next === index || !kept.has(index + 1)) return runTo(index, index);
    // One step back decodes the run before it once: the next ones are there already. A hole in that run is no reason to lose this one.
    return runTo(index, Math.max(0, index + 1 - Math.min(KEPT.run, most - 1))).catch(() => runTo(index, index));
  };
  const find = async (index: number): Promise<KeptFrame> => {
    clearTimeout(idle);
    try {
      return await search(index);
    } finally {
      idle = setTimeout(() => void stop().catch(() => undefined), IDLE_MS);
    }
  };
  return {
    info,
    frame: async (index) => (await find(index)).picture(),
    glance: async (index, into) => (await find(index)).glance(into),
    close() {
      clearTimeout(idle);
      void stop().catch(() => undefined);
      for (const frame of kept.values()) frame.close();
      kept.clear();
      input.dispose();
    },
  };
}
