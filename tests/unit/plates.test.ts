import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf } from '../../src/model/club';
import { AT } from '../../src/model/chain';
import { STILL, type Movements } from '../../src/model/movements';
import { heelLiftAt } from '../../src/figure/stance';
import { createPlacement, MATRIX_SIZE } from '../../src/figure/partIds';
import { placeFigure } from '../../src/figure/place';
import { isReached, readCheckpoints, type CheckpointId } from '../../src/reading/checkpoints';
import { createSwing, withMovements, type Swing } from '../../src/reading/swing';
import { DEFAULT_BANDS, judgedReading, type Bands } from '../../src/reading/verdicts';
import { seedReference } from '../../src/solving/reference/seed';
import type { DrawnPart, Finish, PlateFigure } from '../../src/plates/figure/drawnPart';
import { preparePlateFigure } from '../../src/plates/figure/figurePainter';
import { createDrawn, SKETCH, type Drawn } from '../../src/plates/figure/outlineCache';
import { FLAT, HullFinder } from '../../src/plates/figure/hull';
import { letteringAt } from '../../src/plates/annotation/lettering';
import { fitPicture, plateDrawing } from '../../src/plates/plate/plateDrawing';
import { PLATE_WIDTH, SCALE, SHEET, toX, toY, type Point, type Segment } from '../../src/plates/plate/frame';

const BOTH: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];
const STEEP: Movements = { ...STILL, leadWristFlexion: rad(-25), rotationRate: 1.15 };
const SHALLOW: Movements = { ...STILL, leadWristFlexion: rad(30), rotationDelay: 0.02, trailSideBend: rad(6) };

const hull = new HullFinder();
let swing: Swing;
let plate: PlateFigure;
beforeAll(() => {
  const body = bodyOf({ statureM: 1.78, handed: 'right' });
  const club = clubOf(CLUBS['7-iron']);
  swing = createSwing(body, club, seedReference(body));
  plate = preparePlateFigure(body, club);
});

interface Asked {
  readonly movements?: Movements;
  readonly handed?: 'right' | 'left';
  readonly bands?: Bands;
  readonly finish?: Finish;
  readonly ghost?: Movements;
  readonly drawn?: Drawn;
}

function draw(
  id: CheckpointId,
  { movements = STILL, handed = 'right', bands = DEFAULT_BANDS, finish = 'drawn', ghost, drawn }: Asked = {},
) {
  const checkpoint = readCheckpoints(withMovements(swing, movements))[id];
  if (!isReached(checkpoint)) throw new Error('the checkpoint is not reached');
  const drawing = plateDrawing({
    id,
    plate,
    checkpoint,
    stance: { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, checkpoint.t) },
    bands,
    units: { length: 'cm' },
    handed,
    reference: readCheckpoints(swing)[id],
    ghost: ghost && readCheckpoints(withMovements(swing, ghost))[id],
    letters: letteringAt(1),
    finish,
    ...(drawn && { drawn }),
  })!;
  return { ...drawing, checkpoint, value: judgedReading(id, checkpoint) };
}

/** Distance of a point from the infinite line, positive to the right of its direction. */
const offLine = ({ from, to }: Segment, p: Point): number =>
  ((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x)) / Math.hypot(to.x - from.x, to.y - from.y);

describe('what is drawn is what is measured', () => {
  test.each([STILL, STEEP, SHALLOW])('the shaft line passes the pin at the distance that is read (%#)', (movements) => {
    for (const id of BOTH) {
      const { annotation, value, frame } = draw(id, { movements });
      expect(Math.abs(offLine(annotation.axis, annotation.pin))).toBeCloseTo(Math.abs(value) * frame.scale, 6);
    }
  });

  test.each([STEEP, SHALLOW])('the ticks of the dimension are as far apart as the number says (%#)', (movements) => {
    for (const id of BOTH) {
      const { annotation, value, frame } = draw(id, { movements });
      const [a, b] = annotation.dimension!.ticks.map(({ from, to }) => ({
        x: (from.x + to.x) / 2,
        y: (from.y + to.y) / 2,
      }));
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(Math.abs(value) * frame.scale, 6);
      expect(Number(annotation.dimension!.figure.number)).toBe(Math.round(Math.abs(value) * 100));
    }
  });

  test('the corridor is exactly as wide as the band, and lies where the band lies', () => {
    const bands: Bands = { leadArmParallel: { low: -0.02, high: 0.05 }, shaftParallel: { low: -0.08, high: 0.03 } };
    for (const id of BOTH) {
      const { annotation } = draw(id, { bands });
      const [high, low] = annotation.edges;
      const width = Math.abs(offLine(high, low.from));
      expect(width).toBeCloseTo((bands[id].high - bands[id].low) * SCALE, 6);
      const distances = annotation.edges.map((edge) => Math.abs(offLine(edge, annotation.pin))).sort((a, b) => a - b);
      const edges = [-bands[id].low * SCALE, bands[id].high * SCALE].sort((a, b) => a - b);
      distances.forEach((d, i) => expect(d).toBeCloseTo(edges[i], 6));
    }
  });

  test('a steep line lies above the trail bicep and a shallow one below, a steep head to the right of the hands', () => {
    const { annotation: steep } = draw('leadArmParallel', { movements: STEEP });
    const { annotation: shallow } = draw('leadArmParallel', { movements: SHALLOW });
    // The height of the line at the bicep's own place, y down.
    const above = ({ axis, pin }: typeof steep): number =>
      pin.y - (axis.from.y + ((pin.x - axis.from.x) / (axis.to.x - axis.from.x)) * (axis.to.y - axis.from.y));
    expect(above(steep)).toBeGreaterThan(0);
    expect(above(shallow)).toBeLessThan(0);
    const { annotation: front } = draw('shaftParallel', { movements: STEEP });
    expect(front.axis.from.x).toBeGreaterThan(front.pin.x);
  });

  test('what is off plane is patterned, what is on plane is bare', () => {
    expect(draw('leadArmParallel', { movements: STEEP }).annotation).toMatchObject({ verdict: 'steep' });
    expect(draw('leadArmParallel', { movements: STEEP }).annotation.zone).toHaveLength(4);
    expect(draw('leadArmParallel', { movements: SHALLOW }).annotation).toMatchObject({ verdict: 'shallow' });
    const wide: Bands = { leadArmParallel: { low: -1, high: 1 }, shaftParallel: { low: -1, high: 1 } };
    for (const id of BOTH) expect(draw(id, { bands: wide }).annotation).toMatchObject({ verdict: 'onPlane', zone: [] });
  });

  test('both plates are drawn at 300 units a metre, and the bar of 20 cm says so', () => {
    for (const id of BOTH) {
      const { frame, annotation } = draw(id);
      const bar = annotation.scaleBar!.line;
      expect(frame.scale).toBe(SCALE);
      expect(bar.to.x - bar.from.x).toBeCloseTo(60, 9);
    }
  });

  test("the club's head stays on the plate with its blade, cupped to the end of the slider and twice as far as usual", () => {
    for (const handed of ['right', 'left'] as const)
      for (const movements of [{ ...STEEP, leadWristFlexion: rad(-40) }, { ...STEEP, rotationRate: 1.3 }, SHALLOW]) {
        const { frame, checkpoint } = draw('leadArmParallel', { movements, handed });
        const { pose } = checkpoint;
        expect(toY(frame, pose[AT.head + 1])).toBeGreaterThan(SHEET.top + 16);
        expect(toX(frame, pose[AT.head + 2])).toBeGreaterThan(SHEET.left + 16);
        expect(toX(frame, pose[AT.head + 2])).toBeLessThan(SHEET.right - 16);
      }
  });

  test('pulling the ring by one centimetre moves it by one centimetre of the drawing, across its line', () => {
    for (const id of BOTH) {
      const { annotation, frame } = draw(id, { movements: STEEP });
      const { at, direction, perMetre } = annotation.handle;
      const moved = { x: at.x + direction.x * perMetre * 0.01, y: at.y + direction.y * perMetre * 0.01 };
      expect(perMetre).toBe(frame.scale);
      expect(Math.abs(offLine(annotation.axis, at))).toBeLessThan(1e-9);
      expect(Math.abs(offLine(annotation.axis, moved))).toBeCloseTo(3, 9);
      // A steep reading grows away from the pin.
      expect(Math.hypot(moved.x - annotation.pin.x, moved.y - annotation.pin.y)).toBeGreaterThan(
        Math.hypot(at.x - annotation.pin.x, at.y - annotation.pin.y),
      );
    }
  });
});

describe('the other hand and other swings', () => {
  test('a left-handed player is the mirror image', () => {
    const flip = ({ x, y }: Point): Point => ({ x: PLATE_WIDTH - x, y });
    for (const id of BOTH) {
      for (const movements of [STILL, STEEP, SHALLOW]) {
        const right = draw(id, { movements });
        const left = draw(id, { movements, handed: 'left' });
        const points = ({ annotation: a }: typeof right) => [
          a.pin,
          a.handle.at,
          a.axis.from,
          a.axis.to,
          ...a.corridor,
          ...a.zone,
        ];
        points(left).forEach((p, i) => {
          expect(p.x).toBeCloseTo(flip(points(right)[i]).x, 6);
          expect(p.y).toBeCloseTo(points(right)[i].y, 6);
        });
        expect(left.parts.map(({ id: part }) => part)).toEqual(right.parts.map(({ id: part }) => part));
        left.parts.forEach((part, i) => {
          const [a, b] = [extent(part.outline.contour), extent(right.parts[i].outline.contour)];
          // Contours are written from where the frame puts the middle of the stance, tenths of a unit.
          const [x, y] = [10 * (left.frame.x0 + right.frame.x0), 10 * (left.frame.y0 - right.frame.y0)];
          expect(Math.abs(a.left + x - (10 * PLATE_WIDTH - b.right))).toBeLessThanOrEqual(2);
          expect(Math.abs(a.top + y - b.top)).toBeLessThanOrEqual(2);
        });
      }
    }
  });

  test('the reference line appears once the swing differs from it, the ghost while one is held', () => {
    for (const id of BOTH) {
      expect(draw(id).annotation.others).toEqual([]);
      const kinds = draw(id, { movements: STEEP, ghost: SHALLOW }).annotation.others.map(({ kind }) => kind);
      expect(kinds).toEqual(['reference', 'ghost']);
    }
  });

  test('a checkpoint that is not reached has no drawing', () => {
    for (const id of BOTH) {
      const nothing = plateDrawing({
        id,
        plate,
        checkpoint: { missing: 'never-parallel' },
        stance: { ballPoint: [0, 0, 0], heelLift: 0 },
        bands: DEFAULT_BANDS,
        units: { length: 'cm' },
        handed: 'right',
        reference: undefined,
        ghost: undefined,
        letters: letteringAt(1),
        finish: 'engraved',
      });
      expect(nothing).toBeUndefined();
    }
  });
});

describe('the figure', () => {
  test('parts are painted from far to near, club and hands last', () => {
    for (const id of BOTH) {
      const { parts } = draw(id);
      const front = parts.map(({ isInFront }) => isInFront);
      expect(front.indexOf(true)).toBe(front.lastIndexOf(false) + 1);
      const ids = parts.map(({ id: part }) => part);
      // Seen from behind, at lead arm parallel the trail upper arm is nearer than the chest, the chest than the lead shoulder.
      if (id === 'leadArmParallel') {
        expect(ids.indexOf('upperArmTrail')).toBeGreaterThan(ids.indexOf('ribcage'));
        expect(ids.indexOf('ribcage')).toBeGreaterThan(ids.indexOf('shoulderLead'));
      }
    }
  });

  test('only the trail upper arm is tinted', () => {
    const tinted = draw('leadArmParallel').parts.filter(({ tone }) => tone === 'tinted');
    expect(tinted.map(({ id }) => id)).toEqual(['upperArmTrail']);
  });

  test('contours come without engraving first, and the same contours with it', () => {
    for (const id of BOTH) {
      const [plain, fine] = [draw(id), draw(id, { finish: 'engraved' })];
      expect(plain.parts.every(({ outline: { shade, lit } }) => shade === '' && lit === '')).toBe(true);
      expect(fine.parts.map(({ outline }) => outline.contour)).toEqual(
        plain.parts.map(({ outline }) => outline.contour),
      );
      expect(fine.parts.filter(({ outline }) => outline.shade !== '').length).toBeGreaterThan(8);
      expect(fine.parts.filter(({ outline }) => outline.lit !== '').length).toBeGreaterThan(4);
    }
  });

  test('a plate that remembers what it drew draws the same contours once the slider is let go', () => {
    for (const id of BOTH) {
      const drawn = createDrawn();
      for (let step = 0; step < 40; step++) {
        const movements = { ...STILL, leadWristFlexion: rad(step / 20), rotationRate: 1 + step / 4000 };
        draw(id, { movements, drawn, finish: 'sketch' });
        expect(draw(id, { movements, drawn }).parts).toEqual(draw(id, { movements }).parts);
      }
    }
  });

  test('while a slider moves contours are carried along, and lie where drawn ones would within what a sketch may be off', () => {
    for (const id of BOTH) {
      for (const handed of ['right', 'left'] as const) {
        const drawn = createDrawn();
        let carried = 0;
        for (let step = 0; step < 40; step++) {
          const movements = {
            ...STILL,
            leadWristFlexion: rad(28 * Math.sin(step / 5)),
            trailSideBend: rad(8 * Math.sin(step / 7)),
          };
          const anew = draw(id, { movements, handed });
          const sketched = draw(id, { movements, handed, drawn, finish: 'sketch' });
          sketched.parts.forEach((part, i) => {
            expect(part.id).toBe(anew.parts[i].id);
            if (part.matrix) carried++;
            const [a, b] = [corners(part), corners(anew.parts[i])];
            // Tenths: what a sketch may be off by its turn, what each contour may by its corners, and rounding.
            const most = 10 * (SKETCH + FLAT + FLAT) + 2;
            const off = Math.max(
              ...a.map((corner) => outsideBy(b, corner)),
              ...b.map((corner) => outsideBy(a, corner)),
            );
            expect(off).toBeLessThanOrEqual(most);
          });
        }
        // Not everything is drawn anew, and not everything is carried.
        expect(carried).toBeGreaterThan(200);
        expect(carried).toBeLessThan(40 * 30);
        const done = draw(id, { handed, drawn });
        expect(done.parts.every(({ outline, matrix }) => !outline.isEngraved && !matrix)).toBe(true);
      }
    }
  });

  test('engraving stays inside its contour', () => {
    for (const { outline } of draw('leadArmParallel', { finish: 'engraved' }).parts) {
      const { contour, shade, lit } = outline;
      const outer = extent(contour);
      for (const d of [shade, lit].filter(Boolean)) {
        const inner = extent(d);
        // A tenth of a unit for rounding, two for the slices of the contour.
        expect(inner.left).toBeGreaterThanOrEqual(outer.left - 3);
        expect(inner.right).toBeLessThanOrEqual(outer.right + 3);
        expect(inner.top).toBeGreaterThanOrEqual(outer.top - 3);
        expect(inner.bottom).toBeLessThanOrEqual(outer.bottom + 3);
      }
    }
  });

  test('no path ever holds NaN, and drawing does not touch the pose', () => {
    for (const id of BOTH) {
      const before = draw(id).checkpoint.pose.slice();
      const { parts, annotation, checkpoint } = draw(id, { finish: 'engraved' });
      expect(checkpoint.pose).toEqual(before);
      expect(JSON.stringify([parts, annotation])).not.toMatch(/NaN|null|Infinity/);
      expect(checkpoint.pose[AT.bicep]).toBe(before[AT.bicep]);
    }
  });
});

describe('contours', () => {
  const unplaced = createPlacement();
  unplaced.set([1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]);
  const frame = { side: 1, scale: 1, x0: 0, y0: 0 } as const;
  const hullOf = (points: readonly Point[]): Point[] => {
    const local = Float64Array.from(points.flatMap(({ x, y }) => [0, -y, x]));
    const count = hull.find(local, unplaced, 0, frame);
    return Array.from({ length: count }, (_, i) => ({ x: hull.points[2 * i] / 10, y: hull.points[2 * i + 1] / 10 }));
  };

  test('the hull of a ball is a circle of its radius', () => {
    const points = Array.from({ length: 400 }, (_, i) => ({ x: 40 * Math.cos(i / 7), y: 40 * Math.sin(i / 7) }));
    const hull = hullOf(points);
    const area = hull.reduce((sum, a, i) => {
      const b = hull[(i + 1) % hull.length];
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0);
    // The area of a circle; a polygon of some 60 corners falls short by less than 1 %.
    expect(Math.abs(area)).toBeGreaterThan(0.99 * Math.PI * 40 * 40);
    expect(Math.abs(area)).toBeLessThanOrEqual(Math.PI * 40 * 40 * 1.002);
  });

  test('every hull is convex and its corners are points of the part', () => {
    const tenths = fc.integer({ min: -4000, max: 4000 }).map((v) => v / 10);
    fc.assert(
      fc.property(fc.array(fc.record({ x: tenths, y: tenths }), { minLength: 3, maxLength: 300 }), (points) => {
        const hull = hullOf(points);
        if (hull.length < 3) return;
        // Corners are rounded to tenths: the next one may lie that far inside.
        for (const corner of hull) {
          expect(outsideBy(hull, corner)).toBeLessThanOrEqual(0.3);
          expect(points.some(({ x, y }) => Math.hypot(x - corner.x, y - corner.y) < 0.1)).toBe(true);
        }
      }),
    );
  });

  test('no point of any part lies outside its contour by more than half the width of the pen', () => {
    const HALF_PEN = 1.25 / 2;
    for (const id of BOTH) {
      for (const movements of [STILL, STEEP, SHALLOW]) {
        const { checkpoint, frame: placed } = draw(id, { movements });
        const placement = createPlacement();
        placeFigure(plate.figure, checkpoint.pose, { ballPoint: swing.reference.ballPoint, heelLift: 0 }, placement);
        plate.figure.parts.forEach(({ rings }, part) => {
          const m = part * MATRIX_SIZE;
          const count = hull.find(rings, placement, m, placed);
          const contour = Array.from({ length: count }, (_, i) => ({
            x: hull.points[2 * i] / 10,
            y: hull.points[2 * i + 1] / 10,
          }));
          for (let at = 0; at < rings.length; at += 9) {
            const world = [0, 1, 2].map(
              (row) =>
                placement[m + row] * rings[at] +
                placement[m + 3 + row] * rings[at + 1] +
                placement[m + 6 + row] * rings[at + 2] +
                placement[m + 9 + row],
            );
            const off = outsideBy(contour, { x: toX(placed, world[2]), y: toY(placed, world[1]) });
            expect(off <= HALF_PEN).toBe(true);
          }
        });
      }
    }
  });
});

describe('sizes', () => {
  test('captions and units are at least 15 px on every plate that has them, however small it is drawn', () => {
    for (let width = 120; width <= 700; width += 7) {
      for (const id of BOTH) {
        const { pxPerUnit, letters } = fitPicture(id, { width, height: width * 0.9 });
        expect(letters.unit * pxPerUnit).toBeGreaterThanOrEqual(15);
        expect(letters.figure * pxPerUnit).toBeGreaterThanOrEqual(24);
        if (!letters.isBare) expect(letters.caption * pxPerUnit).toBeGreaterThanOrEqual(15);
      }
    }
  });

  test('a plate that is not laid out yet is drawn at its own size', () => {
    expect(fitPicture('leadArmParallel', undefined)).toMatchObject({ view: SHEET, pxPerUnit: 1 });
  });
});

/** Extent of a path of absolute moves and lines. */
function extent(d: string): { left: number; right: number; top: number; bottom: number } {
  const numbers = [...d.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number);
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** How far a point lies outside a polygon; 0 inside. */
function outsideBy(hull: readonly Point[], p: Point): number {
  let isInside = false;
  let nearest = Infinity;
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length];
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) isInside = !isInside;
    const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / ((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
    const share = Math.max(0, Math.min(1, along));
    nearest = Math.min(nearest, Math.hypot(p.x - a.x - share * (b.x - a.x), p.y - a.y - share * (b.y - a.y)));
  });
  return isInside ? 0 : nearest;
}

/** Corners of a part's contour where it stands on the plate, tenths. */
function corners({ outline: { contour }, matrix = [1, 0, 0, 1, 0, 0] }: DrawnPart): Point[] {
  const [xx, yx, xy, yy, x0, y0] = matrix;
  return [...contour.matchAll(/(-?\d+) (-?\d+)/g)].map(([, x, y]) => ({
    x: xx * Number(x) + xy * Number(y) + x0,
    y: yx * Number(x) + yy * Number(y) + y0,
  }));
}
