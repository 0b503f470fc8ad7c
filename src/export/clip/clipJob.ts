import type { CheckpointId } from '../../reading/checkpoints';
import type { Bands } from '../../reading/verdicts';
import type { Document } from '../../store';
import type { Staging } from './clipStage';
import type { FrameRate, Kind, Shape, Size } from './formats';
import type { Inks } from '../picture/canvasPen';
import type { PlatePixels } from '../picture/plateCard';
import type { Film } from './storyboard';
import type { ShownSwing } from '../task/exportSnapshot';

/** What to make, and in which format; null: the best that this device can encode. */
export interface ClipWish extends Film {
  readonly shape: Shape;
  readonly size: Size;
  readonly fps: FrameRate;
  readonly kind: Kind | null;
  /** The player's name; empty: that of the plan, if it is handed out with it. */
  readonly name: string;
  /** Empty: the task of the plan. */
  readonly title: string;
}

/** Everything a clip is made from, as plain data: the page prepares it, a worker renders it. */
export interface ClipJob {
  readonly wish: ClipWish;
  readonly staging: Staging;
  readonly takes: readonly ShownSwing[];
  /** Drawn over the first take in broken lines. */
  readonly ghost: ShownSwing | undefined;
  readonly bands: Bands;
  readonly units: Document['units'];
  readonly inks: Inks;
  /** The plates of each take; none when no shot stops at a checkpoint. */
  readonly plates: readonly Readonly<Record<CheckpointId, PlatePixels>>[];
  /** "7-iron, 1.78 m" */
  readonly who: string;
  readonly title: string;
  /** The player's name; empty: left out. */
  readonly name: string;
  /** What the player is to feel; empty without a plan. */
  readonly feel: string;
  /** What changes from now to after, in words. */
  readonly changes: readonly string[];
  /** What the code on the last card opens. */
  readonly address: string;
  /** The document, as files carry it. */
  readonly mark: string;
}
