import type { Bands } from '../../reading/verdicts';
import type { Document } from '../../store';
import type { Staging } from './clipStage';
import type { FrameRate, Kind, Shape, Size } from './formats';
import type { Inks } from '../picture/canvasPen';
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

/** What a coach puts on his hand-outs: a colour, and a mark of his own as pixels. */
export interface OwnLook {
  readonly colour: string | null;
  readonly mark: ImageBitmap | null;
}

/** Everything a clip is made from, as plain data: the page prepares it, a worker renders it. */
export interface ClipJob {
  readonly wish: ClipWish;
  readonly staging: Staging;
  /** One swing, or two that are compared. */
  readonly takes: readonly ShownSwing[];
  readonly bands: Bands;
  readonly units: Document['units'];
  readonly inks: Inks;
  readonly own: OwnLook;
  /** "7-iron, 1.78 m" */
  readonly who: string;
  readonly title: string;
  /** The player's name; empty: left out. */
  readonly name: string;
  /** Whether the second take is what a plan leads to. */
  readonly isPlan: boolean;
  /** What the player is to feel; empty without a plan. */
  readonly feel: string;
  /** What changes from the first to the second, as a whole: "11° less cup", "with a later turn". */
  readonly change: { readonly head: string; readonly rest: string };
  /** Where the ball starts and how it curves, with its band, for each take. */
  readonly balls: readonly (readonly string[])[];
  /** What the code on the last card opens. */
  readonly address: string;
  /** The document, as files carry it. */
  readonly mark: string;
}
