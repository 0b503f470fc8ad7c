import { sayUndo } from '../../words';
import { dialValue, EDGE_DIALS, type DialId, type Document } from './document';

/** Label of an undo step that moved one dial: "Wrist −8°". */
function sayStep(id: DialId, value: number): string {
  if (id === 'pelvisRate') return sayUndo('rotationRate', value).replace('Rotation', 'Pelvis turn');
  if (id === 'pelvisDelay') return sayUndo('rotationDelay', value).replace('Turn', 'Pelvis turn');
  return sayUndo(id, value);
}

/** What a change of one section of the document is called in the undo list. */
export const SECTION_NAMES = {
  player: 'Player',
  club: 'Club',
  setUp: 'Set-up',
  bands: 'Bands',
  checkpointArmDeg: 'Reading angle',
  ball: 'Ball',
  camera: 'Camera',
  units: 'Units',
  board: 'Board',
} as const satisfies Partial<Record<keyof Document, string>>;
export type NamedSection = keyof typeof SECTION_NAMES;
const NAMED = Object.keys(SECTION_NAMES) as NamedSection[];

function nameOfSection(before: Document, after: Document): string {
  const changed = NAMED.filter((name) => before[name] !== after[name]);
  return changed.length === 1 ? SECTION_NAMES[changed[0]] : 'Change';
}

/** Short name of a change, for the undo list: of the dials, or of the one section that differs. */
export function nameOfChange(from: Document, to: Document): string {
  const [before, after] = [from.movements, to.movements];
  const moved = EDGE_DIALS.filter(({ id }) => dialValue(before, id) !== dialValue(after, id));
  // A linked pelvis follows the chest's dials: only the chest was moved.
  const own = after.pelvis ? moved : moved.filter(({ id }) => id !== 'pelvisRate' && id !== 'pelvisDelay');
  if (own.length !== 1) return own.length === 0 ? nameOfSection(from, to) : 'Movements';
  return sayStep(own[0].id, dialValue(after, own[0].id));
}
