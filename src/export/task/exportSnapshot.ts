import type { NoShot, Shot } from '../../flight/shot';
import { DIALS, STILL, type Movements } from '../../model/movements';
import type { Checkpoints } from '../../reading/checkpoints';
import { findPositions, type Positions } from '../../reading/positions';
import type { Delivery, NotDelivered } from '../../reading/delivery/delivery';
import type { Swing } from '../../reading/swing';
import type { Struck } from '../../scene/lines/ballFlightTrail';
import { FRESH_SESSION, toMovements, type Derived, type DeskState, type Document } from '../../store';
import { sayDialled } from '../../words';
import { sayPlanChanges } from '../../words/why/planText';
import { toArmAngle, toFaceReturned, toWeather } from '../../store/document/convert';
import { createDeriver } from '../../store/derive/deriver';
import { ghostDialled } from '../../store/derive/swings';
import { deskBases } from '../../store/desk/desk';
import { playOut } from '../../solving/playOut';
import { COMPARISON_LABELS, isThere, type ComparisonId } from './comparisonTarget';

/** One swing that is shown: played out, read, and named. */
export interface ShownSwing {
  /** "Now", "After" */
  readonly label: string;
  /** "Cupped 16°, 8 % more turn" or "As reference" */
  readonly dialled: string;
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  readonly positions: Positions;
  readonly delivery: Delivery | NotDelivered;
  /** What the ball does, in the player's own frame. */
  readonly shot: Shot | NoShot;
  /** When and where the ball leaves; absent when the head never meets it. */
  readonly struck: Struck | undefined;
}

/** Everything that a clip, a still or a sheet is made from: copied from the desk once, so that later changes have no effect. */
export interface ExportSnapshot {
  readonly document: Document;
  readonly derived: Derived;
  readonly now: ShownSwing;
  readonly after: ShownSwing;
  readonly afterId: ComparisonId;
}

/** What a state of the desk shows when nothing is drawn doubled, tried out or compared: what files are made from. */
export const derivePlain = (state: DeskState): Derived =>
  createDeriver(deskBases).derive({ ...state, session: { ...FRESH_SESSION, ghost: state.session.ghost } });

/**
 * What the desk shows, and what it is compared with. With the chosen plan it is the plan's own start and target, whatever is dialled
 * meanwhile.
 */
export function takeSnapshot(state: DeskState, derived: Derived, wanted: ComparisonId): ExportSnapshot {
  const { document } = state;
  const { units, plan } = document;
  const ghost = state.session.ghost === 'plan' ? null : ghostDialled(state);
  const afterId = isThere(wanted, ghost !== null, plan !== null) ? wanted : 'reference';
  const of = (label: string, movements: Movements): ShownSwing => ({
    label,
    dialled: sayDialled(movements, units),
    ...playAfter(derived, movements, document),
  });
  const desk = (): ShownSwing => ({
    label: 'Now',
    dialled: sayDialled(derived.movements, units),
    swing: derived.swing,
    checkpoints: derived.checkpoints,
    positions: derived.positions,
    delivery: derived.delivery,
    shot: derived.shot,
    struck: struckBy(derived.delivery, derived.shot),
  });
  const label = COMPARISON_LABELS[afterId];
  if (afterId === 'plan' && plan) {
    const [from, to] = [toMovements(plan.from), toMovements(plan.movements)];
    return { document, derived, now: of('Now', from), after: of(label, to), afterId };
  }
  return {
    document,
    derived,
    now: desk(),
    after: of(label, afterId === 'ghost' && ghost ? toMovements(ghost) : STILL),
    afterId,
  };
}

const struckBy = (delivery: Derived['delivery'], shot: Shot | NoShot): Struck | undefined =>
  'missing' in delivery || 'missing' in shot ? undefined : { t: delivery.t, track: shot.flight.track };

/** Points of a ball's track that is drawn. */
const TRACK_POINTS = 48;

function playAfter(
  { base, player }: Derived,
  movements: Movements,
  document: Document,
): Omit<ShownSwing, 'label' | 'dialled'> {
  const { swing, checkpoints, delivery, shot } = playOut(base, movements, {
    armAngle: toArmAngle(document),
    rule: document.ball.rule,
    faceReturned: toFaceReturned(document.ball),
    weather: toWeather(document.ball, player),
    trackPoints: TRACK_POINTS,
  });
  const positions = findPositions(swing, checkpoints);
  return { swing, checkpoints, positions, delivery, shot, struck: struckBy(delivery, shot) };
}

/** What changes from now to after, in words. */
export const sayChanges = ({ now, after, document }: ExportSnapshot): readonly string[] =>
  sayPlanChanges(
    DIALS.map(({ id }) => ({ id, change: after.swing.movements[id] - now.swing.movements[id] })),
    document.units,
  );
