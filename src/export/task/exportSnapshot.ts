import type { NoShot, Shot } from '../../flight/shot';
import { DIALS, STILL, type MovementId, type Movements } from '../../model/movements';
import type { Checkpoints } from '../../reading/checkpoints';
import { findPositions, type Positions } from '../../reading/positions';
import type { Delivery, NotDelivered } from '../../reading/delivery/delivery';
import type { Swing } from '../../reading/swing';
import type { Struck } from '../../scene/lines/ballFlightTrail';
import { FRESH_SESSION, toMovements, type Derived, type DeskState, type Document } from '../../store';
import { sayChange, sayDialled } from '../../words';
import { toArmAngle, toFaceReturned, toWeather } from '../../store/document/convert';
import { createDeriver } from '../../store/derive/deriver';
import { deskBases } from '../../store/desk/desk';
import { playOut } from '../../solving/playOut';
import type { StepPlan } from '../../solving/diagnosis/planOnSteps';
import { COMPARISON_LABELS, isThere, type ComparisonId } from './comparisonTarget';

/** One swing that is shown: played out, read, and named. */
export interface ShownSwing {
  /** "Now", "After" */
  readonly label: string;
  /** "Cupped 16°, 8 % faster" or "As reference" */
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
  /** The smallest change that reaches both bands, or comes closest; absent when the swing is there already. */
  readonly plan: StepPlan | undefined;
}

/** What a state of the desk shows when nothing is drawn doubled, tried out or compared: what files are made from. */
export const derivePlain = (state: DeskState): Derived =>
  createDeriver(deskBases).derive({ ...state, session: { ...FRESH_SESSION, ghost: state.session.ghost } });

/** What the desk shows, and what it is set against; `plan` where that was asked for and there is one. */
export function takeSnapshot(
  { document, session }: DeskState,
  derived: Derived,
  wanted: ComparisonId,
  plan?: StepPlan,
): ExportSnapshot {
  const afterId = isThere(wanted, session.ghost !== null, plan !== undefined) ? wanted : 'reference';
  const { units } = document;
  const now: ShownSwing = {
    label: 'Now',
    dialled: sayDialled(derived.movements, units),
    swing: derived.swing,
    checkpoints: derived.checkpoints,
    positions: derived.positions,
    delivery: derived.delivery,
    shot: derived.shot,
    struck: struckBy(derived.delivery, derived.shot),
  };
  const movements =
    afterId === 'plan' ? plan?.movements : afterId === 'ghost' && session.ghost ? toMovements(session.ghost) : STILL;
  const after: ShownSwing = {
    label: COMPARISON_LABELS[afterId],
    dialled: sayDialled(movements ?? STILL, units),
    ...playAfter(derived, movements ?? STILL, document),
  };
  return { document, derived, now, after, afterId, plan };
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

/** How far each dial goes from now to after, model units. */
export const changesOf = ({
  now,
  after,
}: ExportSnapshot): readonly { readonly id: MovementId; readonly change: number }[] =>
  DIALS.map(({ id }) => ({ id, change: after.swing.movements[id] - now.swing.movements[id] }));

/** What changes from now to after, in words. */
export const sayChanges = (subject: ExportSnapshot): readonly string[] =>
  changesOf(subject).flatMap(({ id, change }) => sayChange(id, change, subject.document.units) ?? []);
