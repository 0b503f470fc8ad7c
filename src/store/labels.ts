import { sayUndo } from '../words';
import { dialValue, EDGE_DIALS, type DialId, type Document } from './document';

/** Label of an undo step that moved one dial: "Wrist −8°". */
function sayStep(id: DialId, value: number): string {
  if (id === 'pelvisRate') return sayUndo('rotationRate', value).replace('Rotation', 'Pelvis turn');
  if (id === 'pelvisDelay') return sayUndo('rotationDelay', value).replace('Turn', 'Pelvis turn');
  return sayUndo(id, value);
}

/** Short name of a change of the dials, for the undo list. */
export function nameOfChange({ movements: before }: Document, { movements: after }: Document): string {
  const moved = EDGE_DIALS.filter(({ id }) => dialValue(before, id) !== dialValue(after, id));
  // A linked pelvis follows the chest's dials: only the chest was moved.
  const own = after.pelvis ? moved : moved.filter(({ id }) => id !== 'pelvisRate' && id !== 'pelvisDelay');
  if (own.length !== 1) return own.length === 0 ? 'Change' : 'Movements';
  return sayStep(own[0].id, dialValue(after, own[0].id));
}
