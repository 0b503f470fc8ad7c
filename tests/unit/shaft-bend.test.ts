import { expect, test } from 'vitest';
import { toDeg } from '../../src/math/angle';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { AT, createPose } from '../../src/model/pose';
import { shaftBendLoft } from '../../src/reading/delivery/shaftBend';
import { bodyOf } from '../../src/model/body';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing, swingPose } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';

const bendDeg = (length: number): number => toDeg(shaftBendLoft({ length }));

// MacKenzie & Sprigings 2009, Sports Eng 12:13, mark B: 4.4 to 6.3 deg with a driver.
test('a driver of usual length bends by the middle of what was published, and no club by more', () => {
  expect(bendDeg(CLUBS.driver.lengthM)).toBeCloseTo((4.4 + 6.3) / 2, 9);
  expect(bendDeg(1.2192)).toBe(6.3);
  for (const id of CLUB_IDS) {
    expect(bendDeg(CLUBS[id].lengthM)).toBeGreaterThan(0);
    expect(bendDeg(CLUBS[id].lengthM)).toBeLessThanOrEqual(6.3);
  }
});

test('the shorter the club, the less; a club shorter than a wedge does not bend', () => {
  const bends = CLUB_IDS.map((id) => bendDeg(CLUBS[id].lengthM));
  expect(bends).toEqual(bends.toSorted((a, b) => b - a));
  expect(bendDeg(0.8)).toBe(0);
});

test('what is delivered is the drawn face, laid back by the bend: loft and spin loft grow, the face stays where it points', () => {
  const body = bodyOf({ statureM: 1.78, handed: 'right' });
  const club = clubOf(CLUBS.driver);
  const swing = createSwing(body, club, solveReference(body, club).reference);
  const read = readCheckpoints(swing);
  const { swing: drawn, delivery } = deliver(swing, read, strikeOf(swing, read)!);
  if ('missing' in delivery) throw new Error(delivery.missing);
  const pose = createPose();
  swingPose(drawn, delivery.t, pose);
  const [x, y, z] = pose.subarray(AT.faceNormal, AT.faceNormal + 3);
  expect(delivery.shaftBend).toBe(shaftBendLoft(club));
  expect(delivery.dynamicLoft).toBeCloseTo(Math.asin(y) + delivery.shaftBend, 12);
  expect(delivery.face).toBeCloseTo(Math.atan2(z, x), 12);
  const [nx, ny, nz] = delivery.faceNormal;
  expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 12);
  expect(Math.asin(ny)).toBeCloseTo(delivery.dynamicLoft, 12);
  expect(Math.atan2(nz, nx)).toBeCloseTo(delivery.face, 12);
});
