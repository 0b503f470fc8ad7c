import { withGifComment } from '../files/embedded';
import { createCanvas, penOn, type Canvas } from '../picture/canvasPen';
import { KIND_WORDS, type Kind, type PixelSize } from './formats';

/** Encodes pictures one after the other. There is no file before `finish`. */
export interface Writer {
  readonly kind: Kind;
  /** Takes what stands on the canvas as the next picture, shown for so many of the clip's steps. */
  add(steps?: number): Promise<void>;
  finish(): Promise<Blob>;
  /** Releases everything; no file is made. */
  cancel(): Promise<void>;
}

export interface WriterOf {
  readonly kind: Kind;
  readonly canvas: Canvas;
  readonly size: PixelSize;
  readonly fps: number;
  readonly title: string;
  /** The document, as files carry it. */
  readonly mark: string;
}

/** A second between key frames: a player may step through the clip. */
const KEY_FRAME_S = 1;

/** Bits a second: lines and paper need about a tenth of a bit a pixel. */
const bitrateOf = ({ width, height }: PixelSize, fps: number): number => Math.round(width * height * fps * 0.12 + 3e5);

/** Starts a film or a GIF of this size and speed; the encoder is loaded here. */
export async function openWriter(of: WriterOf): Promise<Writer> {
  return of.kind === 'gif' ? openGif(of) : openFilm({ ...of, kind: of.kind });
}

async function openFilm(of: WriterOf & { readonly kind: Exclude<Kind, 'gif'> }): Promise<Writer> {
  const { kind, canvas, size, fps, title, mark } = of;
  const { BufferTarget, CanvasSource, Mp4OutputFormat, Output, WebMOutputFormat } = await import('mediabunny');
  const target = new BufferTarget();
  const format = kind === 'mp4' ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat();
  const output = new Output({ format, target });
  const source = new CanvasSource(canvas, {
    codec: kind === 'mp4' ? 'avc' : kind,
    bitrate: bitrateOf(size, fps),
    keyFrameInterval: KEY_FRAME_S,
    latencyMode: 'quality',
  });
  output.addVideoTrack(source, { frameRate: fps });
  output.setMetadataTags({ title, comment: mark });
  await output.start();
  let count = 0;
  return {
    kind,
    add: (steps = 1) => {
      const from = count / fps;
      count += steps;
      return source.add(from, steps / fps);
    },
    finish: async () => {
      await output.finalize();
      return new Blob([target.buffer!], { type: KIND_WORDS[kind].type });
    },
    cancel: () => output.cancel(),
  };
}

/** Colours of a GIF; the rest of 256 stays free. */
const COLOURS = 256;

async function openGif({ canvas, size, fps, mark }: WriterOf): Promise<Writer> {
  const { applyPalette, GIFEncoder, quantize } = await import('gifenc');
  const gif = GIFEncoder();
  const pen = penOn(createCanvas(size.width, size.height));
  let count = 0;
  return {
    kind: 'gif',
    add: (steps = 1) => {
      pen.drawImage(canvas, 0, 0, size.width, size.height);
      const { data } = pen.getImageData(0, 0, size.width, size.height);
      const palette = quantize(data, COLOURS);
      // Time is counted in hundredths of a second; what rounding takes from one picture the next gives back.
      const delay = 10 * (Math.round(((count + steps) * 100) / fps) - Math.round((count * 100) / fps));
      gif.writeFrame(applyPalette(data, palette), size.width, size.height, { palette, delay });
      count += steps;
      return Promise.resolve();
    },
    finish: () => {
      gif.finish();
      return Promise.resolve(new Blob([withGifComment(gif.bytes(), mark) as BlobPart], { type: 'image/gif' }));
    },
    cancel: () => Promise.resolve(),
  };
}

/**
 * The best kind this device can write, tried with a real picture from start to finish: what a browser says it can encode it
 * sometimes cannot.
 */
export async function findKind(kinds: readonly Kind[], of: (kind: Kind) => WriterOf): Promise<Kind | undefined> {
  for (const kind of kinds) {
    if (kind === 'gif' || (await canWrite(of(kind)))) return kind;
  }
  return undefined;
}

async function canWrite(of: WriterOf): Promise<boolean> {
  if (typeof VideoEncoder === 'undefined') return false;
  let writer: Writer | undefined;
  try {
    writer = await openWriter(of);
    await writer.add();
    const file = await writer.finish();
    return file.size > 0;
  } catch {
    await writer?.cancel().catch(() => {});
    return false;
  }
}
