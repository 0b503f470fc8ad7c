import type { Rad } from '../../math/angle';
import type { MovementGroup, MovementId, Movements } from '../../model/movements';
import type { Swing } from '../../reading/swing';
import type { Judged } from '../diagnosis/judged';
import type { Sightings } from '../diagnosis/verdictShare';

/** The usual range of every dial, or as far as it goes. */
export type DialRange = 'usual' | 'limits';

/** A picture that many bodies may give. */
export interface FamilyQuestion {
  /** Player, club and reference; its movements do not matter. */
  readonly swing: Swing;
  /** What the camera sees: each reading with the margin, m, inside which it counts as the same. */
  readonly seen: Sightings;
  /** Where a change is counted from. Default: the reference. */
  readonly from?: Movements;
  /** Movements that may differ. Default: all. */
  readonly allow?: readonly MovementGroup[];
  /** How many members are laid out, ends included; at least 2. */
  readonly count: number;
  /** How far the dials may go. Where nothing in the usual range gives the picture, their limits are taken. Default: `usual`. */
  readonly range?: DialRange;
  readonly armAngle?: Rad;
}

/** One body that gives the picture. */
export interface Member {
  readonly movements: Movements;
  /** Bicep gap and head depth, m. */
  readonly readings: Judged;
  /** Place along the widest direction: 0 at one end, 1 at the other. */
  readonly place: number;
  /** Root of the sum of squares of the changes, each over half of its dial's usual range. */
  readonly effort: number;
  /** Every dial lies in its usual range. */
  readonly isUsual: boolean;
}

/** What an end of a family is mostly made of: the movement with the largest share of its change, and the dial that leads in it. */
export interface EndName {
  readonly group: MovementGroup;
  readonly dial: MovementId;
  /** The dial's change has this sign. */
  readonly sign: 1 | -1;
}

/** All that gives one picture, laid out along its widest direction. */
export interface Family {
  readonly status: 'found';
  /** How far the dials were let go. */
  readonly range: DialRange;
  /**
   * From one end to the other, in even steps along the widest direction; each is the smallest change of all bodies at its place.
   * The one nearest to the smallest change of all stands exactly there.
   */
  readonly members: readonly Member[];
  /** Index of the member with the smallest change of all. */
  readonly smallest: number;
  /** What the two ends are mostly made of. */
  readonly ends: readonly [EndName, EndName];
  /** The widest direction, in half usual ranges of each dial; length 1. In the order of `DIALS`. */
  readonly direction: readonly number[];
  /** Distance of the two ends, in half usual ranges. */
  readonly width: number;
  /** Dials that neither reading answers to: they may stand anywhere, and stay where they are. */
  readonly deaf: readonly MovementId[];
  readonly evaluations: number;
}

type NotFound = 'out-of-reach' | 'missing';

/** No setting of the dials gives the picture; `readings`: as near as they come, m. `missing`: a checkpoint is reached nowhere near. */
export interface NoFamily {
  readonly status: NotFound;
  readonly readings?: Judged;
  readonly evaluations: number;
}
