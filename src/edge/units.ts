import { toDeg } from '../math/angle';
import type { Pose } from '../model/chain';
import type { ReadingId, Readings } from '../reading/checkpoints';
import type { Judged } from '../solving/diagnosis/judged';

const CM_PER_M = 100;

/** Metres to centimetres. */
export const toCm = (length: number): number => length * CM_PER_M;

/** Both judged readings under their names at an edge. */
export const inCm = ({ leadArmParallel, shaftParallel }: Judged): Record<string, number> => ({
  bicepGapCm: toCm(leadArmParallel),
  headDepthCm: toCm(shaftParallel),
});

/** Three numbers of a pose as a plain list. */
export const toList = (pose: Pose, at: number): [number, number, number] => [pose[at], pose[at + 1], pose[at + 2]];

/** Units of the readings at an edge, each with the way there from radians and metres: a plain factor. */
const TO_EDGE = { Deg: toDeg, Cm: toCm, ratio: (value: number): number => value } as const;

/** Every reading, its name at an edge, and its unit there. */
export const READING_EDGES: readonly (readonly [id: ReadingId, field: string, unit: keyof typeof TO_EDGE])[] = [
  ['shaftPitch', 'shaftPitchDeg', 'Deg'],
  ['shaftPlane', 'shaftPlaneDeg', 'Deg'],
  ['bicepGap', 'bicepGapCm', 'Cm'],
  ['bicepCrossing', 'bicepCrossing', 'ratio'],
  ['headDepth', 'headDepthCm', 'Cm'],
  ['shaftAim', 'shaftAimDeg', 'Deg'],
  ['planeDirection', 'planeDirectionDeg', 'Deg'],
  ['planeTilt', 'planeTiltDeg', 'Deg'],
  ['gripEndLine', 'gripEndLineCm', 'Cm'],
  ['faceToVertical', 'faceToVerticalDeg', 'Deg'],
  ['armToShaft', 'leadArmToShaftDeg', 'Deg'],
  ['thoraxTurn', 'thoraxTurnDeg', 'Deg'],
  ['pelvisTurn', 'pelvisTurnDeg', 'Deg'],
  ['handHeight', 'handHeightCm', 'Cm'],
  ['handDepth', 'handDepthCm', 'Cm'],
  ['reachRatio', 'trailReachRatio', 'ratio'],
  ['reachShortfall', 'trailShortfallCm', 'Cm'],
];

/** A reading in its unit at an edge, from radians and metres. */
export const toEdge = (value: number, unit: keyof typeof TO_EDGE): number => TO_EDGE[unit](value);

/** Names of all readings at an edge. */
export const READING_FIELDS: readonly string[] = READING_EDGES.map(([, field]) => field);

/** The reading behind a name at an edge, and the way from the model's unit to the edge's. Every one is a plain factor. */
export function readingBehind(
  field: string,
): { readonly id: ReadingId; readonly toEdge: (value: number) => number } | undefined {
  const edge = READING_EDGES.find(([, name]) => name === field);
  return edge && { id: edge[0], toEdge: TO_EDGE[edge[2]] };
}

/** Readings under their names at the edge. A reading that has no number in this pose is null in JSON. */
export function toEdgeReadings(readings: Partial<Readings>): Record<string, number> {
  const out: Record<string, number> = {};
  for (const [id, field, unit] of READING_EDGES) {
    const value = readings[id];
    if (value !== undefined) out[field] = toEdge(value, unit);
  }
  return out;
}
