import type { PositionId } from '../../reading/positions';

/** Where a drill stops or what it checks, by its name: only those that are done in golf posture, with both hands on a club. */
const PLACES: Readonly<Record<string, PositionId>> = {
  'Ruler on the wrist': 'P5',
  'Knuckles down': 'P5',
  'Tray in the lead hand': 'P5',
  'Crease check': 'P5',
  'Back to the target': 'P5',
  'Arms first': 'P5',
  'Pause at the top': 'P4',
  'Pump and go': 'P5',
  'Shoulder under': 'P4',
  'Chest over the ball': 'P5',
};

/** The position a drill belongs to; nothing where it has none, or is the coach's own. */
export const findDrillPlace = (name: string): PositionId | undefined =>
  Object.hasOwn(PLACES, name) ? PLACES[name] : undefined;
