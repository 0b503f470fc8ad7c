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

const same = (value: number): number => value;

/** Every reading: its name at the edge, with the unit, and how to get there from radians and metres. */
const EDGES: readonly (readonly [ReadingId, string, (value: number) => number])[] = [
  ['shaftPitch', 'shaftPitchDeg', toDeg],
  ['shaftPlane', 'shaftPlaneDeg', toDeg],
  ['bicepGap', 'bicepGapCm', toCm],
  ['bicepCrossing', 'bicepCrossing', same],
  ['headDepth', 'headDepthCm', toCm],
  ['shaftAim', 'shaftAimDeg', toDeg],
  ['planeDirection', 'planeDirectionDeg', toDeg],
  ['planeTilt', 'planeTiltDeg', toDeg],
  ['gripEndLine', 'gripEndLineCm', toCm],
  ['faceToVertical', 'faceToVerticalDeg', toDeg],
  ['armToShaft', 'leadArmToShaftDeg', toDeg],
  ['thoraxTurn', 'thoraxTurnDeg', toDeg],
  ['pelvisTurn', 'pelvisTurnDeg', toDeg],
  ['handHeight', 'handHeightCm', toCm],
  ['handDepth', 'handDepthCm', toCm],
  ['reachRatio', 'trailReachRatio', same],
  ['reachShortfall', 'trailShortfallCm', toCm],
] as const;

/** Names of all readings at an edge. */
export const READING_FIELDS: readonly string[] = EDGES.map(([, field]) => field);

/** The reading behind a name at an edge, and the way from the model's unit to the edge's. Every one is a plain factor. */
export function readingBehind(
  field: string,
): { readonly id: ReadingId; readonly toEdge: (value: number) => number } | undefined {
  const edge = EDGES.find(([, name]) => name === field);
  return edge && { id: edge[0], toEdge: edge[2] };
}

/** Readings under their names at the edge. A reading that has no number in this pose is null in JSON. */
export function toEdgeReadings(readings: Partial<Readings>): Record<string, number> {
  const out: Record<string, number> = {};
  for (const [id, field, convert] of EDGES) {
    const value = readings[id];
    if (value !== undefined) out[field] = convert(value);
  }
  return out;
}
