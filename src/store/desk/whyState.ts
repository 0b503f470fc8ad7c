import type { MovementGroup, MovementId } from '../../model/movements';
import type { CheckpointId, ReadingId } from '../../reading/checkpoints';
import type { Swing } from '../../reading/swing';
import type { BallReading } from '../../solving/diagnosis/question';
import type { LedgerPlace, LedgerReadingId } from '../../words/why/why';
import type { Player } from '../../model/body';
import type { ClubChoice, Dialled, SetUp } from '../document/document';

/** A swing as it is compared: whose it is, and what is dialled. */
export interface SwingOf {
  /** What it is called in lists, tables and under pictures. */
  readonly name: string;
  readonly player: Player;
  readonly club: ClubChoice;
  readonly setUp: SetUp;
  readonly movements: Dialled;
  /**
   * Only marks of a coach are known: their most likely explanation on a base, in place of `movements`. It comes with the swing, because the
   * solver behind it is loaded with the drawers that offer such swings.
   */
  readonly likely?: (base: Swing, armAngle: number) => Dialled;
}

/** A swing shown in place of the dialled one: a bar of the ledger being played, or what stood before a guess. */
export interface Trial {
  readonly swing: Swing;
  /** What is being shown, in words. */
  readonly label: string;
  /** It plays by the clock: whoever changes the swing, or closes the drawer, has seen enough of it. */
  readonly isPlaying?: true;
}

/** Guess first: what was on the plates is held back until the player has drawn where the shaft will go. */
export interface Guess {
  /** `ready`: nothing has moved yet. `open`: a movement waits to be shown. `shown`: it was, and the gap is drawn. */
  readonly stage: 'ready' | 'open' | 'shown';
  /** Where the player drew the shaft line or the head, as the judged reading, m. */
  readonly drawn: { readonly [id in CheckpointId]?: number };
  /** Every guess that was shown since guessing began. */
  readonly made: readonly GuessMade[];
}

/** One guess and where the shaft went, as the judged reading, m. */
export interface GuessMade {
  readonly id: CheckpointId;
  readonly drawn: number;
  readonly went: number;
}

/** A reading the ledger shares out, and where it is read: any reading at a checkpoint, or any number of the delivery. */
export type LedgerReading = `${CheckpointId}:${ReadingId | 'impliedPath'}` | `ball:${BallReading}`;

/** Place and reading of a choice. */
export const splitReading = (reading: LedgerReading): readonly [LedgerPlace, LedgerReadingId] =>
  reading.split(':') as [LedgerPlace, LedgerReadingId];

/**
 * A swing that can be chosen: `reference`, `now`, `ghost` (the one held), `plan` (the chosen one), `before` (before the last step), a ready-made
 * situation, or one brought along from outside the desk.
 */
export type SwingId = string;
export interface Brought {
  readonly id: SwingId;
  readonly swing: SwingOf;
}

export interface WhyChoices {
  readonly reading: LedgerReading;
  readonly from: SwingId;
  readonly to: SwingId;
  readonly x: MovementId;
  readonly y: MovementId;
  readonly locked: readonly MovementGroup[];
  /** Plans end just inside a band, or halfway to its middle. */
  readonly aim: 'edge' | 'inside';
  /** The movements of the plan that is looked at; null: the first. */
  readonly plan: string | null;
  readonly solid: SwingId;
  readonly ghost: SwingId;
  /** Swings from outside the desk that are chosen somewhere. */
  readonly brought: readonly Brought[];
  /** The ghost keeps time with the swing by its checkpoints, or by the clock. */
  readonly link: 'checkpoint' | 'clock';
}

export const FIRST_CHOICES: WhyChoices = {
  reading: 'leadArmParallel:bicepGap',
  from: 'reference',
  to: 'now',
  x: 'leadWristFlexion',
  y: 'rotationDelay',
  locked: [],
  aim: 'edge',
  plan: null,
  solid: 'now',
  ghost: 'reference',
  brought: [],
  link: 'checkpoint',
};
