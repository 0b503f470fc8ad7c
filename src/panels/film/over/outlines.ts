import { STILL } from '../../../model/movements';
import { desk } from '../../../store';
import { toMovements } from '../../../store/document/convert';
import type { Outlines } from '../../../video/film.worker';
import type { MarkReader } from '../../../video/readMarks';
import { filmStore } from '../filmStore';

const { getState: state, setState: set } = filmStore;

/** Cache: the worker that reads marks, as long as a film is open. */
export const reader: { open?: MarkReader } = {};

/** Asks for the contour of the chosen explanation at the shown frame. */
export async function drawOutline(): Promise<void> {
  const { answer, chosen, frame } = state();
  if (!reader.open || !answer || 'missing' in answer) return set({ outline: undefined });
  const outline = await outlineAt(chosen, frame);
  if (state().frame === frame && state().answer === answer) set({ outline });
}

/** Contours of the player and of what is worked toward: the plan, or the reference where none is chosen. */
export async function outlineAt(explanation: number, frame: number): Promise<Outlines | undefined> {
  const { plan } = desk.getState().document;
  const target = plan ? toMovements(plan.movements) : STILL;
  return reader.open?.outline(explanation, frame, target).catch(() => undefined);
}

/** Chooses the explanation that is drawn over the film. */
export function choose(index: number): void {
  set({ chosen: index });
  void drawOutline();
}
