import type { NoShot, Shot } from '../../flight/shot';
import type { Body, Player } from '../../model/body';
import type { Club } from '../../model/club';
import type { ReferenceSwing } from '../../model/keys';
import type { Movements } from '../../model/movements';
import type { Checkpoints } from '../../reading/checkpoints';
import type { Delivery, NotDelivered } from '../../reading/delivery/delivery';
import type { Positions } from '../../reading/positions';
import type { Swing } from '../../reading/swing';
import type { Bands } from '../../reading/verdicts';
import type { SwingBase } from '../../solving/playOut';
import type { Ground } from './baseSwings';
import type { StandingVerdicts } from './verdictHysteresis';

/** Everything the screens draw and say, worked out once per change from the document and the session. */
export interface Derived {
  /** The player and club that are drawn: the last whose reference was found. */
  readonly player: Player;
  readonly body: Body;
  readonly club: Club;
  /** With the player's own top of the backswing. */
  readonly reference: ReferenceSwing;
  /** From shaft parallel on the arms adapt so that the head meets the ball: everything drawn or read later comes from here. */
  readonly swing: Swing;
  readonly referenceSwing: Swing;
  /** The reference swing, read: what every dialled swing here is held against. */
  readonly base: SwingBase;
  /** How far the hands stay from where the set-up asks them to be at the top, m. */
  readonly topShortfall: number;
  readonly delivery: Delivery | NotDelivered;
  /** What the delivery makes of the ball, in the player's own frame, with a track of `TRACK_POINTS` once somebody asks for it. */
  readonly shot: Shot | NoShot;
  /** Path at the ball if the change at shaft parallel carries through, rad, + in-to-out; null when it is not reached. */
  readonly impliedPath: number | null;
  /** The swing held for comparison. */
  readonly ghostSwing: Swing | null;
  /** Other bodies that are drawn in thin lines; mostly none. */
  readonly fanSwings: readonly Swing[];
  readonly checkpoints: Checkpoints;
  readonly referenceCheckpoints: Checkpoints;
  readonly positions: Positions;
  /** What is drawn, model units: doubled when `exaggerated`. */
  readonly movements: Movements;
  readonly exaggerated: boolean;
  /** What the screens judge by: a verdict that stands on an edge of the band does not flicker. */
  readonly bands: Bands;
  /** The verdicts that stand on screen now; they are kept with the state, and the next ones are judged by them. */
  readonly verdicts: StandingVerdicts;
  /** The player, club and reference that are drawn. */
  readonly ground: Ground;
  /** What the solvers aim at, m. */
  readonly exactBands: Bands;
  readonly status: 'ready' | 'solving' | 'failed';
  /** What is drawn is the last swing found, not the one asked for: nothing is claimed of it. */
  readonly isWithheld: boolean;
  /** What went wrong, in words, when `status` is 'failed'. */
  readonly problem?: string;
}
