import { sayStep, SECTION_NAMES } from '../../words/swing/steps';
import { dialValue, EDGE_DIALS, type Document } from './document';

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
