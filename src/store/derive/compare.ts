import { readCheckpoints, type Checkpoints } from '../../reading/checkpoints';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { findPositions, POSITION_IDS, type Positions } from '../../reading/positions';
import { withMovements, type Swing } from '../../reading/swing';
import { deliverSwing, readBase } from '../../solving/playOut';
import { baseOf, type Ground, type NoGround } from './baseSwings';
import { toArmAngle, toMovements } from '../document/convert';
import { derive } from './derived';
import type { DeskState } from '../desk/state';
import { dialledOn, findSwing, type SwingOf } from './swings';

/** One of two swings that are compared, read in full and never exaggerated. */
export interface Compared {
  readonly of: SwingOf;
  readonly ground: Ground;
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  readonly delivery: Delivery | NotDelivered;
}
export interface Pair {
  readonly solid: Compared | NoGround;
  readonly ghost: Compared | NoGround;
}

function compare(of: SwingOf, armAngle: number, rule: DeliveryRule): Compared | NoGround {
  const base = baseOf(of);
  if ('problem' in base) return base;
  const read = readBase(base.swing, armAngle);
  const movements = toMovements(dialledOn(of, base.swing, armAngle));
  const { dialled, checkpoints, delivery } = deliverSwing(read, withMovements(base.swing, movements), {
    armAngle,
    rule,
  });
  return { of, ground: base.ground, swing: dialled, checkpoints, delivery };
}

/** Keeps one of the pair while only the other changes. */
const createSide = (): ((of: SwingOf, armAngle: number, rule: DeliveryRule, found: number) => Compared | NoGround) => {
  let last: { readonly key: readonly unknown[]; readonly side: Compared | NoGround } | undefined;
  return (of, armAngle, rule, found) => {
    const key = [of.name, of.player, of.club, of.setUp, of.movements, of.likelyFor, armAngle, rule, found];
    if (!last || key.some((part, i) => part !== last!.key[i])) last = { key, side: compare(of, armAngle, rule) };
    return last.side;
  };
};
const solidSide = createSide();
const ghostSide = createSide();
let lastPair: Pair | undefined;

/** Both compared swings. Worked out once per change; the same object while nothing changes. */
export function comparedOf(state: DeskState): Pair {
  const { document, session, found } = state;
  const armAngle = toArmAngle(document);
  const solid = solidSide(findSwing(session.why.solid, state), armAngle, document.ball.rule, found);
  const ghost = ghostSide(findSwing(session.why.ghost, state), armAngle, document.ball.rule, found);
  if (lastPair?.solid !== solid || lastPair.ghost !== ghost) lastPair = { solid, ghost };
  return lastPair;
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

/** The reference time of one swing at the instant of the clock at which another is at `t`, both counted from the top. */
export const clockTime = (t: number, from: Pick<Swing, 'tempo'>, to: Pick<Swing, 'tempo'>): number =>
  (t * from.tempo) / to.tempo;

/** When the ghost is drawn, s: at the same position of its own swing, or at the same instant of the clock. */
export function ghostTime(state: DeskState): number {
  const { ghostSwing, positions, swing } = derive(state);
  const { t, why } = state.session;
  if (!ghostSwing) return t;
  if (why.link === 'clock') return clockTime(t, swing, ghostSwing);
  const armAngle = toArmAngle(state.document);
  if (lastGhost?.swing !== ghostSwing || lastGhost.armAngle !== armAngle) {
    const read = findPositions(ghostSwing, readCheckpoints(ghostSwing, armAngle));
    lastGhost = { swing: ghostSwing, armAngle, positions: read };
  }
  return linkedTime(t, positions, lastGhost.positions);
}
