import type { Figure } from '../../figure/figure';
import { createPlacement, MATRIX_SIZE, type PartId } from '../../figure/partIds';
import { placeFigure, type Stance } from '../../figure/place';
import type { Pose } from '../../model/pose';
import { toX, toY, type Box, type Frame } from '../../plates/plate/frame';

/** A part of the figure as it is seen down the line: world z from `left` to `right` for a right-handed player, y up, m. */
export interface BodyBox {
  readonly id: PartId;
  readonly z: readonly [number, number];
  readonly y: readonly [number, number];
}

const CLUB: ReadonlySet<PartId> = new Set<PartId>(['shaft', 'sleeve', 'grip']);
const placement = createPlacement();

/** Upright boxes round the parts of a figure in a pose. The shaft is left out: it lies across, and is asked for as a line. */
export function bodyBoxes(figure: Figure, pose: Pose, stance: Stance): BodyBox[] {
  placeFigure(figure, pose, stance, placement);
  return figure.parts.flatMap(({ id, rings }, i) => {
    if (CLUB.has(id)) return [];
    const m = i * MATRIX_SIZE;
    let [low, high, near, far] = [Infinity, -Infinity, Infinity, -Infinity];
    const of = (row: number, at: number): number =>
      placement[m + row] * rings[at] +
      placement[m + row + 3] * rings[at + 1] +
      placement[m + row + 6] * rings[at + 2] +
      placement[m + row + 9];
    for (let at = 0; at < rings.length; at += 3) {
      const [y, z] = [of(1, at), of(2, at)];
      low = Math.min(low, y);
      high = Math.max(high, y);
      near = Math.min(near, z);
      far = Math.max(far, z);
    }
    return [{ id, z: [near, far] as const, y: [low, high] as const }];
  });
}

/** The same box in a frame, px. */
export function boxIn(frame: Frame, { z, y }: Pick<BodyBox, 'z' | 'y'>): Box {
  const [a, b] = [toX(frame, z[0]), toX(frame, z[1])];
  return { left: Math.min(a, b), right: Math.max(a, b), top: toY(frame, y[1]), bottom: toY(frame, y[0]) };
}
