import type { Glance } from './frames/glance';

/** A film or a picture that was opened. Frame counts are the truth; the clock of a file is not. */
export interface VideoInfo {
  readonly kind: 'video' | 'picture';
  /** Size as shown, rotation applied, px. */
  readonly w: number;
  readonly h: number;
  readonly frames: number;
  /** Frames a second by the file's own clock, the middle of all steps; undefined for a picture. */
  readonly fps?: number;
}

/**
 * Why a file cannot be opened, or one frame of it not shown (`damaged`). `codec`: a film whose pictures this browser cannot decode. `photo`: a
 * photograph of a format that is not opened. `many`, `mixed`, `sizes`: of files chosen together.
 */
export type RefusalReason =
  | 'empty'
  | 'too-large'
  | 'too-long'
  | 'too-many-pixels'
  | 'not-film'
  | 'photo'
  | 'no-video'
  | 'cut'
  | 'damaged'
  | 'many'
  | 'mixed'
  | 'sizes'
  | 'codec'
  | 'no-decoder';

/** A file that was refused, with the name of its codec or format where that is the reason. */
export class VideoRefused extends Error {
  override readonly name = 'VideoRefused';
  constructor(
    readonly reason: RefusalReason,
    readonly codec?: string,
  ) {
    super(codec === undefined ? reason : `${reason} ${codec}`);
  }
}

/** What may be opened: 4 GB, one minute, a thousand frames in each of its seconds, 50 million pixels (our choice). */
export const VIDEO_LIMITS = { bytes: 4 * 1024 ** 3, seconds: 60, frames: 60_000, pixels: 50e6, side: 16_384 } as const;

/** An opened film or picture. */
export interface OpenVideo {
  readonly info: VideoInfo;
  /**
   * A frame's picture, counted from 0; the caller closes it. Undefined when another frame was asked for meanwhile. Rejects with `VideoRefused`
   * where this frame cannot be decoded; the others still can.
   */
  frame(index: number): Promise<ImageBitmap | undefined>;
  /**
   * What is shown of a frame while stepping, at once where it is there already; not to be changed. Memory of glances seen before is used again, but
   * for that of the one still `shown`. Undefined and rejections as above. Left out where pictures come in one size.
   */
  readonly glance?: ((index: number, shown?: Glance) => Glance | Promise<Glance | undefined>) | undefined;
  /** Lets go of everything. */
  close(): void;
}
