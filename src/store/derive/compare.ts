import { readCheckpoints, type Checkpoints } from '../../reading/checkpoints';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { findPositions, POSITION_IDS, type Positions } from '../../reading/positions';
import { withMovements, type Swing } from '../../reading/swing';
import { deliverSwing, readBase } from '../../solving/playOut';
import type { BaseSwings, Ground, NoGround } from './baseSwings';
import { toArmAngle, toFaceReturned, toMovements } from '../document/convert';
import type { Derived } from './derived';
import type { References } from './references';
import { remember } from './remember';
import type { DeskState } from '../desk/state';
import { dialledOn, findSwing } from './swings';
import type { SwingOf } from '../desk/whyState';

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

/** One side of the pair, kept while only the other changes. Its parts are compared: the same swing may come in another wrapping. */
function createSide({ baseOf }: BaseSwings) {
  const compare = remember(
    (
      name: SwingOf['name'],
      player: SwingOf['player'],
      club: SwingOf['club'],
      setUp: SwingOf['setUp'],
      movements: SwingOf['movements'],
      likely: SwingOf['likely'],
      references: References,
      armAngle: number,
      rule: DeliveryRule,
      faceReturned: number,
    ): Compared | NoGround => {
      const of: SwingOf = { name, player, club, setUp, movements, ...(likely && { likely }) };
      const base = baseOf(of, references);
      if ('problem' in base) return base;
      const moved = withMovements(base.swing, toMovements(dialledOn(of, base.swing, armAngle)));
      const read = readBase(base.swing, armAngle);
      const { dialled, checkpoints, delivery } = deliverSwing(read, moved, { armAngle, rule, faceReturned });
      return { of, ground: base.ground, swing: dialled, checkpoints, delivery };
    },
  );
  return ({ name, player, club, setUp, movements, likely }: SwingOf, { references, document }: DeskState) =>
    compare(
      name,
      player,
      club,
      setUp,
      movements,
      likely,
      references,
      toArmAngle(document),
      document.ball.rule,
      toFaceReturned(document.ball),
    );
}

/** Works out both compared swings of a state, once per change; the same object while nothing changes. */
export function createCompare(bases: BaseSwings): (state: DeskState) => Pair {
  const [solidSide, ghostSide] = [createSide(bases), createSide(bases)];
  const pairUp = remember((solid: Pair['solid'], ghost: Pair['ghost']): Pair => ({ solid, ghost }));
  return (state) => {
    const { solid, ghost } = state.session.why;
    return pairUp(solidSide(findSwing(solid, state), state), ghostSide(findSwing(ghost, state), state));
  };
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

/** The reference time of one swing at the instant of the clock at which another is at `t`, both counted from the top. */
export const clockTime = (t: number, from: Pick<Swing, 'tempo'>, to: Pick<Swing, 'tempo'>): number =>
  (t * from.tempo) / to.tempo;

/** Says when each body of the fan is drawn, s: at the same position of its own swing. */
export function createFanClock(derive: (state: DeskState) => Derived): (state: DeskState) => readonly number[] {
  const positionsOf = remember((fan: readonly Swing[], armAngle: number) =>
    fan.map((swing) => findPositions(swing, readCheckpoints(swing, armAngle))),
  );
  return (state) => {
    const { fanSwings, positions } = derive(state);
    const own = positionsOf(fanSwings, toArmAngle(state.document));
    return own.map((to) => linkedTime(state.session.t, positions, to));
  };
}

/** Says when the ghost is drawn, s: at the same position of its own swing, or at the same instant of the clock. */
export function createGhostClock(derive: (state: DeskState) => Derived): (state: DeskState) => number {
  const positionsOf = remember((ghost: Swing, armAngle: number) =>
    findPositions(ghost, readCheckpoints(ghost, armAngle)),
  );
  return (state) => {
    const { ghostSwing, positions, swing } = derive(state);
    const { t, why } = state.session;
    if (!ghostSwing) return t;
    if (why.link === 'clock') return clockTime(t, swing, ghostSwing);
    return linkedTime(t, positions, positionsOf(ghostSwing, toArmAngle(state.document)));
  };
}
