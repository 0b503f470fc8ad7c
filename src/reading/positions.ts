import { findFall } from '../math/root';
import { K } from '../model/keys';
import { isReached, type Checkpoints } from './checkpoints';
import { armHeightAt, shaftHeightAt, type Swing } from './swing';

/** The trade's ten positions of a swing. */
export const POSITION_IDS = ['P1', 'P2', 'P3', 'P4', 'P5', 'P6', 'P7', 'P8', 'P9', 'P10'] as const;
export type PositionId = (typeof POSITION_IDS)[number];

/** Times of the positions, s, zero at the top; null where the swing never passes one. */
export type Positions = Readonly<Record<PositionId, number | null>>;

const STEP = 0.02;

/**
 * When a swing passes the ten positions: address; shaft parallel and lead arm parallel going back; top; the two checkpoints
 * coming down; impact; shaft parallel and lead arm parallel after it; finish. Common practice names.
 */
export function findPositions(swing: Swing, checkpoints: Checkpoints): Positions {
  const at = swing.curves.times;
  const impact = at[K.impact];
  const finish = at[K.finish];
  const rise = (signal: (swing: Swing, t: number) => number, from: number, to: number): number | null => {
    const found = findFall((t) => -signal(swing, t), from, to, STEP);
    return 't' in found ? found.t : null;
  };
  const { leadArmParallel, shaftParallel } = checkpoints;
  return {
    P1: at[K.address],
    P2: rise(shaftHeightAt, at[K.address], 0),
    P3: rise(armHeightAt, at[K.address], 0),
    P4: 0,
    P5: isReached(leadArmParallel) ? leadArmParallel.t : null,
    P6: isReached(shaftParallel) ? shaftParallel.t : null,
    P7: impact,
    P8: rise(shaftHeightAt, impact, finish),
    P9: rise(armHeightAt, impact, finish),
    P10: finish,
  };
}
