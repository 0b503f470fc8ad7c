import type { MovementGroup, MovementId } from '../model/movements';
import type { CheckpointId, ReadingId } from '../reading/checkpoints';
import type { Swing } from '../reading/swing';
import { STILL_DIALLED, type Dialled } from './document';

/** A swing shown in place of the dialled one: a bar of the ledger being played, or what stood before a guess. */
export interface Trial {
  readonly swing: Swing;
  /** What is being shown, in words. */
  readonly label: string;
}

/** Guess first: what was on the plates is held back until the player has drawn where the shaft will go. */
export interface Guess {
  /** `ready`: nothing has moved yet. `open`: a movement waits to be shown. `shown`: it was, and the gap is drawn. */
  readonly stage: 'ready' | 'open' | 'shown';
  /** Where the player drew the shaft line or the head, as the judged reading, m. */
  readonly drawn: { readonly [id in CheckpointId]?: number };
}

/** Readings the ledger can share out, and where each is read. `path`: the path at the ball that shaft parallel implies. */
export const LEDGER_READINGS = {
  bicepGap: { at: 'leadArmParallel', reading: 'bicepGap' },
  headDepth: { at: 'shaftParallel', reading: 'headDepth' },
  path: { at: 'shaftParallel', reading: 'planeDirection' },
  shaftPlane: { at: 'leadArmParallel', reading: 'shaftPlane' },
  gripEndLine: { at: 'leadArmParallel', reading: 'gripEndLine' },
  shaftAim: { at: 'shaftParallel', reading: 'shaftAim' },
  faceToVertical: { at: 'shaftParallel', reading: 'faceToVertical' },
  handDepth: { at: 'leadArmParallel', reading: 'handDepth' },
  handHeight: { at: 'leadArmParallel', reading: 'handHeight' },
} as const satisfies Record<string, { at: CheckpointId; reading: ReadingId }>;
export type LedgerReading = keyof typeof LEDGER_READINGS;

/** A swing that can be named: the reference, the one now, the one held as ghost. */
export type NamedSwing = 'reference' | 'now' | 'ghost';

export interface WhyChoices {
  readonly reading: LedgerReading;
  readonly from: NamedSwing;
  readonly to: NamedSwing;
  readonly x: MovementId;
  readonly y: MovementId;
  readonly locked: readonly MovementGroup[];
  /** Plans end just inside a band, or halfway to its middle. */
  readonly aim: 'edge' | 'inside';
  /** The movements of the plan that is looked at; null: the first. */
  readonly plan: string | null;
  readonly solid: NamedSwing;
  readonly ghost: NamedSwing;
  /** The ghost keeps time with the swing by its checkpoints, or by the clock. */
  readonly link: 'checkpoint' | 'clock';
}

export const FIRST_CHOICES: WhyChoices = {
  reading: 'bicepGap',
  from: 'reference',
  to: 'now',
  x: 'leadWristFlexion',
  y: 'rotationDelay',
  locked: [],
  aim: 'edge',
  plan: null,
  solid: 'now',
  ghost: 'reference',
  link: 'checkpoint',
};

interface Looking {
  readonly drawer: string | null;
  readonly ghost: Dialled | null;
  readonly why: WhyChoices;
}

/** Dials of a named swing; a ghost that is not held is the reference. */
export const dialledOf = (name: NamedSwing, ghost: Dialled | null, now: Dialled): Dialled =>
  name === 'now' ? now : name === 'ghost' ? (ghost ?? STILL_DIALLED) : STILL_DIALLED;

/** What is drawn solid and what as ghost. Comparing chooses both. */
export function pairOf({ drawer, ghost, why }: Looking, now: Dialled): { solid: Dialled; ghost: Dialled | null } {
  if (drawer !== 'compare') return { solid: now, ghost };
  return { solid: dialledOf(why.solid, ghost, now), ghost: dialledOf(why.ghost, ghost, now) };
}
