import { readCheckpoints, type Checkpoints } from '../reading/checkpoints';
import { deliver, strikeOf, type Delivery, type NotDelivered } from '../reading/delivery';
import { findPositions, POSITION_IDS, type Positions } from '../reading/positions';
import { withMovements, type Swing } from '../reading/swing';
import { toArmAngle, toMovements } from './convert';
import { derive } from './derived';
import type { DeskState } from './state';
import { dialledOf, type NamedSwing } from './whyState';

/** One of two swings that are compared, read in full. */
export interface Compared {
  readonly name: NamedSwing;
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  readonly delivery: Delivery | NotDelivered;
}
export interface Pair {
  readonly solid: Compared;
  readonly ghost: Compared;
}

let last: { readonly key: readonly unknown[]; readonly pair: Pair } | undefined;

/** Both compared swings, never exaggerated. Worked out once per change. */
export function comparedOf(state: DeskState): Pair {
  const { referenceSwing, referenceCheckpoints } = derive(state);
  const { document, session } = state;
  const { solid, ghost } = session.why;
  const key = [
    referenceSwing,
    document.movements,
    document.checkpointArmDeg,
    document.ball,
    session.ghost,
    solid,
    ghost,
  ];
  if (last && key.every((part, i) => part === last!.key[i])) return last.pair;
  const armAngle = toArmAngle(document);
  const strike = strikeOf(referenceSwing, referenceCheckpoints);
  const read = (name: NamedSwing): Compared => {
    const swing = withMovements(referenceSwing, toMovements(dialledOf(name, session.ghost, document.movements)));
    const checkpoints = readCheckpoints(swing, armAngle);
    const { delivery } = strike
      ? deliver(swing, checkpoints, strike, document.ball.rule)
      : { delivery: { missing: 'no-shaft-parallel' } as const };
    return { name, swing, checkpoints, delivery };
  };
  const pair: Pair = { solid: read(solid), ghost: read(ghost) };
  last = { key, pair };
  return pair;
}

/** The instant of one swing that belongs to an instant of another: position by position, evenly in between. Seconds. */
export function linkedTime(t: number, from: Positions, to: Positions): number {
  const knots = POSITION_IDS.flatMap((id) => {
    const [a, b] = [from[id], to[id]];
    return a === null || b === null ? [] : [{ a, b }];
  }).toSorted((p, q) => p.a - q.a);
  if (knots.length === 0) return t;
  const next = knots.findIndex(({ a }) => a >= t);
  if (next === 0) return t + knots[0].b - knots[0].a;
  if (next === -1) return t + knots.at(-1)!.b - knots.at(-1)!.a;
  const [p, q] = [knots[next - 1], knots[next]];
  const share = q.a > p.a ? (t - p.a) / (q.a - p.a) : 0;
  return p.b + share * (q.b - p.b);
}

let lastGhost: { readonly swing: Swing; readonly armAngle: number; readonly positions: Positions } | undefined;

/** When the ghost is drawn, s: at the same position of its own swing, or at the same instant of the clock. */
export function ghostTime(state: DeskState): number {
  const { ghostSwing, positions } = derive(state);
  const { t, why } = state.session;
  if (!ghostSwing || why.link === 'clock') return t;
  const armAngle = toArmAngle(state.document);
  if (lastGhost?.swing !== ghostSwing || lastGhost.armAngle !== armAngle) {
    const read = findPositions(ghostSwing, readCheckpoints(ghostSwing, armAngle));
    lastGhost = { swing: ghostSwing, armAngle, positions: read };
  }
  return linkedTime(t, positions, lastGhost.positions);
}
