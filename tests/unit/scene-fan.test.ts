import { Vector2, type Color } from 'three';
import { describe, expect, test } from 'vitest';
import { createFigure } from '../../src/figure/figure';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from '../../src/figure/partIds';
import { placeFigure } from '../../src/figure/place';
import { heelLiftAt } from '../../src/figure/stance';
import { bodyOf } from '../../src/model/body';
import { AT, createPose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { STILL } from '../../src/model/movements';
import { createSwing, drawnPose, withMovements, type Swing } from '../../src/reading/swing';
import { BodyFan, FAN_BODIES, FAN_LINES } from '../../src/scene/lines/bodyFan';
import { LineBatch } from '../../src/scene/lines/lineBatch';
import { seedReference } from '../../src/solving/reference/seed';
import { theme } from './mountedSwing';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const swing = createSwing(body, clubOf(CLUBS['7-iron']), seedReference(body));
const BALL = Float64Array.of(0, 0.02, 0.9);
const T = 0.15;
const figure = createFigure(swing.rig.body, swing.rig.club);

function placed(of: Swing) {
  const pose = createPose();
  const placement = createPlacement();
  drawnPose(of, T, pose);
  placeFigure(figure, pose, { ballPoint: BALL, heelLift: heelLiftAt(of, T) }, placement);
  return { pose, placement };
}
const shown = placed(swing).placement;

/** What a fan draws, line by line. */
function drawFan(bodies: readonly Swing[]) {
  const lines = new LineBatch(FAN_LINES, new Vector2(800, 600)).take(FAN_LINES);
  const drawn: { a: number[]; b: number[]; px: number; colour: Color }[] = [];
  const line = lines.line.bind(lines);
  lines.line = (a, b, colour, px, share) => {
    drawn.push({ a: Array.from(a), b: Array.from(b), colour, px });
    line(a, b, colour, px, share);
  };
  new BodyFan(lines, theme.ghost).draw(
    bodies.map((one) => ({ swing: one, t: T })),
    figure,
    BALL,
    shown,
  );
  return drawn;
}
const bent = (trailSideBend: number): Swing => withMovements(swing, { ...STILL, trailSideBend });

describe('a fan of bodies', () => {
  test('draws the limbs that differ, joint to joint, and each shaft from its grip end to its head', () => {
    const other = bent(0.2);
    const { pose, placement } = placed(other);
    const joint = (id: PartId): number[] =>
      Array.from(placement.subarray(PART[id] * MATRIX_SIZE + 9, PART[id] * MATRIX_SIZE + 12));
    const drawn = drawFan([other]);
    const isDrawn = (from: PartId, to: PartId): boolean =>
      drawn.some(({ a, b }) => a.join() === joint(from).join() && b.join() === joint(to).join());
    expect(isDrawn('shoulderLead', 'elbowLead')).toBe(true);
    // Side bend leaves the feet where they are.
    expect(isDrawn('kneeLead', 'ankleLead')).toBe(false);
    const shaft = drawn.at(-1)!;
    expect(shaft.b).toEqual(Array.from(pose.subarray(AT.head, AT.head + 3)));
    expect(Math.hypot(...shaft.a.map((from, i) => shaft.b[i] - from))).toBeCloseTo(swing.rig.club.length, 6);
  });

  test('of the body that stands there draws its shaft alone, and of nobody nothing', () => {
    expect(drawFan([swing])).toHaveLength(1);
    expect(drawFan([])).toHaveLength(0);
  });

  test('has room for its most bodies, and draws no more', () => {
    const shafts = drawFan(Array.from({ length: FAN_BODIES + 3 }, (_, i) => bent(0.02 * (i + 1)))).filter(
      ({ px }) => px > 1.2,
    );
    expect(shafts).toHaveLength(FAN_BODIES);
  });
});
