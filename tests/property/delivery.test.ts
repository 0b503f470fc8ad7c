import { expect, test } from 'vitest';
import { rad, toDeg } from '../../src/math/angle';
import { bodyOf, type Body, type Player } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf, type Club, type ClubId } from '../../src/model/club';
import type { ReferenceSwing } from '../../src/model/keys';
import { STILL, type Movements } from '../../src/model/movements';
import { AT, createPose } from '../../src/model/pose';
import { applyTopSetUp } from '../../src/model/setUp';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, impliedPath, strikeOf, type Delivery } from '../../src/reading/delivery/delivery';
import { createSwing, headVelocityAt, rigFor, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { createRandom } from '../reference/random';

/** How many swings are drawn; DELIVERY_SWINGS=10000 draws the full number. */
const DRAWS = Number(process.env.DELIVERY_SWINGS ?? 600);
const STATURES = [1.62, 1.78, 1.93];

const chance = createRandom(41);
const between = (low: number, high: number): number => low + (high - low) * chance();

/** Reference swings found once for each stature, club and hand: a search takes a thousand times as long as a delivery. */
const found = new Map<string, { body: Body; club: Club; reference: ReferenceSwing }>();
function referenceOf(statureM: number, id: ClubId, handed: Player['handed']) {
  const key = [statureM, id, handed].join();
  const known = found.get(key);
  if (known) return known;
  const body = bodyOf({ statureM, handed });
  const club = clubOf(CLUBS[id]);
  const made = { body, club, reference: solveReference(body, club).reference };
  found.set(key, made);
  return made;
}

/** A golfer with a club, a top of the backswing and a tempo of his own. */
function golfer(draw: number, handed: Player['handed']): Swing {
  const { body, club, reference } = referenceOf(
    STATURES[draw % STATURES.length],
    CLUB_IDS[draw % CLUB_IDS.length],
    handed,
  );
  const top = applyTopSetUp(rigFor(body, club, reference), reference, {
    handDepth: between(-0.1, 0.1),
    handHeight: between(-0.1, 0.1),
    turn: rad(between(-15, 15)),
    wristSet: rad(between(-10, 10)),
  });
  return createSwing(body, club, top.reference, STILL, between(0.2, 0.4));
}

/** Movements over the whole of the dials and half as much again. */
const anyMovements = (): Movements => ({
  leadWristFlexion: rad(between(-60, 60)),
  rotationRate: between(0.4, 1.6),
  rotationDelay: between(-0.06, 0.06),
  trailSideBend: rad(between(-20, 20)),
  pelvisShift: between(-0.15, 0.15),
});

/** Every number in a delivery but the low point, which a trace may not have. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => (key === 'lowPoint' ? [] : numbersOf(each)));
}

const pose = createPose();
const velocity = new Float64Array(3);

test('whatever is dialled, a delivery is solved, as close as the joints allow, or refused with a reason', () => {
  const count: Record<string, number> = {};
  for (let draw = 0; draw < DRAWS; draw++) {
    const reference = golfer(draw, 'right');
    const armAngle = rad(between(-20, 0));
    const strike = strikeOf(reference, readCheckpoints(reference, armAngle));
    if (!strike) throw new Error(`no strike, draw ${draw}`);
    const moved = withMovements(reference, anyMovements());
    const checkpoints = readCheckpoints(moved, armAngle);
    const share = chance();
    const { swing, delivery: d } = deliver(moved, checkpoints, strike, 'held plane', share);
    const answer = 'missing' in d ? d.missing : d.status;
    count[answer] = (count[answer] ?? 0) + 1;
    if (process.env.DELIVERY_SWINGS && (draw + 1) % 1000 === 0) {
      process.stdout.write(`${draw + 1} of ${DRAWS} swings: ${JSON.stringify(count)}\n`);
    }
    if ('missing' in d) {
      expect(['no-shaft-parallel', 'too-late']).toContain(d.missing);
      continue;
    }
    expect(numbersOf(d).every(Number.isFinite), `draw ${draw}`).toBe(true);
    const [low, high] = [d.faceLeft, d.faceReturned].toSorted((a, b) => a - b);
    expect(toDeg(d.face), `draw ${draw}, ${d.status}`).toBeGreaterThan(toDeg(low) - 0.05);
    expect(toDeg(d.face), `draw ${draw}, ${d.status}`).toBeLessThan(toDeg(high) + 0.05);
    if (d.returnTakes!.isInRange) expect(Math.abs(toDeg(d.faceReturned)), `draw ${draw}`).toBeLessThan(0.05);
    swingPose(swing, d.t, pose);
    headVelocityAt(swing, d.t, velocity);
    expect(Math.atan2(velocity[2], velocity[0])).toBe(d.path);
    if (d.status !== 'held') continue;
    const away = Math.hypot(...moved.reference.ballPoint.map((v, i) => v - pose[AT.head + i]));
    expect(away, `draw ${draw}`).toBeLessThan(0.001);
    expect(Math.abs(toDeg(d.path - impliedPath(checkpoints, strike)!)), `draw ${draw}`).toBeLessThan(0.1);
    if (d.returnTakes!.isInRange)
      expect(toDeg(d.face), `draw ${draw}`).toBeCloseTo(toDeg(d.faceLeft + share * (d.faceReturned - d.faceLeft)), 1);
  }
  expect(count.held).toBeGreaterThan(DRAWS / 2);
}, 600_000);

const delivered = (reference: Swing, movements: Partial<Movements>, share?: number): Delivery => {
  const moved = withMovements(reference, { ...STILL, ...movements });
  const strike = strikeOf(reference, readCheckpoints(reference))!;
  const { delivery } = deliver(moved, readCheckpoints(moved), strike, 'held plane', share);
  if ('missing' in delivery) throw new Error(delivery.missing);
  return delivery;
};

test('a left-handed player delivers what a right-handed one does: the mirror stands at the edges alone', () => {
  for (let draw = 0; draw < 21; draw++) {
    const [right, left] = (['right', 'left'] as const).map((handed) => {
      const { body, club, reference } = referenceOf(STATURES[draw % 3], CLUB_IDS[draw % CLUB_IDS.length], handed);
      return createSwing(body, club, reference);
    });
    const movements = { leadWristFlexion: rad(between(-30, 30)), rotationRate: between(0.8, 1.2) };
    expect(delivered(left, movements)).toEqual(delivered(right, movements));
  }
});

test('a wrist that bows more closes the face that is left as it comes, and never opens the one that is returned', () => {
  for (const statureM of STATURES) {
    for (const id of CLUB_IDS) {
      const { body, club, reference: solved } = referenceOf(statureM, id, 'right');
      const reference = createSwing(body, club, solved);
      const others = { rotationRate: between(0.9, 1.1), trailSideBend: rad(between(-5, 5)) };
      let last = { left: Infinity, returned: Infinity };
      for (let flexion = -30; flexion <= 30; flexion += 3) {
        const { faceLeft, faceReturned } = delivered(reference, { ...others, leadWristFlexion: rad(flexion) });
        const now = { left: toDeg(faceLeft), returned: toDeg(faceReturned) };
        expect(now.left, `${statureM} m, ${id}, ${flexion}`).toBeLessThan(last.left - 0.1);
        expect(now.returned, `${statureM} m, ${id}, ${flexion}`).toBeLessThan(last.returned + 0.05);
        last = now;
      }
    }
  }
});

test('the drawn face goes from the one end of the band to the other, evenly', () => {
  for (let draw = 0; draw < 14; draw++) {
    const reference = golfer(draw, 'right');
    const movements = { leadWristFlexion: rad(between(-20, 20)), rotationRate: between(0.85, 1.15) };
    const [left, quarter, half, returned] = [0, 0.25, 0.5, 1].map((share) => delivered(reference, movements, share));
    expect(left.face).toBe(left.faceLeft);
    expect(returned.face).toBe(returned.faceReturned);
    const at = (share: number): number => left.face + share * (returned.face - left.face);
    expect(Math.abs(toDeg(quarter.face - at(0.25)))).toBeLessThan(0.05);
    expect(Math.abs(toDeg(half.face - at(0.5)))).toBeLessThan(0.05);
    for (const each of [quarter, half]) {
      expect(each.faceLeft).toBe(left.face);
      expect(each.faceReturned).toBe(returned.face);
    }
  }
});
