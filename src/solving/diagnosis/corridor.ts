import { contours } from 'd3-contour';
import type { Rad } from '../../math/angle';
import { SetupError } from '../../model/body';
import { dialOf, type MovementId } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import type { Swing } from '../../reading/swing';
import type { Band, Bands } from '../../reading/verdicts';
import { checkBands } from './checks';
import { createJudge, DIAL_INDEX, toDials } from './judged';

/** Which two movements the map shows. All others stay as they are in `swing`. */
export interface CorridorQuestion {
  readonly swing: Swing;
  readonly x: MovementId;
  readonly y: MovementId;
  /** Grid points across and up, each at least 2. */
  readonly columns: number;
  readonly rows: number;
  readonly armAngle?: Rad;
}

/** One side of the map: `count` grid points, evenly from `min` to `max`, both included. Model units. */
export interface Axis {
  readonly id: MovementId;
  readonly min: number;
  readonly max: number;
  readonly count: number;
}

/** Both judged readings, m, at every grid point: row by row from the lowest y, in a row from the lowest x. NaN: never reached. */
export interface Corridor {
  readonly x: Axis;
  readonly y: Axis;
  readonly leadArmParallel: Float64Array;
  readonly shaftParallel: Float64Array;
  readonly evaluations: number;
}

/** Closed rings in the movements' own units, the last point equal to the first. Outlines first, each followed by its holes: fill even-odd. */
export type Region = readonly (readonly (readonly [number, number])[])[];

/** Where each verdict holds on the map. */
export interface CorridorRegions {
  readonly leadArmParallel: Regions;
  readonly shaftParallel: Regions;
  /** Both readings inside their bands. */
  readonly both: Region;
}
interface Regions {
  readonly onPlane: Region;
  /** Above the band. */
  readonly steep: Region;
  /** Below the band. */
  readonly shallow: Region;
}

/** Value of a grid point on an axis, model units. */
export const axisValue = ({ min, max, count }: Axis, index: number): number =>
  index === count - 1 ? max : min + (index * (max - min)) / (count - 1);

/**
 * Fills a map row by row, so that the caller can stop, show what is there or start again between rows. Yields the number of rows
 * done; returns the map. Spans the dials' limits. Throws `SetupError` for one movement on both sides.
 */
export function* corridorRows(question: CorridorQuestion): Generator<number, Corridor, void> {
  const { swing, columns, rows, armAngle = DEFAULT_ARM_ANGLE } = question;
  if (question.x === question.y) throw new SetupError('y', 'Both sides of the map show the same movement. Choose two.');
  if (!(columns >= 2 && rows >= 2)) throw new SetupError('columns', 'A map needs at least 2 by 2 points.');
  const x = axisOf(question.x, columns);
  const y = axisOf(question.y, rows);
  const judge = createJudge(swing, armAngle);
  const dials = toDials(swing.movements);
  const read = new Float64Array(2);
  const leadArmParallel = new Float64Array(columns * rows);
  const shaftParallel = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    dials[DIAL_INDEX[question.y]] = axisValue(y, row);
    for (let column = 0; column < columns; column++) {
      dials[DIAL_INDEX[question.x]] = axisValue(x, column);
      judge.read(dials, read);
      leadArmParallel[row * columns + column] = read[0];
      shaftParallel[row * columns + column] = read[1];
    }
    yield row + 1;
  }
  return { x, y, leadArmParallel, shaftParallel, evaluations: judge.evaluations };
}

/**
 * A whole map at once.
 * @internal The desk computes it row by row, so that a newer question can stop it; tests and measurements want it whole.
 */
export function solveCorridor(question: CorridorQuestion): Corridor {
  const run = corridorRows(question);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

function axisOf(id: MovementId, count: number): Axis {
  const { min, max } = dialOf(id);
  return { id, min, max, count };
}

/** How far inside a band a reading lies, m: positive inside, negative outside, NaN when it is missing. */
export const marginIn = ({ low, high }: Band, value: number): number => Math.min(value - low, high - value);

/**
 * Outlines of the corridor, drawn between grid points by marching squares. The bands come in here and not before: moving a band
 * needs no new readings. `both` is where the smaller of the two margins is positive, so it agrees with its two parts.
 */
export function corridorRegions(corridor: Corridor, bands: Bands): CorridorRegions {
  checkBands(bands);
  const { leadArmParallel: arm, shaftParallel: shaft } = corridor;
  const armMargin = arm.map((value) => marginIn(bands.leadArmParallel, value));
  const shaftMargin = shaft.map((value) => marginIn(bands.shaftParallel, value));
  const bothMargin = armMargin.map((margin, i) => Math.min(margin, shaftMargin[i]));
  return {
    leadArmParallel: regionsOf(corridor, arm, armMargin, bands.leadArmParallel),
    shaftParallel: regionsOf(corridor, shaft, shaftMargin, bands.shaftParallel),
    both: outline(corridor, bothMargin),
  };
}

function regionsOf(corridor: Corridor, values: Float64Array, margins: Float64Array, { low, high }: Band): Regions {
  return {
    onPlane: outline(corridor, margins),
    steep: outline(
      corridor,
      values.map((value) => value - high),
    ),
    shallow: outline(
      corridor,
      values.map((value) => low - value),
    ),
  };
}

/** Rings around everything above zero. The library puts grid points at half numbers and closes rings half a step outside the grid. */
function outline({ x, y }: Corridor, values: Float64Array): Region {
  const { coordinates } = contours().size([x.count, y.count]).contour(Array.from(values), 0);
  return coordinates.flatMap((polygon) =>
    polygon.map((ring) => ring.map(([u, v]) => [onAxis(x, u), onAxis(y, v)] as const)),
  );
}

function onAxis({ min, max, count }: Axis, position: number): number {
  const share = Math.min(1, Math.max(0, (position - 0.5) / (count - 1)));
  return min + share * (max - min);
}
