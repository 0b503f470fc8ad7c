import { describe, expect, test } from 'vitest';
import { PART_IDS } from '../../src/figure/partIds';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf } from '../../src/model/club';
import { AT } from '../../src/model/chain';
import { fitContour, lookAt, type Side, type Sights } from '../../src/player/mirror/contour';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { createSwing } from '../../src/reading/swing';
import { seedReference } from '../../src/solving/reference/seed';

const body = bodyOf({ statureM: 1.62, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const swing = createSwing(body, club, seedReference(body));
/** Exactly parallel, so that the arm is to be level. */
const checkpoints = readCheckpoints(swing, 0);
const SCREEN = { width: 390, height: 640 };
const LINES = { head: 0.2, feet: 0.9 };

const look = (side: Side, distance = 3): Sights =>
  lookAt({ body, club, swing, checkpoints }, { side, distance, height: 0.9 });
const fit = (sights: Sights, stand: 'address' | 'leadArmParallel' | 'shaftParallel', isFlipped = false) =>
  fitContour(sights, stand, SCREEN, LINES, isFlipped)!;

const pointsOf = (hulls: readonly Float64Array[]): [number, number][] =>
  hulls.flatMap((hull) =>
    Array.from({ length: hull.length / 2 }, (_, i): [number, number] => [hull[2 * i], hull[2 * i + 1]]),
  );
const middleOf = (hull: Float64Array): [number, number] => {
  const points = pointsOf([hull]);
  const middle = (axis: 0 | 1): number => {
    const values = points.map((point) => point[axis]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  return [middle(0), middle(1)];
};

describe('the contour over the camera', () => {
  test.each(['faceOn', 'downTheLine'] as const)('meets the head and the feet line at address, %s', (side) => {
    for (const distance of [1.5, 3, 6]) {
      const groups = fit(look(side, distance), 'address').groups;
      expect(groups.flat()).toHaveLength(PART_IDS.length);
      // The club's four parts stand aside: its sole may lie nearer than the feet, and so lower on the screen.
      const ofBody = groups.filter((group) => group.length !== 4);
      expect(ofBody.flat()).toHaveLength(PART_IDS.length - 4);
      const heights = pointsOf(ofBody.flat()).map(([, y]) => y);
      expect(Math.min(...heights)).toBeCloseTo(LINES.head * SCREEN.height, 6);
      expect(Math.max(...heights)).toBeCloseTo(LINES.feet * SCREEN.height, 6);
    }
  });

  test('keeps the feet on their line at both checkpoints, from down the line to a few centimetres', () => {
    const sights = look('downTheLine');
    for (const stand of ['leadArmParallel', 'shaftParallel'] as const) {
      const lowest = Math.max(...pointsOf(fit(sights, stand).groups.flat()).map(([, y]) => y));
      expect(Math.abs(lowest - LINES.feet * SCREEN.height)).toBeLessThan(12);
    }
  });

  test("is another hand's picture when it is flipped: the mirror image about the middle of the screen", () => {
    const sights = look('faceOn');
    const right = fit(sights, 'leadArmParallel');
    const left = fit(sights, 'leadArmParallel', true);
    right.groups.flat().forEach((hull, part) => {
      const other = left.groups.flat()[part];
      for (let i = 0; i < hull.length; i += 2) {
        expect(other[i]).toBeCloseTo(SCREEN.width - hull[i], 9);
        expect(other[i + 1]).toBe(hull[i + 1]);
      }
    });
    expect(left.ball.at[0]).toBeCloseTo(SCREEN.width - right.ball.at[0], 9);
  });

  test('has the lead arm level at lead arm parallel, seen face on', () => {
    if (!isReached(checkpoints.leadArmParallel)) throw new Error('The checkpoint is not reached.');
    const { pose } = checkpoints.leadArmParallel;
    // The camera stands at shoulder height, where a level line stays level whatever its depth.
    const height = pose[AT.leadShoulder + 1];
    const sights = lookAt({ body, club, swing, checkpoints }, { side: 'faceOn', distance: 3, height });
    const { groups } = fit(sights, 'leadArmParallel');
    // The arm is the group of seven parts with its elbow second and its wrist fourth; the lead one lies at the lead hand.
    const arms = groups
      .filter((group) => group.length === 7)
      .map((group) => ({
        elbow: middleOf(group[1]),
        wrist: middleOf(group[3]),
        slope: Math.atan2(middleOf(group[3])[1] - middleOf(group[1])[1], middleOf(group[3])[0] - middleOf(group[1])[0]),
      }));
    expect(arms).toHaveLength(2);
    const level = arms.filter(({ slope }) => Math.abs(Math.sin(slope)) < Math.sin((5 * Math.PI) / 180));
    expect(level).toHaveLength(1);
  });
});
