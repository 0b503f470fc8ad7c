import {
  AudioSample,
  AudioSampleSource,
  BufferTarget,
  CanvasSource,
  MovOutputFormat,
  Mp4OutputFormat,
  Output,
  WebMOutputFormat,
} from 'mediabunny';

/** A film whose frames carry their own numbers in bars of black and white. */
export interface Numbered {
  readonly container: 'mp4' | 'mov' | 'webm';
  readonly codec: 'avc' | 'vp8' | 'vp9' | 'av1';
  /** When each frame is shown, s. Before 0: left out by an edit list. */
  readonly times: readonly number[];
  /** Index in front, as of a film that was made to be sent. */
  readonly isFastStart?: boolean;
  /** Clockwise, deg: how the picture has to be turned. */
  readonly rotation?: 90 | 180 | 270;
  readonly hasSound?: boolean;
  /** Without its length, as a recording that is still going on. */
  readonly isLive?: boolean;
}

/** Size of every film, px, before it is turned. */
const SIZE = { w: 320, h: 160 } as const;
/** Colour of a strip below the bars. */
const TINT = '#b35c2e';
/** Bars that carry a frame's number, lowest bit first. */
const BITS = 8;

/** Even times of so many frames, s. */
export const evenTimes = (frames: number, fps: number): readonly number[] =>
  Array.from({ length: frames }, (_, i) => i / fps);

function formatOf({ container, isFastStart, isLive }: Pick<Numbered, 'container' | 'isFastStart' | 'isLive'>) {
  if (container === 'webm') return new WebMOutputFormat({ appendOnly: isLive ?? false });
  const options = { fastStart: isFastStart ? ('in-memory' as const) : false } as const;
  return container === 'mp4' ? new Mp4OutputFormat(options) : new MovOutputFormat(options);
}

/** Encodes a numbered film: a key frame every quarter of a second. */
export async function makeNumbered(order: Numbered): Promise<Uint8Array<ArrayBuffer>> {
  const { codec, times, rotation, hasSound } = order;
  const canvas = new OffscreenCanvas(SIZE.w, SIZE.h);
  const pen = canvas.getContext('2d')!;
  const target = new BufferTarget();
  const output = new Output({ format: formatOf(order), target });
  const source = new CanvasSource(canvas, { codec, bitrate: 1e6, keyFrameInterval: 0.25 });
  output.addVideoTrack(source, rotation ? { rotation } : {});
  const sound = hasSound ? addSound(output) : undefined;
  await output.start();
  for (const [i, time] of times.entries()) {
    for (let bit = 0; bit < BITS; bit++) {
      pen.fillStyle = (i >> bit) & 1 ? '#fff' : '#000';
      pen.fillRect((bit * SIZE.w) / BITS, 0, SIZE.w / BITS, SIZE.h);
    }
    pen.fillStyle = TINT;
    pen.fillRect(0, 0.8 * SIZE.h, SIZE.w, 0.2 * SIZE.h);
    await source.add(time, (times[i + 1] ?? 2 * time - times[i - 1]) - time);
  }
  await sound?.(times.at(-1)!);
  await output.finalize();
  return new Uint8Array(target.buffer!);
}

/** Silence to a film, or alone. */
function addSound(output: Output): (seconds: number) => Promise<void> {
  const source = new AudioSampleSource({ codec: 'opus', bitrate: 32_000 });
  output.addAudioTrack(source);
  return async (seconds) => {
    const data = new Float32Array(Math.ceil(48_000 * seconds));
    await source.add(new AudioSample({ data, format: 'f32', numberOfChannels: 1, sampleRate: 48_000, timestamp: 0 }));
  };
}

/** A file with sound and nothing else. */
export async function makeSound(): Promise<Uint8Array<ArrayBuffer>> {
  const target = new BufferTarget();
  const output = new Output({ format: new Mp4OutputFormat(), target });
  const sound = addSound(output);
  await output.start();
  await sound(0.5);
  await output.finalize();
  return new Uint8Array(target.buffer!);
}

/** The number that a picture carries, turned back from `rotation` (clockwise, deg). */
export function readNumber(picture: ImageBitmap, rotation: 0 | 90 | 180 | 270 = 0): number {
  const canvas = new OffscreenCanvas(SIZE.w, SIZE.h);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.translate(SIZE.w / 2, SIZE.h / 2);
  pen.rotate((-rotation * Math.PI) / 180);
  pen.drawImage(picture, -picture.width / 2, -picture.height / 2);
  const { data } = pen.getImageData(0, SIZE.h / 2, SIZE.w, 1);
  let number = 0;
  for (let bit = 0; bit < BITS; bit++) {
    if (data[4 * Math.floor(((bit + 0.5) * SIZE.w) / BITS)] > 127) number |= 1 << bit;
  }
  return number;
}
