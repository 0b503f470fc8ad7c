/** Shapes and sizes of a clip, in pixels. The shorter side gives the size its name. */
export const SHAPES = { '16:9': [16, 9], '9:16': [9, 16], '1:1': [1, 1] } as const;
export type Shape = keyof typeof SHAPES;
export const SIZES = { draft: 180, '720p': 720, '1080p': 1080 } as const;
export type Size = keyof typeof SIZES;
export const FRAME_RATES = [25, 30, 50, 60] as const;
export type FrameRate = (typeof FRAME_RATES)[number];

/** Kinds of clip, best first. Each is tried with a real frame before it is used. */
export const KINDS = ['mp4', 'vp9', 'vp8', 'gif'] as const;
export type Kind = (typeof KINDS)[number];

export const KIND_WORDS: Readonly<
  Record<Kind, { readonly label: string; readonly extension: string; readonly type: string }>
> = {
  mp4: { label: 'MP4 (H.264)', extension: 'mp4', type: 'video/mp4' },
  vp9: { label: 'WebM (VP9)', extension: 'webm', type: 'video/webm' },
  vp8: { label: 'WebM (VP8)', extension: 'webm', type: 'video/webm' },
  gif: { label: 'GIF', extension: 'gif', type: 'image/gif' },
};

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** Even numbers, as video codecs ask. */
export function pixelSize(shape: Shape, size: Size): PixelSize {
  const [w, h] = SHAPES[shape];
  const unit = SIZES[size] / Math.min(w, h);
  return { width: Math.round((w * unit) / 2) * 2, height: Math.round((h * unit) / 2) * 2 };
}

/** GIF counts time in hundredths of a second, and most viewers slow down below two: 25 or 50 frames a second. */
export const rateOf = (kind: Kind, fps: FrameRate): number => (kind === 'gif' ? (fps >= 50 ? 50 : 25) : fps);
/** A GIF above this height would be tens of megabytes. */
const TALLEST_GIF = 480;
/** Size of a kind's own pictures: a GIF is made smaller. */
export function sizeFor(kind: Kind, { width, height }: PixelSize): PixelSize {
  const shrink = kind === 'gif' ? Math.min(1, TALLEST_GIF / Math.min(width, height)) : 1;
  return { width: Math.round((width * shrink) / 2) * 2, height: Math.round((height * shrink) / 2) * 2 };
}
