import type { Checkpoints } from '../../reading/checkpoints';
import { verdictAt, type Bands, type Verdict } from '../../reading/verdicts';
import { lowered } from '../numbers/capital';
import { CHECKPOINT_NAMES, PLATE_WORDS, sayMissing, type CheckpointWords } from './checkpoint';

/** What the status line is made from. */
export interface StatusOf {
  readonly status: 'ready' | 'solving' | 'failed';
  /** Why it failed, when the solver said so. */
  readonly problem?: string | undefined;
  readonly checkpoints?: Checkpoints | undefined;
  readonly bands: Bands;
  /** The deviation from the reference is drawn doubled. */
  readonly exaggerated?: boolean;
}

/** Always beside the picture, in clips too. */
export const ILLUSTRATION = 'Illustration from a model, not a recording';
/** Beside every number while the deviation is doubled. */
export const EXAGGERATED = 'exaggerated twofold';

/** Usual cautions in plain words, for where a movement is prescribed or pushed near its range. */
export const CAUTIONS = [
  'Warm up first.',
  'Do not force the end of a range of motion.',
  'Side bend with a fast turn loads the low back.',
  'Stop if it hurts, and see a physician or physiotherapist.',
  "Children, and players with back or wrist trouble: only with a professional's advice.",
  'Keep everyone out of swinging range.',
] as const;

function sayVerdicts(arm: Verdict, shaft: Verdict): string {
  const p5 = CHECKPOINT_NAMES.leadArmParallel.inSentence;
  const p6 = CHECKPOINT_NAMES.shaftParallel.inSentence;
  if (arm === 'missing' && shaft === 'missing') return 'Neither checkpoint is reached in this swing.';
  if (arm === 'onPlane' && shaft === 'onPlane') return `On plane at ${p5} and at ${p6}.`;
  if (arm === shaft) return `${PLATE_WORDS[arm]} at both checkpoints.`;
  const second = shaft === 'missing' ? `${p6} is not reached` : `${lowered(PLATE_WORDS[shaft])} at ${p6}`;
  return `${PLATE_WORDS[arm]} at ${p5}, ${second}.`;
}

/** What a plate says in place of a verdict while there is no swing for the player and club asked for. */
export function sayWithheld(of: StatusOf): CheckpointWords {
  return sayMissing(of.status === 'failed' ? 'No swing' : 'Not yet', sayWhyWithheld(of));
}

/** Why there is no swing for what was asked, and what to do. */
export const sayWhyWithheld = (of: StatusOf): string =>
  of.status === 'solving' ? `${sayStatus(of)} Wait, or change the set-up.` : sayStatus(of);

/** What the picture shows meanwhile. */
export const LAST_FOUND = 'The figure shows the last swing found.';

/** The one sentence of the status line and of the live region. At most 15 words. */
export function sayStatus({ status, problem, checkpoints, bands, exaggerated = false }: StatusOf): string {
  if (status === 'failed') return problem ?? 'No reference swing found for this player and club. Change the set-up.';
  if (status === 'solving' || checkpoints === undefined)
    return 'Working out a reference swing for this player and club.';
  const sentence = sayVerdicts(
    verdictAt('leadArmParallel', checkpoints.leadArmParallel, bands),
    verdictAt('shaftParallel', checkpoints.shaftParallel, bands),
  );
  return exaggerated ? `Exaggerated twofold: ${lowered(sentence)}` : sentence;
}

/** Said while the figure is posed by hand. */
export const BENCH_POSE = 'Bench pose: joints set by hand.';
