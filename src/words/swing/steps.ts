import type { MovementId } from '../../model/movements';
import { sayUndo } from './dials';

/** Label of an undo step that moved one dial: "Wrist −8°". */
export function sayStep(id: MovementId | 'pelvisRate' | 'pelvisDelay', value: number): string {
  if (id === 'pelvisRate') return sayUndo('rotationRate', value).replace('Body turn', 'Hip turn');
  if (id === 'pelvisDelay') return sayUndo('rotationDelay', value).replace('Turn', 'Hip turn');
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
} as const;
