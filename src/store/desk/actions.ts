import {
  dialValue,
  edgeDial,
  STILL_DIALLED,
  withDial,
  type DialId,
  type Dialled,
  type Document,
} from '../document/document';
import { desk, put } from './desk';
import { stepBetween, turnBack, turnForward, withStep } from '../document/history';
import { SECTION_NAMES } from '../../words/swing/steps';
import { nameOfChange, type NamedSection } from '../document/labels';
import { SITUATIONS, type SituationId } from '../document/situations';
import type { Gesture } from './state';

/** Changes the document. Outside a gesture the change is an undo step of its own; within one, `endGesture` records it. */
export const change = (label: string, edit: (document: Document) => Document): void =>
  take(edit(desk.getState().document), () => label);

/** Takes another document. Its step's name is asked for only where there is a step. */
function take(next: Document, name: (before: Document) => string): void {
  const { document, history, gesture } = desk.getState();
  if (next === document) return;
  if (gesture) return put({ document: next });
  const step = stepBetween(name(document), document, next);
  if (step) put({ document: next, history: withStep(history, step) });
}

/**
 * A drag or a held key starts: until `endGesture` everything is one undo step. Without a label the change names itself.
 * Answers the gesture, for whoever ends it.
 */
export function beginGesture(label = ''): Gesture {
  endGesture();
  const gesture: Gesture = { label, before: desk.getState().document };
  desk.setState({ gesture });
  return gesture;
}

/** Ends the gesture at its last valid value: the given one if it is still going on; without an argument, any. */
export function endGesture(own?: Gesture): void {
  const { document, history, gesture } = desk.getState();
  if (!gesture || (own && own !== gesture)) return;
  const label = gesture.label || nameOfChange(gesture.before, document);
  const step = stepBetween(label, gesture.before, document);
  put({ gesture: null, ...(step ? { history: withStep(history, step) } : {}) });
}

/** One step back. Answers what was undone. */
export function undo(): string | undefined {
  endGesture();
  const { document, history } = desk.getState();
  const turned = turnBack(document, history);
  if (turned) put({ document: turned.document, history: turned.history });
  return turned?.label;
}

/** One step forward again. Answers what was redone. */
export function redo(): string | undefined {
  endGesture();
  const { document, history } = desk.getState();
  const turned = turnForward(document, history);
  if (turned) put({ document: turned.document, history: turned.history });
  return turned?.label;
}

const dialled = (label: string, movements: Dialled): void =>
  change(label, (document) => (document.movements === movements ? document : { ...document, movements }));

/** Sets one dial, in the unit the slider shows; brought onto the dial's steps and inside its ends. */
export function setMovement(id: DialId, edgeValue: number): void {
  const { document } = desk.getState();
  const movements = withDial(document.movements, id, edgeValue);
  if (movements === document.movements) return;
  const next = { ...document, movements };
  take(next, (before) => nameOfChange(before, next));
}

/** Moves one dial by whole steps from where it stands. */
export function nudgeMovement(id: DialId, steps: number): void {
  const { movements } = desk.getState().document;
  setMovement(id, dialValue(movements, id) + steps * edgeDial(id).step);
}

/** One dial back to the reference. */
export const resetMovement = (id: DialId): void => setMovement(id, edgeDial(id).neutral);

/** Every dial back to the reference. */
export function resetAll(): void {
  endGesture();
  dialled('Reset all', STILL_DIALLED);
}

/** Loads a ready-made situation. */
export function loadSituation(id: SituationId): void {
  endGesture();
  const situation = SITUATIONS.find((one) => one.id === id)!;
  dialled(situation.label, situation.dialled);
}

/** The pelvis turns on its own (starting from the chest's dials), or with the chest again. */
export function setPelvisAlone(alone: boolean): void {
  endGesture();
  const { movements } = desk.getState().document;
  if (alone === (movements.pelvis !== null)) return;
  const pelvis = alone ? { rate: movements.rotationRate, delayMs: movements.rotationDelayMs } : null;
  dialled(alone ? 'Hips on their own' : 'Hips with the chest', { ...movements, pelvis });
}

const section =
  <S extends NamedSection>(name: S) =>
  (value: Document[S]): void =>
    change(SECTION_NAMES[name], (document) => ({ ...document, [name]: value }));

export const setPlayer = section('player');
export const setClub = section('club');
export const setSetUp = section('setUp');
export const setBands = section('bands');
export const setCheckpointArmDeg = section('checkpointArmDeg');
export const setBall = section('ball');
export const setCamera = section('camera');
export const setUnits = section('units');
export const setBoard = section('board');
