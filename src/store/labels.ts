import { dialValue, EDGE_DIALS, type DialId, type Document } from './document';

const SHORT: Record<DialId, { readonly name: string; readonly show: (value: number) => string }> = {
  leadWristFlexion: { name: 'Wrist', show: (value) => `${signed(value)}°` },
  rotationRate: { name: 'Rotation', show: percent },
  rotationDelay: { name: 'Start of the turn', show: (value) => `${signed(value)} ms` },
  trailTilt: { name: 'Tilt', show: (value) => `${signed(value)}°` },
  pelvisShift: { name: 'Pelvis shift', show: (value) => `${signed(value)} cm` },
  pelvisRate: { name: 'Pelvis turn', show: percent },
  pelvisDelay: { name: 'Start of the pelvis', show: (value) => `${signed(value)} ms` },
};

function signed(value: number): string {
  return value < 0 ? `−${-value}` : value > 0 ? `+${value}` : '0';
}
function percent(value: number): string {
  return `${Math.round(value * 100)} %`;
}

/** Short name of a change of the dials, for the undo list: "Wrist −8°". */
export function nameOfChange(before: Document, after: Document): string {
  const moved = EDGE_DIALS.filter(({ id }) => dialValue(before.movements, id) !== dialValue(after.movements, id));
  const own = after.movements.pelvis ? moved : moved.filter(({ id }) => id !== 'pelvisRate' && id !== 'pelvisDelay');
  if (own.length !== 1) return own.length === 0 ? 'Change' : 'Movements';
  const [{ id }] = own;
  return `${SHORT[id].name} ${SHORT[id].show(dialValue(after.movements, id))}`;
}
