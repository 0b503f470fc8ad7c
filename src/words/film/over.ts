import type { CheckpointId } from '../../reading/checkpointTable';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';

/** What is drawn over the film, on its switches. */
export const OVER = {
  before: 'Before',
  target: 'Target',
  grid: 'Ground',
  marks: 'Marks',
  still: 'Make a still',
  clip: 'Make a clip',
  stop: 'Stop',
  burnIn: 'With the film’s own picture',
  impact: 'This frame is impact',
  clearImpact: 'Clear impact',
} as const;

/** Beside the choice whether the film itself goes into what is made. */
export const BURN_IN = 'Without it only the drawn figure is in the file. No name is in either.';
/** What the dashed figure is. */
export const sayTarget = (hasPlan: boolean): string =>
  hasPlan ? 'Target, dashed: this player moving as planned.' : 'Target, dashed: the reference, as no plan is chosen.';

/** "Impact: frame 40. The figure is drawn up to it." */
export const sayImpact = (frame: number): string => `Impact: frame ${frame + 1}. The figure is drawn up to it.`;

export const MADE = {
  still: 'The still is saved.',
  clip: 'The clip is saved.',
  stopped: 'Stopped. Nothing was saved.',
  failed: 'It could not be made on this device.',
} as const;

/** "Making the clip: 40 %" */
export const sayMaking = (what: 'still' | 'clip', share: number): string =>
  `Making the ${what}: ${Math.round(share * 100)} %`;

/** Written into a still or a clip: at a checkpoint its reading, elsewhere the frame. */
export const sayOnPicture = (
  frame: number,
  at: { readonly id: CheckpointId; readonly said: string } | undefined,
): string => (at ? `${CHECKPOINT_NAMES[at.id].title}: ${at.said}` : `Frame ${frame + 1}`);
/** Under it: what is drawn. */
export const sayDrawn = (before: boolean, target: 'plan' | 'reference' | undefined): string => {
  const aim = target === 'plan' ? 'dashed: the plan' : 'dashed: the reference';
  const parts = [...(before ? ['solid: as marked'] : []), ...(target ? [aim] : [])];
  return `Drawn by the model${parts.length > 0 ? `; ${parts.join(', ')}` : ''}.`;
};
