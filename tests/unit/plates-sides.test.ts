import { describe, expect, test } from 'vitest';
import { heelLiftAt } from '../../src/figure/stance';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, type Pose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { STILL, type Movements } from '../../src/model/movements';
import { preparePlateFigure } from '../../src/plates/figure/figurePainter';
import { toPoint, type Point, type Segment } from '../../src/plates/plate/frame';
import { letteringAt } from '../../src/plates/annotation/lettering';
import { plateDrawing, type PlateOf } from '../../src/plates/plate/plateDrawing';
import { isReached, readAt, readCheckpoints, type CheckpointId, type Reached } from '../../src/reading/checkpoints';
import { createSwing, withMovements } from '../../src/reading/swing';
import { judgedReading, type Bands } from '../../src/reading/verdicts';
import { seedReference } from '../../src/solving/reference/seed';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const swing = createSwing(body, club, seedReference(body));
const plate = preparePlateFigure(body, club);

const STEEP: Movements = { ...STILL, leadWristFlexion: rad(-25), rotationRate: 1.15 };
const SHALLOW: Movements = { ...STILL, leadWristFlexion: rad(30), rotationDelay: 0.02, trailSideBend: rad(6) };
/** Lopsided, so that a corridor on the wrong side is not the same one. */
const BANDS: Bands = { leadArmParallel: { low: -0.01, high: 0.035 }, shaftParallel: { low: -0.08, high: 0.03 } };

const at = (id: CheckpointId, movements: Movements): Reached => {
  const checkpoint = readCheckpoints(withMovements(swing, movements))[id];
  if (!isReached(checkpoint)) throw new Error(checkpoint.missing);
  return checkpoint;
};

function draw(id: CheckpointId, checkpoint: Reached, given: Partial<PlateOf> = {}) {
  const drawing = plateDrawing({
    id,
    plate,
    checkpoint,
    stance: { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, checkpoint.t) },
    bands: BANDS,
    units: { length: 'cm' },
    handed: 'right',
    reference: undefined,
    ghost: undefined,
    letters: letteringAt(1),
    finish: 'drawn',
    ...given,
  })!;
  const { annotation, frame } = drawing;
  const { pose } = checkpoint;
  const { pin } = annotation;
  // Which way is steep, from the drawing alone: for a right-handed player the ball lies to the right. Square to the shaft as it is
  // drawn, up and toward the ball; at shaft parallel level, toward the ball.
  const [hands, head] = [toPoint(frame, pose, AT.leadGrip), toPoint(frame, pose, AT.head)];
  const along = Math.hypot(head.x - hands.x, head.y - hands.y);
  const steep =
    id === 'leadArmParallel'
      ? { x: (frame.side * (hands.y - head.y)) / along, y: (frame.side * (head.x - hands.x)) / along }
      : { x: frame.side, y: 0 };
  /** How far a point lies from the pin on the steep side, m. */
  const toSteep = (p: Point): number => ((p.x - pin.x) * steep.x + (p.y - pin.y) * steep.y) / frame.scale;
  return { ...drawing, pin, hands, head, toSteep, value: judgedReading(id, checkpoint) };
}

const middle = ({ from, to }: Segment): Point => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
const sorted = (values: readonly number[]): number[] => values.toSorted((a, b) => a - b);
/** Distance of a point from the infinite line, units. */
const offLine = ({ from, to }: Segment, p: Point): number =>
  ((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x)) / Math.hypot(to.x - from.x, to.y - from.y);
const closeTo = (values: readonly number[]) => values.map((v) => expect.closeTo(v, 6) as number);

const CASES = (['leadArmParallel', 'shaftParallel'] as const).flatMap((id) =>
  (['right', 'left'] as const).flatMap((handed) =>
    [STEEP, SHALLOW].map((movements) => ({ id, handed, movements, name: movements === STEEP ? 'steep' : 'shallow' })),
  ),
);

describe.each(CASES)('$id, $handed-handed, $name', ({ id, handed, movements, name }) => {
  const { annotation, toSteep, value, hands, head } = draw(id, at(id, movements), { handed });

  test('the line goes through the drawn club, on the side the number says', () => {
    expect(Math.sign(value)).toBe(name === 'steep' ? 1 : -1);
    expect(offLine(annotation.axis, head)).toBeCloseTo(0, 6);
    if (id === 'leadArmParallel') expect(offLine(annotation.axis, hands)).toBeCloseTo(0, 6);
    expect(toSteep(middle(annotation.axis))).toBeCloseTo(value, 6);
  });

  test('the corridor runs from the low edge of the band to the high one', () => {
    const { low, high } = BANDS[id];
    expect(sorted(annotation.edges.flatMap(({ from, to }) => [toSteep(from), toSteep(to)]))).toEqual(
      closeTo([low, low, high, high]),
    );
    expect(sorted(annotation.corridor.map(toSteep))).toEqual(closeTo([low, low, high, high]));
  });

  test('pattern and dimension lie between the pin and the line', () => {
    expect(sorted(annotation.zone.map(toSteep))).toEqual(closeTo(sorted([0, 0, value, value])));
    expect(sorted(annotation.dimension!.ticks.map(middle).map(toSteep))).toEqual(closeTo(sorted([0, value])));
    const { from, to } = annotation.dimension!.line;
    const ends = sorted([toSteep(from), toSteep(to)]);
    expect(ends[0]).toBeLessThan(Math.min(0, value));
    expect(ends[1]).toBeGreaterThan(Math.max(0, value));
  });
});

describe('the line of another swing', () => {
  test.each([
    ['leadArmParallel', 'right'],
    ['leadArmParallel', 'left'],
    ['shaftParallel', 'right'],
    ['shaftParallel', 'left'],
  ] as const)('goes through its own club, its pin laid on this one’s (%s, %s-handed)', (id, handed) => {
    const [reference, ghost] = [at(id, STILL), at(id, SHALLOW)];
    const { annotation, frame, pin } = draw(id, at(id, STEEP), { handed, reference, ghost });
    expect(annotation.others.map(({ kind }) => kind)).toEqual(['reference', 'ghost']);
    for (const { kind, line } of annotation.others) {
      const { pose } = kind === 'ghost' ? ghost : reference;
      const own = toPoint(frame, pose, id === 'leadArmParallel' ? AT.bicep : AT.leadGrip);
      const moved = (point: number): Point => {
        const { x, y } = toPoint(frame, pose, point);
        return { x: x - own.x + pin.x, y: y - own.y + pin.y };
      };
      expect(offLine(line, moved(AT.head))).toBeCloseTo(0, 6);
      if (id === 'leadArmParallel') expect(offLine(line, moved(AT.leadGrip))).toBeCloseTo(0, 6);
    }
  });

  test('is drawn from a centimetre of difference on, and not for two millimetres', () => {
    const id = 'shaftParallel';
    const reference = at(id, STILL);
    const linesFor = (leadWristFlexion: number) => {
      const bent = at(id, { ...STILL, leadWristFlexion });
      return {
        apart: Math.abs(judgedReading(id, bent) - judgedReading(id, reference)),
        lines: draw(id, bent, { reference }).annotation.others.length,
      };
    };
    const [hardly, clearly] = [linesFor(rad(0.2)), linesFor(rad(1.2))];
    expect(hardly.apart).toBeLessThan(0.003);
    expect(hardly.lines).toBe(0);
    expect(clearly.apart).toBeGreaterThan(0.006);
    expect(clearly.apart).toBeLessThan(0.02);
    expect(clearly.lines).toBe(1);
  });
});

test('the bar of 8 inches is 60.96 units long and says so', () => {
  for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
    const { line, caption } = draw(id, at(id, STILL), { units: { length: 'in' } }).annotation.scaleBar!;
    expect(line.to.x - line.from.x).toBeCloseTo(60.96, 9);
    expect(caption.text).toBe('8 in');
  }
});

describe('the club is painted', () => {
  const order = (checkpoint: Reached): string[] =>
    draw('shaftParallel', checkpoint)
      .parts.filter(({ isInFront }) => isInFront)
      .map(({ id }) => id);
  const isNear = (pose: Pose): boolean => pose[AT.head] < pose[AT.leadGrip];

  test('over the hands while its head trails them, nearer to whoever looks down the line', () => {
    const trailing = at('shaftParallel', STILL);
    expect(isNear(trailing.pose)).toBe(true);
    expect(order(trailing).slice(-3)).toEqual(['shaft', 'sleeve', 'clubHead']);
    expect(order(trailing)[0]).toBe('grip');
  });

  test('under the hands once its head has passed them', () => {
    const past = readAt(swing, 0.31);
    expect(isNear(past.pose)).toBe(false);
    expect(order(past).slice(0, 4)).toEqual(['clubHead', 'shaft', 'sleeve', 'grip']);
  });
});
