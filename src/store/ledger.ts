import { createSwing, withMovements, type Swing } from '../reading/swing';
import { strikeOf } from '../reading/delivery';
import {
  mixSwings,
  solveContributions,
  PARTS,
  type Contributions,
  type NoContributions,
  type Part,
} from '../solving/contributions';
import { askImpliedPath, askReading, type Question } from '../solving/question';
import { toArmAngle, toMovements } from './convert';
import { derive, type Derived } from './derived';
import type { Document } from './document';
import { referenceFor } from './references';
import type { DeskState } from './state';
import { dialledOf, LEDGER_READINGS, type LedgerReading, type NamedSwing } from './whyState';

/** A difference shared out, and the two swings it lies between. */
export interface Ledger {
  readonly from: Swing;
  readonly to: Swing;
  readonly shared: Contributions | NoContributions;
  /** The parts in which the two swings differ. */
  readonly parts: readonly Part[];
}

const isPlain = ({ setUp }: Document): boolean =>
  setUp.handDepthCm === 0 && setUp.handHeightCm === 0 && setUp.turnDeg === 0 && setUp.wristSetDeg === 0;

/** The reference before the player's own top of the backswing, in the player's own tempo. */
function plainReference({ body, club, referenceSwing }: Derived): Swing {
  const found = referenceFor(body, club);
  if (!('reference' in found)) return referenceSwing;
  return { ...createSwing(body, club, found.reference), tempo: referenceSwing.tempo };
}

/** A named swing with nothing adapted: what the readings hang on. The reference has the plain top, all others the player's. */
export function namedSwing(name: NamedSwing, { document, session }: DeskState, derived: Derived): Swing {
  if (name === 'reference') return isPlain(document) ? derived.referenceSwing : plainReference(derived);
  return withMovements(derived.referenceSwing, toMovements(dialledOf(name, session.ghost, document.movements)));
}

function questionFor(id: LedgerReading, derived: Derived, armAngle: number): Question {
  const { at, reading } = LEDGER_READINGS[id];
  if (id !== 'path') return askReading(at, reading, armAngle);
  const strike = strikeOf(derived.referenceSwing, derived.referenceCheckpoints);
  return askImpliedPath(at, derived.referenceSwing, strike?.path ?? NaN, armAngle);
}

let last: { readonly key: readonly unknown[]; readonly ledger: Ledger } | undefined;

/** The ledger of the chosen reading between the two chosen swings. Worked out once per change. */
export function ledgerOf(state: DeskState): Ledger {
  const derived = derive(state);
  const { why, ghost } = state.session;
  const { movements, setUp, checkpointArmDeg } = state.document;
  const { referenceSwing } = derived;
  const key = [referenceSwing, movements, setUp, checkpointArmDeg, ghost, why.reading, why.from, why.to];
  if (last && key.every((part, i) => part === last!.key[i])) return last.ledger;
  const from = namedSwing(why.from, state, derived);
  const to = namedSwing(why.to, state, derived);
  const shared = solveContributions(from, to, questionFor(why.reading, derived, toArmAngle(state.document)));
  const ledger: Ledger = { from, to, shared, parts: PARTS.filter((part) => differs(from, to, part)) };
  last = { key, ledger };
  return ledger;
}

/** Whether two swings differ in a part. */
function differs(from: Swing, to: Swing, part: Part): boolean {
  const mixed = mixSwings(from, to, [part]);
  if (part === 'setUp') return mixed.curves !== from.curves || mixed.rig !== from.rig;
  return JSON.stringify(mixed.movements) !== JSON.stringify(from.movements);
}
