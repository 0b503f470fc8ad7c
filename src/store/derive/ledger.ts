import { withMovements, type Swing } from '../../reading/swing';
import {
  mixSwings,
  solveContributions,
  PARTS,
  type Contributions,
  type NoContributions,
  type Part,
} from '../../solving/diagnosis/contributions';
import { askLedger } from '../../solving/diagnosis/question';
import { readBase } from '../../solving/playOut';
import type { Base, BaseSwings, NoGround } from './baseSwings';
import { toArmAngle, toFaceReturned, toMovements } from '../document/convert';
import type { DeskState } from '../desk/state';
import { dialledOn, findSwing } from './swings';
import { splitReading, type SwingOf } from '../desk/whyState';

/** A difference shared out, and the two swings it lies between. */
export interface Ledger {
  readonly names: { readonly from: SwingOf; readonly to: SwingOf };
  readonly from: Swing;
  readonly to: Swing;
  readonly shared: Contributions | NoContributions;
  /** The parts in which the two swings differ. */
  readonly parts: readonly Part[];
}

/** A chosen swing with nothing adapted: what the readings hang on. */
function swingOn(base: Base, of: SwingOf, armAngle: number): Swing {
  return withMovements(base.swing, toMovements(dialledOn(of, base.swing, armAngle)));
}

/**
 * Works out the ledger of the chosen reading between the two chosen swings, or why there is none yet. Once per change.
 */
export function createLedger(bases: BaseSwings): (state: DeskState) => Ledger | NoGround {
  let last: { readonly key: readonly unknown[]; readonly ledger: Ledger | NoGround } | undefined;
  return (state) => {
    const { document, session, history, references } = state;
    const { why, ghost } = session;
    const { player, club, movements, plan, setUp, checkpointArmDeg, ball } = document;
    const chosen = [why.reading, why.from, why.to, why.brought];
    const key = [
      player,
      club,
      movements,
      plan?.movements,
      setUp,
      checkpointArmDeg,
      ball.rule,
      ball.faceReturned,
      ghost,
      history.past,
      references,
      ...chosen,
    ];
    if (!last || key.some((part, i) => part !== last!.key[i])) last = { key, ledger: shareOut(state, bases) };
    return last.ledger;
  };
}

function shareOut(state: DeskState, { baseOf }: BaseSwings): Ledger | NoGround {
  const { reading, from: fromId, to: toId } = state.session.why;
  const armAngle = toArmAngle(state.document);
  const names = { from: findSwing(fromId, state), to: findSwing(toId, state) };
  const [a, b] = [baseOf(names.from, state.references), baseOf(names.to, state.references)];
  if ('problem' in a) return a;
  if ('problem' in b) return b;
  const from = swingOn(a, names.from, armAngle);
  const to = swingOn(b, names.to, armAngle);
  const [at, id] = splitReading(reading);
  const base = readBase(b.swing, armAngle);
  const { ball } = state.document;
  const question = askLedger({
    at,
    reading: id,
    base,
    armAngle,
    rule: ball.rule,
    faceReturned: toFaceReturned(ball),
  });
  const shared = solveContributions(from, to, question);
  return { names, from, to, shared, parts: PARTS.filter((part) => differs(from, to, part)) };
}

/** Whether two swings differ in a part. */
function differs(from: Swing, to: Swing, part: Part): boolean {
  const mixed = mixSwings(from, to, [part]);
  if (part === 'setUp') return mixed.curves !== from.curves || mixed.rig !== from.rig;
  return JSON.stringify(mixed.movements) !== JSON.stringify(from.movements);
}
