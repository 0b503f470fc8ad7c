import { BlobSource, EncodedPacketSink, Input, MP4, QTFF, WEBM, MATROSKA, type InputVideoTrack } from 'mediabunny';
import { VIDEO_LIMITS, VideoRefused, type VideoInfo } from './video';

/** A film's track with the time of each of its frames, s, in the order in which they are shown. */
export interface FrameTable {
  readonly input: Input;
  readonly track: InputVideoTrack;
  readonly times: Float64Array;
  readonly info: VideoInfo;
  /** Name of the codec as it is known. */
  readonly codec: string;
}

const CODECS: Readonly<Record<string, string>> = { avc: 'H.264', hevc: 'HEVC', vp8: 'VP8', vp9: 'VP9', av1: 'AV1' };

/** Reads a film's frame table. Throws `VideoRefused`; then nothing is held. */
export async function readFrameTable(file: Blob): Promise<FrameTable> {
  const input = new Input({ source: new BlobSource(file), formats: [MP4, QTFF, WEBM, MATROSKA] });
  try {
    return await readInput(input);
  } catch (error) {
    input.dispose();
    throw error instanceof VideoRefused ? error : new VideoRefused('damaged');
  }
}

async function readInput(input: Input): Promise<FrameTable> {
  if (!(await input.canRead())) throw new VideoRefused('not-film');
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new VideoRefused((await input.getTracks()).length > 0 ? 'no-video' : 'damaged');
  const seconds = await input.getDurationFromMetadata();
  if (seconds !== null && seconds > VIDEO_LIMITS.seconds) throw new VideoRefused('too-long');
  const codec = await track.getCodec();
  const name = codec === null ? 'unknown' : (CODECS[codec] ?? codec);
  const [w, h] = [await track.getDisplayWidth(), await track.getDisplayHeight()];
  if (!(w > 0 && h > 0)) throw new VideoRefused('damaged');
  if (w * h > VIDEO_LIMITS.pixels) throw new VideoRefused('too-many-pixels');
  const found: number[] = [];
  for await (const { timestamp } of new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  })) {
    found.push(timestamp);
  }
  // Packets come as they are decoded; frames before the start of an edit are not shown.
  const times = Float64Array.from(new Set(found.filter((time) => time >= 0))).toSorted();
  if (times.length === 0) throw new VideoRefused('damaged');
  if (times.at(-1)! - times[0] > VIDEO_LIMITS.seconds) throw new VideoRefused('too-long');
  const fps = findRate(times);
  return {
    input,
    track,
    times,
    codec: name,
    info: { kind: 'video', w, h, frames: times.length, ...(fps !== undefined && { fps }) },
  };
}

/** How far the mean step may lie from the middle one before the film counts as uneven, as a share. */
const UNEVEN = 0.15;

/** Frames a second: by the mean step, which a file's coarse clock does not bend, or in an uneven film by the middle one. */
function findRate(times: Float64Array): number | undefined {
  if (times.length < 2) return undefined;
  const steps = times.subarray(1).map((time, i) => time - times[i]);
  const middle = steps.toSorted()[Math.floor(steps.length / 2)];
  const mean = (times.at(-1)! - times[0]) / (times.length - 1);
  const step = Math.abs(mean - middle) < UNEVEN * middle ? mean : middle;
  return step > 0 ? Math.round(100 / step) / 100 : undefined;
}
