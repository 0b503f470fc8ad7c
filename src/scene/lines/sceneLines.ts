import type { Vector2 } from 'three';
import { TRAIL_LINES } from './ballFlightTrail';
import { SHAFT_LINES } from './brokenShaft';
import { FAN_LINES } from './bodyFan';
import { FLIGHT_LINES } from './flightModel';
import { LineBatch, type BatchedLines } from './lineBatch';
import { TRACE_LINES } from './trace';

/** Lines each part of the scene may draw. What stands first here lies lowest. */
const LINES = {
  targetLine: 60,
  glass: 24,
  traces: TRACE_LINES,
  reference: SHAFT_LINES,
  ghost: SHAFT_LINES,
  fan: FAN_LINES,
  trail: TRAIL_LINES,
  flight: FLIGHT_LINES,
  shoulderLine: 2,
} as const;
type LineUser = keyof typeof LINES;

/** All lines of a scene, each part with its own range: one draw call for all of them. */
export interface SceneLines extends Readonly<Record<LineUser, BatchedLines>> {
  readonly batch: LineBatch;
}

/** `size` is the picture's size in css px, shared with whoever changes it. */
export function createSceneLines(size: Vector2): SceneLines {
  const users = Object.entries(LINES) as [LineUser, number][];
  const batch = new LineBatch(
    users.reduce((sum, [, count]) => sum + count, 0),
    size,
  );
  const lines = Object.fromEntries(users.map(([user, count]) => [user, batch.take(count)]));
  return { batch, ...(lines as Record<LineUser, BatchedLines>) };
}
