import { CHECKPOINT_IDS, CHECKPOINTS } from '../../reading/checkpointTable';
import type { JointId } from '../../model/joints';
import { K } from '../../model/keys';
import type { CheckpointId } from '../../reading/checkpoints';
import { current, desk, put } from './desk';
import { POSITION_IDS, type PositionId } from '../../reading/positions';
import type { DialId } from '../document/document';
import type { DrawerId, Session, SetUpPart, Speed, ViewId } from './session';

// What is looked at: session only, neither stored nor undone.

const see = (part: Partial<Session>): void => put({ session: { ...desk.getState().session, ...part } });

/** First and last instant of the swing, s. */
export function swingSpan(): { readonly from: number; readonly to: number } {
  const { times } = current().reference;
  return { from: times[K.address], to: times[K.finish] };
}

/** Moves the playhead to a time (s, zero at the top). It stands there while dials move. Stops playing. */
export function setPlayhead(t: number): void {
  if (!Number.isFinite(t)) return;
  const { from, to } = swingSpan();
  see({ t: Math.min(to, Math.max(from, t)), held: null, playing: false, bench: null });
}

/** Moves the playhead to a position and holds it there while dials move. */
export function holdAt(position: PositionId): void {
  const selectedPlate = CHECKPOINT_IDS.find((id) => CHECKPOINTS[id].position === position);
  see({ held: position, playing: false, bench: null, ...(selectedPlate ? { selectedPlate } : {}) });
}

/** Chooses a plate: time moves to its checkpoint. */
export function selectPlate(id: CheckpointId): void {
  holdAt(CHECKPOINTS[id].position);
  see({ turned: false });
}

/** To the next position (+1) or the one before (-1). */
export function step(direction: 1 | -1): void {
  const { t } = desk.getState().session;
  const { positions } = current();
  const passed = POSITION_IDS.filter((id) => positions[id] !== null && (positions[id] - t) * direction > 1e-6);
  const next = direction > 0 ? passed[0] : passed.at(-1);
  if (next) holdAt(next);
}

/** Shows a section of the set-up. */
export const showSetUp = (setUpPart: SetUpPart): void => see({ setUpPart });

/** Sets the speed of playback. */
export const setSpeed = (speed: Speed): void => see({ speed });

/** Asks the stage for a view, the same one again included. */
export const setView = (view: ViewId): void => see({ view, viewAsked: desk.getState().session.viewAsked + 1 });

/** Turns the chosen plate over to its drawing, in the figure's place, or back. */
export const turnPlate = (turned: boolean): void => see({ turned });

/** Chooses the dial whose slider stands where there is room for one. */
export const setDial = (dial: DialId): void => see({ dial });

/** Fills the screen with the picture, for the student, or gives the desk back. */
export const showStudent = (student: boolean): void => see({ student });
/** Doubles what the movements do on screen, or shows it as it is. */
export const setExaggerate = (exaggerate: boolean): void => see({ exaggerate });

/** Draws the ball's flight to where it lands, or no farther than the picture shows it. */
export const setWholeFlight = (wholeFlight: boolean): void => see({ wholeFlight });

/** Opens a drawer; the same one again, or null, closes it. */
export const setDrawer = (drawer: DrawerId | null): void =>
  see({ drawer: drawer === desk.getState().session.drawer ? null : drawer });

/** Keeps the swing as it is now for comparison, or lets it go. */
export const holdGhost = (hold: boolean): void => see({ ghost: hold ? desk.getState().document.movements : null });

/** Sets one joint on the bench, model units. Shown, never stored. */
export function bendJoint(id: JointId, value: number): void {
  if (!Number.isFinite(value)) return;
  see({ bench: { ...desk.getState().session.bench, [id]: value }, playing: false });
}

/** The swing now comes back in place of one that is being played. */
export function stopTrial(): void {
  if (desk.getState().session.trial?.isPlaying) see({ trial: null });
}

/** The bench lets go: the figure stands as the swing says. */
export const releaseBench = (): void => see({ bench: null });

/** Takes the desk's notice away. */
export const dismissNotice = (): void => put({ notice: null });
