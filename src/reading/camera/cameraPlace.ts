import { CHECKPOINTS, type CheckpointId } from '../checkpointTable';
import type { Pose } from '../../model/pose';
import { standCamera, type Address, type Tripod } from './camera';
import { readThrough } from './cameraReadings';

/** Poses at the checkpoints that were reached; what a camera down the line is judged by. */
export interface JudgedPoses {
  readonly leadArmParallel?: Pose | undefined;
  readonly shaftParallel?: Pose | undefined;
}

/** Where a camera may be told to go, m: as far aside as a tee is wide, between the ground and an arm held up. */
const PLACE_LIMITS = { offset: { min: -1.5, max: 1.5 }, height: { min: 0.2, max: 2.5 } } as const;
/** Nobody places a tripod more closely, m (our choice). */
const STEP = 0.05;

const ROUNDS = 8;
/** Both bends below this count as none, m. */
const NONE = 1e-6;
const PROBE = 1e-4;

/** A better place for a camera down the line, and the farther of the two bends that is left there, m. */
export interface BetterPlace {
  readonly offset: number;
  readonly height: number;
  readonly worst: number;
}

/**
 * Where a camera down the line reads these poses true: moved aside until the head stands right at shaft parallel, raised or lowered until
 * the line stands right at lead arm parallel, to the next 5 cm; distance, aim and roll stay. Nothing when no such place is within
 * `PLACE_LIMITS` and better than where the camera is.
 */
export function findTruePlace(tripod: Tripod, address: Address, poses: JudgedPoses): BetterPlace | undefined {
  const bends = (offset: number, height: number): readonly [number, number] | undefined => {
    const lens = standCamera('downTheLine', { ...tripod, offset, height }, address);
    const one = (id: CheckpointId): number => {
      const pose = poses[id];
      const read = pose && readThrough(CHECKPOINTS[id].judged, lens, pose);
      return read === undefined ? 0 : 'bend' in read ? read.bend : NaN;
    };
    const both = [one('leadArmParallel'), one('shaftParallel')] as const;
    return both.every(Number.isFinite) ? both : undefined;
  };
  const worstAt = (offset: number, height: number): number => {
    const both = bends(offset, height);
    return both ? Math.max(Math.abs(both[0]), Math.abs(both[1])) : Infinity;
  };
  const found = solve(bends, tripod);
  if (!found) return undefined;
  const offset = toStep(found.offset, PLACE_LIMITS.offset);
  const height = toStep(found.height, PLACE_LIMITS.height);
  const worst = worstAt(offset, height);
  return worst < worstAt(tripod.offset, tripod.height) ? { offset, height, worst } : undefined;
}

const within = (value: number, { min, max }: { min: number; max: number }): number =>
  Math.min(max, Math.max(min, value));
const toStep = (value: number, limits: { min: number; max: number }): number =>
  within(Number((Math.round(value / STEP) * STEP).toFixed(2)), limits);

/** Newton in offset and height. Where one bend answers neither (its checkpoint was not reached), that one is left alone. */
function solve(
  bends: (offset: number, height: number) => readonly [number, number] | undefined,
  start: Pick<Tripod, 'offset' | 'height'>,
): { offset: number; height: number } | undefined {
  let { offset, height } = start;
  for (let round = 0; round < ROUNDS; round++) {
    const here = bends(offset, height);
    const aside = bends(offset + PROBE, height);
    const above = bends(offset, height + PROBE);
    if (!here || !aside || !above) return undefined;
    const [gap, depth] = here;
    if (Math.abs(gap) < NONE && Math.abs(depth) < NONE) break;
    const [gapAside, depthAside] = [(aside[0] - gap) / PROBE, (aside[1] - depth) / PROBE];
    const [gapAbove, depthAbove] = [(above[0] - gap) / PROBE, (above[1] - depth) / PROBE];
    const share = gapAside * depthAbove - gapAbove * depthAside;
    let [moveAside, moveUp] = [0, 0];
    if (Math.abs(share) > 1e-9) {
      moveAside = (depth * gapAbove - gap * depthAbove) / share;
      moveUp = (gap * depthAside - depth * gapAside) / share;
    } else if (depthAside !== 0) moveAside = -depth / depthAside;
    else if (gapAside !== 0) moveAside = -gap / gapAside;
    offset = within(offset + moveAside, PLACE_LIMITS.offset);
    height = within(height + moveUp, PLACE_LIMITS.height);
  }
  return { offset, height };
}
