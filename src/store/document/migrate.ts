import { edgeDial } from './document';

/**
 * Degrees of side bend in one of the old lean about the target line, at lead arm parallel: there both lean the trunk alike, seen face-on.
 * Measured on the shipped reference swings for 4 deg of lean (4.6 to 4.8 of side bend); the player's own reference is not at hand here.
 */
export const SIDE_BEND_OF_LEAN = 1.16;

/** What is said once when a document from before the side bend is opened. */
export const LEAN_BECAME_SIDE_BEND =
  'The model has changed since this was saved. Its lean is now side bend, and computed readings have moved.';

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Movements as they are stored today: an old lean becomes the side bend that leans the trunk alike. Anything else passes untouched. */
export function migrateMovements(value: unknown): unknown {
  if (!isFields(value) || !('trailTiltDeg' in value) || 'trailSideBendDeg' in value) return value;
  const { trailTiltDeg: lean, ...others } = value;
  // The old slider's own ends: what lay beyond them was damaged then and is damaged now.
  if (typeof lean !== 'number' || !(Math.abs(lean) <= OLD_END)) return value;
  const { min, max } = edgeDial('trailSideBend');
  const bend = Math.round(lean * SIDE_BEND_OF_LEAN * 10) / 10;
  return { ...others, trailSideBendDeg: Math.min(max, Math.max(min, bend)) };
}

/** Ends of the old slider, deg. */
const OLD_END = 15;
