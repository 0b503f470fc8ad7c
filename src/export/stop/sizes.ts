import type { CheckpointId } from '../../reading/checkpointTable';
import type { PixelSize } from '../clip/formats';

/** Sizes of what is drawn at a checkpoint, px of a picture whose shorter side is 720 (stills: as they stand). */
interface StopSizes {
  readonly number: number;
  /** Usual scale of the figure, px a metre, and where the bicep centre or the hands stand then, px. */
  readonly scale: number;
  readonly pin: { readonly x: number; readonly y: number };
}

/** Sizes of lettering and drawing for one shape of picture. */
export interface ShapeSizes {
  /** The source line: lettering and top. */
  readonly source: { readonly px: number; readonly top: number };
  /** Left edge of all words, and top of those below the source line. */
  readonly left: number;
  readonly top: number;
  readonly label: number;
  readonly word: { readonly [id in CheckpointId]: number };
  readonly sentence: number;
  readonly title: number;
  readonly feel: number;
  readonly code: number;
  /** Widest column of words beside a figure, and of words above it. */
  readonly column: number;
  /** Whether words stand beside the figure rather than above it: a title, and a feel. */
  readonly isBeside: { readonly title: boolean; readonly feel: boolean };
  readonly stop: { readonly [id in CheckpointId]: StopSizes };
  /** Shares of the height that players' controls cover, top and bottom; of the width, right, below this share of the height. */
  readonly free: { readonly top: number; readonly bottom: number; readonly right: number; readonly below: number };
}

type ShapeName = 'wide' | 'upright' | 'square';

const SIZES: Readonly<Record<ShapeName, ShapeSizes>> = {
  wide: {
    source: { px: 26, top: 54 },
    left: 56,
    top: 92,
    label: 42,
    word: { leadArmParallel: 112, shaftParallel: 92 },
    sentence: 50,
    title: 96,
    feel: 86,
    code: 400,
    column: 600,
    isBeside: { title: true, feel: true },
    stop: {
      leadArmParallel: { number: 230, scale: 680, pin: { x: 914, y: 393 } },
      shaftParallel: { number: 168, scale: 600, pin: { x: 783, y: 510 } },
    },
    free: { top: 0.07, bottom: 0.135, right: 0, below: 1 },
  },
  upright: {
    source: { px: 26, top: 86 },
    left: 44,
    top: 124,
    label: 36,
    word: { leadArmParallel: 88, shaftParallel: 88 },
    sentence: 42,
    title: 100,
    feel: 84,
    code: 420,
    column: 632,
    isBeside: { title: false, feel: false },
    stop: {
      leadArmParallel: { number: 176, scale: 880, pin: { x: 392, y: 881 } },
      shaftParallel: { number: 128, scale: 720, pin: { x: 415, y: 959 } },
    },
    free: { top: 0.063, bottom: 0.22, right: 0.17, below: 0.47 },
  },
  square: {
    source: { px: 23, top: 30 },
    left: 32,
    top: 62,
    label: 28,
    word: { leadArmParallel: 66, shaftParallel: 66 },
    sentence: 32,
    title: 66,
    feel: 54,
    code: 370,
    column: 400,
    isBeside: { title: true, feel: false },
    stop: {
      leadArmParallel: { number: 132, scale: 560, pin: { x: 533, y: 453 } },
      shaftParallel: { number: 106, scale: 500, pin: { x: 463, y: 515 } },
    },
    free: { top: 0.038, bottom: 0.12, right: 0, below: 1 },
  },
};

/** Sizes for a picture, and px of it for one of theirs. */
export function sizesFor({ width, height }: PixelSize): { readonly sizes: ShapeSizes; readonly unit: number } {
  const name = width > height * 1.2 ? 'wide' : height > width * 1.2 ? 'upright' : 'square';
  return { sizes: SIZES[name], unit: Math.min(width, height) / 720 };
}
