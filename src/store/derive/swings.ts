import type { Swing } from '../../reading/swing';
import { PLAIN_SET_UP, STILL_DIALLED, type Dialled, type Document, type SetUp } from '../document/document';
import { SITUATIONS } from '../document/situations';
import type { DeskState } from '../desk/state';
import type { SwingId, SwingOf } from '../desk/whyState';

export const SWING_NAMES = {
  now: 'This swing',
  reference: 'Reference swing',
  ghost: 'Ghost',
  plan: 'The plan',
} as const;

/** What is dialled in the swing that is kept on screen for comparison; null without one, or without a plan to show. */
export const ghostDialled = ({
  document,
  session: { ghost },
}: Pick<DeskState, 'document' | 'session'>): Dialled | null =>
  ghost === 'plan' ? (document.plan?.movements ?? null) : ghost;

const SITUATION = 'situation ';
/** Name of a ready-made situation in lists of swings. */
export const situationSwing = (id: string): SwingId => SITUATION + id;

/** Cache: set-ups without a top of their own, by the set-up they were made from. */
const plainTops = new WeakMap<SetUp, SetUp>();
/** The set-up without a top of its own, in the same tempo: the same object every time. */
function plainTop(setUp: SetUp): SetUp {
  const { handDepthCm, handHeightCm, turnDeg, wristSetDeg, downswingMs } = setUp;
  if (handDepthCm === 0 && handHeightCm === 0 && turnDeg === 0 && wristSetDeg === 0) return setUp;
  const known = plainTops.get(setUp) ?? { ...PLAIN_SET_UP, downswingMs };
  plainTops.set(setUp, known);
  return known;
}

const named = (
  name: string,
  { player, club, setUp, movements }: Pick<SwingOf, 'player' | 'club' | 'setUp' | 'movements'>,
): SwingOf => ({
  name,
  player,
  club,
  setUp,
  movements,
});

/** The desk before its last step, and what that step was called; undefined when nothing has been done yet. */
export function beforeLastStep({ document, history }: Pick<DeskState, 'document' | 'history'>): SwingOf | undefined {
  const step = history.past.at(-1);
  return step && named(`Before: ${step.label}`, { ...document, ...step.before });
}

/** A swing by its id. One that is not there any more is the swing now. */
export function findSwing(id: SwingId, state: DeskState): SwingOf {
  const { document, session } = state;
  const onDesk = (name: string, part: Partial<Document> = {}): SwingOf => named(name, { ...document, ...part });
  if (id === 'reference') {
    return onDesk(SWING_NAMES.reference, { movements: STILL_DIALLED, setUp: plainTop(document.setUp) });
  }
  const ghost = id === 'ghost' ? ghostDialled(state) : null;
  if (ghost) return onDesk(session.ghost === 'plan' ? SWING_NAMES.plan : SWING_NAMES.ghost, { movements: ghost });
  if (id === 'plan' && document.plan) return onDesk(SWING_NAMES.plan, { movements: document.plan.movements });
  const before = id === 'before' ? beforeLastStep(state) : undefined;
  if (before) return before;
  const situation = SITUATIONS.find((one) => situationSwing(one.id) === id);
  if (situation) return onDesk(situation.label, { movements: situation.dialled });
  return session.why.brought.find((one) => one.id === id)?.swing ?? onDesk(SWING_NAMES.now);
}

/** What is drawn solid and what as ghost. Comparing chooses both. */
export function pairOf(state: DeskState): { readonly solid: SwingOf; readonly ghost: SwingOf | null } {
  const { drawer, why } = state.session;
  if (drawer === 'compare') return { solid: findSwing(why.solid, state), ghost: findSwing(why.ghost, state) };
  return { solid: findSwing('now', state), ghost: ghostDialled(state) && findSwing('ghost', state) };
}

/** What is dialled in a swing; where only marks are known, their most likely explanation on this base. */
export const dialledOn = ({ movements, likely }: SwingOf, base: Swing, armAngle: number): Dialled =>
  likely ? likely(base, armAngle) : movements;
