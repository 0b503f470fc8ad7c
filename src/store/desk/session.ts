import type { JointId } from '../../model/joints';
import type { CheckpointId } from '../../reading/checkpoints';
import type { DialId, Dialled, Document } from '../document/document';
import type { PositionId } from '../../reading/positions';
import { FIRST_CHOICES, type Guess, type Trial, type WhyChoices } from './whyState';

export type ViewId = 'free' | 'downTheLine' | 'faceOn' | 'overhead' | 'playersEyes';
export type DrawerId =
  | 'setUp'
  | 'ledger'
  | 'map'
  | 'plan'
  | 'seen'
  | 'compare'
  | 'family'
  | 'rule'
  | 'gains'
  | 'ball'
  | 'joints'
  | 'lessons'
  | 'clip'
  | 'about';
/** The sections of the set-up; one is shown at a time. */
export const SET_UP_PARTS = ['player', 'club', 'top', 'camera', 'bands', 'units'] as const;
export type SetUpPart = (typeof SET_UP_PARTS)[number];
export const SPEEDS = [1, 0.25, 0.1] as const;
export type Speed = (typeof SPEEDS)[number];

/** What is looked at, and how. Neither stored nor undone. */
export interface Session {
  /** Playhead, s: reference time, zero at the top of the backswing. */
  readonly t: number;
  /** The position the playhead is held at while dials move; null when it stands at a time. */
  readonly held: PositionId | null;
  readonly playing: boolean;
  readonly speed: Speed;
  readonly view: ViewId;
  /** Counts every request for a view, so that asking for the same one again turns the camera back. */
  readonly viewAsked: number;
  readonly drawer: DrawerId | null;
  /** The section of the set-up that is shown, or was last. */
  readonly setUpPart: SetUpPart;
  readonly selectedPlate: CheckpointId;
  /** The dial whose slider stands where there is room for one. */
  readonly dial: DialId;
  /** Where plates are folded to their verdicts: the chosen one is turned over to its drawing, in the figure's place. */
  readonly turned: boolean;
  /** The picture fills the screen, for the student. */
  readonly student: boolean;
  readonly exaggerate: boolean;
  /** The ball's flight is drawn to where it lands, as a small model. */
  readonly wholeFlight: boolean;
  /** A swing kept on screen for comparison: its dials, or the chosen plan whatever it becomes. */
  readonly ghost: Dialled | 'plan' | null;
  /** Other bodies that are drawn in thin lines, as dials. */
  readonly fan: readonly Dialled[];
  /** A document with a plan that came as a link or file, shown as the player's page in the desk's place; `opening` while it is read. */
  readonly guest: Document | 'opening' | null;
  /** Joints set by hand on the bench, model units, over the pose at the playhead; null when released. */
  readonly bench: Readonly<Partial<Record<JointId, number>>> | null;
  /** A swing shown for a moment in place of the dialled one. */
  readonly trial: Trial | null;
  /** Guess first is on; null when it is off. */
  readonly guess: Guess | null;
  /** What the drawers of why and what to change are asked about. */
  readonly why: WhyChoices;
}

export const FRESH_SESSION: Session = {
  t: 0.15,
  held: 'P5',
  playing: false,
  speed: 0.25,
  view: 'free',
  viewAsked: 0,
  drawer: null,
  setUpPart: 'player',
  selectedPlate: 'leadArmParallel',
  dial: 'leadWristFlexion',
  turned: false,
  student: false,
  exaggerate: false,
  wholeFlight: false,
  ghost: null,
  fan: [],
  guest: null,
  bench: null,
  trial: null,
  guess: null,
  why: FIRST_CHOICES,
};
