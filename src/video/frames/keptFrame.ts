import { VideoSample } from 'mediabunny';
import { findStep, toGlance, type Glance, type Planes } from './glance';
import type { VideoInfo } from '../video';

/** A frame that was decoded and is kept for a while. */
export interface KeptFrame {
  readonly bytes: number;
  /** Into the memory `into`, where that has its size. */
  glance(into?: ArrayBuffer): Glance;
  /** A picture of its own the size of the film; whoever takes it closes it. */
  picture(): Promise<ImageBitmap>;
  close(): void;
}

/** One frame goes as another comes. */
const MOST_SPARE = 2;

/** Keeps frames of one film; the decoder's own are given back at once, because it has few. */
export function createKeeper({ w, h }: Pick<VideoInfo, 'w' | 'h'>): (sample: VideoSample) => Promise<KeptFrame> {
  const canvas = new OffscreenCanvas(w, h);
  const context = canvas.getContext('2d', { alpha: false })!;
  const draw = (sample: VideoSample): ImageBitmap => {
    sample.draw(context, 0, 0, w, h);
    return canvas.transferToImageBitmap();
  };
  /** Memory of frames that are not kept any more, for the next ones: what a worker lets go of is swept late, and 3 MB a frame add up. */
  const spare: Uint8Array<ArrayBuffer>[] = [];
  let small: OffscreenCanvasRenderingContext2D | undefined;
  /** Of a frame whose form is not known here. */
  const keepDrawn = (sample: VideoSample): KeptFrame => {
    const bitmap = draw(sample);
    return {
      bytes: 4 * w * h,
      glance() {
        const step = findStep(w, h);
        const [wide, tall] = [Math.floor(w / step), Math.floor(h / step)];
        small ??= new OffscreenCanvas(wide, tall).getContext('2d', { alpha: false, willReadFrequently: true })!;
        small.drawImage(bitmap, 0, 0, wide, tall);
        return { w: wide, h: tall, pixels: small.getImageData(0, 0, wide, tall).data };
      },
      picture: () => createImageBitmap(bitmap),
      close: () => bitmap.close(),
    };
  };
  return async (sample) => {
    try {
      const planes = await copyPlanes(sample, { w, h }, spare);
      if (!planes) return keepDrawn(sample);
      const { rotation, timestamp, duration, colorSpace } = sample;
      return {
        bytes: planes.data.length,
        glance: (into) => toGlance(planes, into),
        async picture() {
          const again = new VideoSample(planes.data, {
            format: planes.format,
            codedWidth: planes.w,
            codedHeight: planes.h,
            rotation,
            timestamp,
            duration,
            colorSpace: colorSpace.toJSON(),
          });
          const picture = draw(again);
          again.close();
          return picture;
        },
        close() {
          if (spare.length < MOST_SPARE) spare.push(planes.data);
        },
      };
    } finally {
      sample.close();
    }
  };
}

/** Brightness beyond a screen's is left to the browser. */
const HDR: ReadonlySet<string> = new Set(['pq', 'hlg']);

/** The frame's own planes; undefined where they are of another kind, or stand in memory that cannot be read. */
async function copyPlanes(
  sample: VideoSample,
  { w, h }: Pick<VideoInfo, 'w' | 'h'>,
  spare: Uint8Array<ArrayBuffer>[],
): Promise<Planes | undefined> {
  const { format, rotation, flip, visibleRect, colorSpace } = sample;
  const { width, height } = visibleRect;
  if ((format !== 'I420' && format !== 'NV12') || flip) return undefined;
  // Pixels that are not square are left to whoever draws them.
  const [wide, tall] = rotation === 90 || rotation === 270 ? [h, w] : [w, h];
  if (width !== wide || height !== tall) return undefined;
  const matrix = colorSpace.matrix ?? 'bt709';
  if (matrix !== 'bt709' && matrix !== 'smpte170m' && matrix !== 'bt470bg') return undefined;
  if (HDR.has(String(colorSpace.transfer))) return undefined;
  try {
    const size = sample.allocationSize();
    const used = spare.pop();
    const data = used?.length === size ? used : new Uint8Array(size);
    await sample.copyTo(data);
    return {
      format,
      data,
      w: width,
      h: height,
      rotation,
      matrix: matrix === 'bt709' ? matrix : 'smpte170m',
      isFullRange: colorSpace.fullRange === true,
    };
  } catch {
    return undefined;
  }
}
