import { isReached } from '../../reading/checkpoints';
import type { Pose } from '../../model/chain';
import { createDeriver } from '../derive/deriver';
import { clearDesk, current, currentPose, desk } from './desk';
import type { Session } from './session';

const isAsked = typeof location === 'object' && new URLSearchParams(location.search).has('probe');
/** Cache: what the stage has drawn last, while tests look. */
const last: { drawn: readonly number[] | null; figure: readonly number[] } = { drawn: null, figure: [] };

/** The stage reports the pose it drew and where the figure's parts are. Kept only with `?probe`. */
export function noteDrawn(pose: Pose, placement: Float64Array): void {
  if (!isAsked) return;
  last.drawn = Array.from(pose);
  last.figure = Array.from(placement);
}

/** What tests may see of the desk: copies, nothing to hold on to and nothing to write. */
function lookAtDesk() {
  const { document, session, history, gesture, notice } = desk.getState();
  const { status, problem, checkpoints, bands, positions, swing } = current();
  const { leadArmParallel: p5, shaftParallel: p6 } = checkpoints;
  return structuredClone({
    document,
    session: withoutFunctions(session),
    past: history.past.map(({ label }) => label),
    future: history.future.map(({ label }) => label),
    inGesture: gesture !== null,
    notice,
    status,
    problem,
    bands,
    positions,
    movements: swing.movements,
    bicepGapCm: isReached(p5) ? p5.readings.bicepGap * 100 : null,
    headDepthCm: isReached(p6) ? p6.readings.headDepth * 100 : null,
    pose: Array.from(currentPose()),
    drawn: last.drawn,
    drawnFigure: last.figure,
  });
}

/** A swing brought along from the lesson book carries how its marks are explained: nothing to copy. */
const withoutFunctions = (session: Session): Session => ({
  ...session,
  why: {
    ...session.why,
    brought: session.why.brought.map(({ id, swing: { likely: _, ...swing } }) => ({ id, swing })),
  },
});

/** The pose that follows from a stored text, derived from scratch: no cache is used. */
function poseFromStored(text: string): number[] {
  const state = desk.getState();
  return Array.from(createDeriver().poseOf({ ...state, document: JSON.parse(text) as typeof state.document }));
}
/**
 * What tests may see of the desk.
 * @internal The page only puts it on the window; browser tests read it there.
 */
export type DeskLook = ReturnType<typeof lookAtDesk>;

/** Puts the look, and a way to an empty desk, on the window when the address asks for it with `?probe`. */
export function exposeProbe(): void {
  if (isAsked) Object.defineProperty(window, 'slantwiseProbe', { value: lookAtDesk, writable: false });
  if (isAsked) Object.defineProperty(window, 'slantwisePoseFrom', { value: poseFromStored, writable: false });
  if (isAsked) Object.defineProperty(window, 'slantwiseClear', { value: clearDesk, writable: false });
}
