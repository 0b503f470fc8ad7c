import { describe, expect, test } from 'vitest';
import { DIALS, dialOf, STILL, type MovementId } from '../../src/model/movements';
import { withMovements } from '../../src/reading/swing';
import { DEFAULT_BANDS, judge } from '../../src/reading/verdicts';
import {
  axisValue,
  corridorRegions,
  corridorRows,
  marginIn,
  solveCorridor,
  type Corridor,
  type Region,
} from '../../src/solving/diagnosis/corridor';
import { createRandom } from '../reference/random';
import { dialled, fullReadings, playerWith, referenceSwing } from '../reference/solvingPlayers';

const swing = playerWith(dialled({ tiltDeg: -3, delayMs: 4 }));
const map = solveCorridor({ swing, x: 'leadWristFlexion', y: 'rotationRate', columns: 64, rows: 64 });
const regions = corridorRegions(map, DEFAULT_BANDS);

/** Even-odd rule over all rings. */
function isInside(region: Region, x: number, y: number): boolean {
  let inside = false;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [xi, yi] = ring[i];
      const [xj, yj] = ring[j];
      if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
    }
  }
  return inside;
}

/** Readings at any grid point, by the full reading of that swing. */
function kernel(corridor: Corridor, column: number, row: number): [number, number] {
  const { x, y } = corridor;
  return fullReadings(
    withMovements(swing, { ...swing.movements, [x.id]: axisValue(x, column), [y.id]: axisValue(y, row) }),
  );
}

describe('the corridor map', () => {
  test('its values are those of the swing itself at 300 random cells', () => {
    const random = createRandom(61);
    for (let i = 0; i < 300; i++) {
      const column = Math.floor(random() * 64);
      const row = Math.floor(random() * 64);
      const cell = row * 64 + column;
      expect([map.leadArmParallel[cell], map.shaftParallel[cell]]).toEqual(kernel(map, column, row));
    }
  });

  test('it spans both movements from limit to limit', () => {
    for (const axis of [map.x, map.y]) {
      const { min, max } = dialOf(axis.id);
      expect([axisValue(axis, 0), axisValue(axis, 63)]).toEqual([min, max]);
    }
  });

  test('the on-plane corridor runs from steep above left to over-shallow below right, and the reference lies in it', () => {
    const still = corridorRegions(
      solveCorridor({ swing: referenceSwing(), x: 'leadWristFlexion', y: 'rotationRate', columns: 32, rows: 32 }),
      DEFAULT_BANDS,
    );
    expect(isInside(still.both, STILL.leadWristFlexion, STILL.rotationRate)).toBe(true);
    for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
      expect(isInside(still[id].steep, dialOf('leadWristFlexion').min * 0.99, 1.39)).toBe(true);
      expect(isInside(still[id].shallow, dialOf('leadWristFlexion').max * 0.99, 0.61)).toBe(true);
    }
  });

  test('a grid point lies in the drawn region exactly when its verdict says so', () => {
    const { x, y } = map;
    let inBoth = 0;
    for (let row = 1; row < 63; row++) {
      for (let column = 1; column < 63; column++) {
        const cell = row * 64 + column;
        const at = [axisValue(x, column), axisValue(y, row)] as const;
        const verdicts = [
          judge(map.leadArmParallel[cell], DEFAULT_BANDS.leadArmParallel),
          judge(map.shaftParallel[cell], DEFAULT_BANDS.shaftParallel),
        ];
        expect(isInside(regions.leadArmParallel.onPlane, ...at)).toBe(verdicts[0] === 'onPlane');
        expect(isInside(regions.leadArmParallel.steep, ...at)).toBe(verdicts[0] === 'steep');
        expect(isInside(regions.shaftParallel.onPlane, ...at)).toBe(verdicts[1] === 'onPlane');
        expect(isInside(regions.shaftParallel.shallow, ...at)).toBe(verdicts[1] === 'shallow');
        const both = verdicts.every((verdict) => verdict === 'onPlane');
        expect(isInside(regions.both, ...at)).toBe(both);
        if (both) inBoth++;
      }
    }
    expect(inBoth).toBeGreaterThan(50);
  });

  test('on the drawn edge of the corridor the swing itself is within a millimetre of the edge of its band', () => {
    for (const ring of regions.shaftParallel.steep) {
      for (const [x, y] of ring) {
        const isBorder = [dialOf(map.x.id), dialOf(map.y.id)].some(({ min, max }, k) => [min, max].includes([x, y][k]));
        if (isBorder) continue;
        const [, depth] = fullReadings(withMovements(swing, { ...swing.movements, [map.x.id]: x, [map.y.id]: y }));
        expect(Math.abs(depth - DEFAULT_BANDS.shaftParallel.high)).toBeLessThan(0.001);
      }
    }
  });

  test('rings are closed and stay inside the limits', () => {
    const { both, leadArmParallel: arm, shaftParallel: shaft } = regions;
    const all = [both, arm.onPlane, arm.steep, arm.shallow, shaft.onPlane, shaft.steep, shaft.shallow];
    let count = 0;
    for (const ring of all.flat()) {
      count++;
      expect(ring.at(-1)).toEqual(ring[0]);
      for (const [x, y] of ring) {
        expect(marginIn({ low: map.x.min, high: map.x.max }, x)).toBeGreaterThanOrEqual(0);
        expect(marginIn({ low: map.y.min, high: map.y.max }, y)).toBeGreaterThanOrEqual(0);
      }
    }
    expect(count).toBeGreaterThan(5);
  });

  test('it can be stopped after any row, and what has been done so far is no more than asked', () => {
    const rows = corridorRows({ swing, x: 'trailSideBend', y: 'rotationDelay', columns: 8, rows: 5 });
    expect([rows.next().value, rows.next().value]).toEqual([1, 2]);
    expect(rows.return(map).done).toBe(true);
    expect(rows.next().done).toBe(true);
    const whole = [...corridorRows({ swing, x: 'trailSideBend', y: 'rotationDelay', columns: 8, rows: 5 })];
    expect(whole).toEqual([1, 2, 3, 4, 5]);
  });

  test('every pair of movements makes a map', () => {
    const ids = DIALS.map(({ id }) => id);
    for (const x of ids) {
      for (const y of ids.filter((id) => id !== x)) {
        const { leadArmParallel, evaluations } = solveCorridor({ swing, x, y, columns: 3, rows: 4 });
        expect(leadArmParallel).toHaveLength(12);
        expect(evaluations).toBe(12);
      }
    }
  });

  test('where a checkpoint is never reached the map has a hole, not a number', () => {
    const holed: Corridor = { ...map, shaftParallel: map.shaftParallel.map((value, i) => (i % 64 < 32 ? NaN : value)) };
    const { both, leadArmParallel } = corridorRegions(holed, DEFAULT_BANDS);
    for (const ring of both) for (const [x] of ring) expect(x).toBeGreaterThan(axisValue(map.x, 31));
    expect(leadArmParallel).toEqual(regions.leadArmParallel);
  });

  test('bad input is refused in clear words', () => {
    const same: MovementId = 'trailSideBend';
    expect(() => solveCorridor({ swing, x: same, y: same, columns: 4, rows: 4 })).toThrow('Choose two.');
    expect(() => solveCorridor({ swing, x: same, y: 'rotationRate', columns: 1, rows: 4 })).toThrow('at least 2 by 2');
    const bands = { ...DEFAULT_BANDS, leadArmParallel: { low: 0.02, high: 0.01 } };
    expect(() => corridorRegions(map, bands)).toThrow('Swap them.');
  });
});
