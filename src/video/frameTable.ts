import { BlobSource, EncodedPacketSink, Input, MP4, QTFF, WEBM, MATROSKA, type InputVideoTrack } from 'mediabunny';
import { isCutShort } from './cutShort';
import { VIDEO_LIMITS, VideoRefused, type VideoInfo } from './video';

/** A film's track with the time of each of its frames, s, in the order in which they are shown. */
export interface FrameTable {
  readonly input: Input;
  readonly track: InputVideoTrack;
  readonly times: Float64Array;
  readonly info: VideoInfo;
  /** Name of the codec; undefined where nobody knows it. */
  readonly codec: string | undefined;
}

const CODECS: Readonly<Record<string, string>> = {
  avc: 'H.264',
  hevc: 'HEVC',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
  prores: 'ProRes',
};
/** By its four letters in the file where the library does not know it. */
const OTHER_CODECS: Readonly<Record<string, string>> = { jpeg: 'Motion JPEG', mp4v: 'MPEG-4 Part 2' };

/** Reads a film's frame table. Throws `VideoRefused`; then nothing is held. */
export async function readFrameTable(file: Blob): Promise<FrameTable> {
  if (await isCutShort(file)) throw new VideoRefused('cut');
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
  const [w, h] = [await track.getDisplayWidth(), await track.getDisplayHeight()];
  if (!(w > 0 && h > 0)) throw new VideoRefused('damaged');
  const coded = (await track.getCodedWidth()) * (await track.getCodedHeight());
  if (Math.max(coded, w * h) > VIDEO_LIMITS.pixels) throw new VideoRefused('too-many-pixels');
  const times = await readTimes(track);
  if (times.length === 0) throw new VideoRefused('damaged');
  const fps = findRate(times);
  return {
    input,
    track,
    times,
    codec: CODECS[codec ?? ''] ?? OTHER_CODECS[String(await track.getInternalCodecId())],
    info: { kind: 'video', w, h, frames: times.length, ...(fps !== undefined && { fps }) },
  };
}

/** When each frame is shown, s, in order. */
async function readTimes(track: InputVideoTrack): Promise<Float64Array> {
  const found = new Set<number>();
  let first = Infinity;
  for await (const { timestamp } of new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  })) {
    // Packets come as they are decoded; frames before the start of an edit are not shown.
    if (timestamp < 0) continue;
    found.add(timestamp);
    first = Math.min(first, timestamp);
    // As soon as it is known: a file that says nothing of its length may go on for hours.
    if (timestamp - first > VIDEO_LIMITS.seconds || found.size > VIDEO_LIMITS.frames)
      throw new VideoRefused('too-long');
  }
  return Float64Array.from(found).toSorted();
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
