import { findFall } from '../math/root';
import { K } from '../model/keys';
import { isReached, type Checkpoints } from './checkpoints';
import { armHeightAt, impactOf, shaftHeightAt, type Swing } from './swing';

/** The trade's ten positions of a swing. */
export const POSITION_IDS = ['P1', 'P2', 'P3', 'P4', 'P5', 'P6', 'P7', 'P8', 'P9', 'P10'] as const;
export type PositionId = (typeof POSITION_IDS)[number];

/** Times of the positions, s, zero at the top; null where the swing never passes one. */
export type Positions = Readonly<Record<PositionId, number | null>>;

const STEP = 0.02;

/** The positions of the backswing: when the shaft and the lead arm are parallel to the ground going back. */
export type GoingBack = Pick<Positions, 'P2' | 'P3'>;

/**
 * When a swing passes the positions of its backswing. Nothing that is dialled or adapts is in force before the top: swings of one
 * rig and the same curves share them.
 */
export function findGoingBack(swing: Swing): GoingBack {
  const address = swing.curves.times[K.address];
  return { P2: findRise(shaftHeightAt, swing, address, 0), P3: findRise(armHeightAt, swing, address, 0) };
}

/**
 * When a swing passes the ten positions: address; shaft parallel and lead arm parallel going back; top; the two checkpoints
 * coming down; impact; shaft parallel and lead arm parallel after it; finish. Common practice names. Whoever knows the backswing
 * already hands it in.
 */
export function findPositions(
  swing: Swing,
  checkpoints: Checkpoints,
  { P2, P3 }: GoingBack = findGoingBack(swing),
): Positions {
  const at = swing.curves.times;
  const impact = impactOf(swing);
  const finish = at[K.finish];
  const { leadArmParallel, shaftParallel } = checkpoints;
  return {
    P1: at[K.address],
    P2,
    P3,
    P4: 0,
    P5: isReached(leadArmParallel) ? leadArmParallel.t : null,
    P6: isReached(shaftParallel) ? shaftParallel.t : null,
    P7: impact,
    P8: findRise(shaftHeightAt, swing, impact, finish),
    P9: findRise(armHeightAt, swing, impact, finish),
    P10: finish,
  };
}

function findRise(signal: (swing: Swing, t: number) => number, swing: Swing, from: number, to: number): number | null {
  const found = findFall((t) => -signal(swing, t), from, to, STEP);
  return 't' in found ? found.t : null;
}
