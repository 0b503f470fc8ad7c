import { AT, type Pose } from '../../model/chain';
import type { Figure } from '../figure';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from '../partIds';
import { placeFigure, type Stance } from '../place';
import { LIMBS } from './limbs';

type Point = readonly [number, number, number];

/** A body and its club in lines. World frame of the right-handed player, m. */
export interface Sticks {
  readonly lines: readonly (readonly Point[])[];
  readonly head: Point;
  readonly headRadius: number;
  /** From the grip to the head. */
  readonly club: readonly [Point, Point];
  /** Height of a picture with room for the club overhead. */
  readonly reach: number;
}

/** A figure in lines in a pose; `stature` in m. */
export function drawSticks(figure: Figure, stature: number, pose: Pose, stance: Stance): Sticks {
  const out = createPlacement();
  placeFigure(figure, pose, stance, out);
  const at = (id: PartId, up = 0): Point => {
    const i = PART[id] * MATRIX_SIZE;
    return [out[i + 9] + out[i + 3] * up, out[i + 10] + out[i + 4] * up, out[i + 11] + out[i + 5] * up];
  };
  return {
    lines: LIMBS.map((limb) => limb.map((id) => at(id))),
    head: at('headEgg', 0.066 * stature),
    headRadius: 0.058 * stature,
    reach: 1.45 * stature,
    club: [at('grip'), [pose[AT.head], pose[AT.head + 1], pose[AT.head + 2]]],
  };
}
