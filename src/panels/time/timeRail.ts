import { POSITION_IDS, type PositionId, type Positions } from '../../store';

/** Where the positions stand on the rail: the downswing, a fifth of the time, gets 56 % of it. */
const SHARES: Partial<Record<PositionId, number>> = {
  P1: 0,
  P2: 0.08,
  P3: 0.16,
  P4: 0.24,
  P7: 0.8,
  P8: 0.86,
  P9: 0.93,
  P10: 1,
};
/** The part of the rail, top to impact, that the downswing fills. */
export const DOWNSWING_SHARES = { from: 0.24, to: 0.8 } as const;

interface Knot {
  readonly t: number;
  readonly share: number;
}

/** A rail: time (s) to share of its length and back, straight between the positions. */
export interface Rail {
  readonly shareAt: (t: number) => number;
  readonly timeAt: (share: number) => number;
}

/** The rail of a swing. Eight positions stay put while dials move; the two checkpoints travel on it. */
export function railOf(positions: Positions): Rail {
  const knots: Knot[] = [];
  for (const id of POSITION_IDS) {
    const [t, share] = [positions[id], SHARES[id]];
    if (t !== null && share !== undefined && (knots.length === 0 || t > knots.at(-1)!.t)) knots.push({ t, share });
  }
  return {
    shareAt: (t) => between(knots, t, 't', 'share'),
    timeAt: (share) => between(knots, share, 'share', 't'),
  };
}

function between(knots: readonly Knot[], x: number, from: keyof Knot, to: keyof Knot): number {
  let i = 1;
  while (i < knots.length - 1 && x > knots[i][from]) i++;
  const [a, b] = [knots[i - 1], knots[i]];
  const part = Math.min(1, Math.max(0, (x - a[from]) / (b[from] - a[from])));
  return a[to] + part * (b[to] - a[to]);
}
