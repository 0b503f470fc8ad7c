import type { ReferenceSwing } from '../../model/keys';
import type { ReferenceFit } from './reference';

/** Root mean square of the weighted residuals above which a fit is no swing: three spreads off every landmark (our choice). */
const WORST_RESIDUAL = 3;

/** A reference swing to stand on, or in words why there is none. */
export type Usable = { readonly reference: ReferenceSwing } | { readonly refused: string };

const NO_SWING = 'No swing meets the ball with this body and club. Check lengths and lie.';

/** Takes a fit for a swing, or refuses it: one that did not stay finite, or lies farther than `WORST_RESIDUAL` from what a swing is. */
export const judgeFit = ({ status, residual, reference }: ReferenceFit): Usable =>
  status !== 'not-finite' && residual <= WORST_RESIDUAL ? { reference } : { refused: NO_SWING };
