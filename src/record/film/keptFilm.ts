import type { PlaceId } from '../../film/sheet/markNames';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Verdict } from '../../reading/verdicts';

/** A point of the picture, px right of and below its top left corner. */
type KeptPoint = readonly [number, number];

/** The marks of one frame by their names, each with how it was made. Frames count from 0. */
interface KeptFrame {
  readonly frame: number;
  readonly points: Readonly<Record<string, { readonly at: KeptPoint; readonly how: 'tapped' | 'typed' }>>;
  /** The shaft as it was found between hands and head. */
  readonly line?: readonly [KeptPoint, KeptPoint];
}

/** What was said of the film as a whole. Lengths as typed, m; absent where nobody knows. */
interface KeptNotes {
  readonly fps?: number;
  readonly isHandHeld: boolean;
  readonly isSleeved: boolean;
  /** The address was marked on an earlier film, and the coach said that the tripod had not moved since. */
  readonly isTripodKept?: true;
  /** Frame of impact, counted from 0. */
  readonly impact?: number;
  readonly heightM?: number;
  readonly distanceM?: number;
  readonly sidewaysM?: number;
}

/** The camera that was found, each number with its standard deviation. World frame of the model. */
export interface KeptCamera {
  readonly eyeM: readonly [number, number, number];
  readonly yawDeg: number;
  readonly pitchDeg: number;
  readonly rollDeg: number;
  readonly focalPx: number;
}

/** A reading with its give or take; `verdict` is null where the film was too close to call. */
interface KeptReading {
  readonly cm: number;
  readonly plusMinusCm: number;
  readonly verdict: Exclude<Verdict, 'missing'> | null;
}

/** What a lesson keeps of a player's film: marks, camera and readings. Never the film, never its name. */
export interface KeptFilm {
  readonly kind: 'video' | 'picture';
  /** Size of its pictures as shown, px, and how many they are. */
  readonly w: number;
  readonly h: number;
  readonly frames: number;
  /** Length of the club that it was read with, m. */
  readonly clubM: number;
  readonly notes: KeptNotes;
  readonly sheet: { readonly [place in PlaceId]?: KeptFrame };
  readonly camera: KeptCamera & { readonly sd: KeptCamera };
  readonly readings: { readonly [id in CheckpointId]?: KeptReading };
}
