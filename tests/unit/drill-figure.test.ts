import { beforeEach, expect, test } from 'vitest';
import { DIALS } from '../../src/model/movements';
import { drawDrill, type DrillFigure } from '../../src/export/files/drillFigure';
import { derivePlain, takeSnapshot } from '../../src/export/task/exportSnapshot';
import { desk, setMovement, setPlayer } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { findDrillPlace } from '../../src/words/why/drillPlaces';
import { findPractice } from '../../src/words/why/practice';

beforeEach(() => clearDesk());

/** The names of every drill there is. */
const NAMES = [
  ...new Set(
    DIALS.flatMap(({ id }) =>
      [1, -1].flatMap((change) => findPractice(id, change)?.drills.map(({ name }) => name) ?? []),
    ),
  ),
];
const draw = (name: string): DrillFigure | undefined => {
  const derived = derivePlain(desk.getState());
  return drawDrill(name, derived, takeSnapshot(desk.getState(), derived, 'reference').after);
};
const boxOf = ({ box }: DrillFigure): number[] => box.split(' ').map(Number);
/** Every point of the contours, in the box's own units. */
const pointsOf = ({ paths }: DrillFigure): [number, number][] =>
  paths.flatMap((path) => {
    const numbers = path.match(/-?\d+/g)!.map(Number);
    return Array.from({ length: numbers.length / 2 }, (_, i): [number, number] => [numbers[2 * i], numbers[2 * i + 1]]);
  });

test('each drill with a place of its own is drawn there, and some have none', () => {
  const drawn = NAMES.filter((name) => draw(name) !== undefined);
  expect(drawn).toEqual(NAMES.filter((name) => findDrillPlace(name) !== undefined));
  expect(drawn.length).toBeGreaterThan(5);
  expect(drawn.length).toBeLessThan(NAMES.length);
  expect(draw('A drill of the coach')).toBeUndefined();
  expect(draw('constructor')).toBeUndefined();
});

test('the box holds what lies above the knees, with some air and no more', () => {
  const figure = draw('Knuckles down')!;
  const [left, top, width, height] = boxOf(figure);
  const above = pointsOf(figure).filter(([, y]) => y <= top + height);
  expect(above.length).toBeGreaterThan(100);
  const [xs, ys] = [above.map(([x]) => x), above.map(([, y]) => y)];
  expect(Math.min(...xs) - left).toBeCloseTo(30, 6);
  expect(left + width - Math.max(...xs)).toBeCloseTo(30, 6);
  expect(Math.min(...ys) - top).toBeCloseTo(30, 6);
  // Feet and shanks are cut.
  expect(pointsOf(figure).some(([, y]) => y > top + height)).toBe(true);
});

test('a left-handed player stands in it as the mirror image', () => {
  const right = draw('Knuckles down')!;
  setPlayer({ statureM: 1.78, handed: 'left' });
  const left = draw('Knuckles down')!;
  const [[l, ...ofLeft], [r, ...ofRight]] = [boxOf(left), boxOf(right)];
  expect(ofLeft).toEqual(ofRight);
  // A contour may begin elsewhere and go round the other way.
  const mirrored = pointsOf(right).map(([x, y]) => [r + l + ofRight[1] - x, y]);
  const off = pointsOf(left).map(([x, y]) => Math.min(...mirrored.map(([mx, my]) => Math.hypot(mx - x, my - y))));
  // Tenths of a unit, of which the player is more than 2,000 tall.
  expect(Math.max(...off)).toBeLessThan(4);
});

test('it shows the swing that is wanted, whatever is dialled', () => {
  const before = draw('Knuckles down')!.paths;
  setMovement('leadWristFlexion', -20);
  expect(draw('Knuckles down')!.paths).toEqual(before);
});
