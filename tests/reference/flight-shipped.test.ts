import { describe, expect, test } from 'vitest';
import { findShot, type Shot } from '../../src/flight/shot';
import { bodyOf } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';

/** The shot of the shipped reference of a 1.78 m player: nothing dialled, still air, sea level. */
function shotWith(id: ClubId): Shot & { readonly headSpeed: number } {
  const body = bodyOf({ statureM: 1.78, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  const swing = createSwing(body, club, solveReference(body, club).reference);
  const read = readCheckpoints(swing);
  const { delivery } = deliver(swing, read, strikeOf(swing, read)!);
  const shot = findShot(delivery, club);
  if ('missing' in delivery || 'missing' in shot) throw new Error(`no shot with the ${id}`);
  return { ...shot, headSpeed: delivery.headSpeed };
}

// Skilled men swing a driver at 45.4 +- 3.6 m/s (Bourgain et al. 2022, mark B). How far that goes and how far two irons lie apart is
// common practice: about 220 m of carry, about 20 m.
describe('the shipped 1.78 m player', () => {
  const shots = new Map(CLUB_IDS.map((id) => [id, shotWith(id)]));
  const carry = (id: ClubId): number => shots.get(id)!.flight.carryM;

  test('carries a driver swung at 45 to 46 m/s between 205 and 235 m', () => {
    expect(shots.get('driver')!.headSpeed).toBeGreaterThan(45);
    expect(shots.get('driver')!.headSpeed).toBeLessThan(46);
    expect(carry('driver')).toBeGreaterThan(205);
    expect(carry('driver')).toBeLessThan(235);
  });

  test('carries the 5-iron 15 to 22 m further than the 7-iron, and every longer club further than a shorter one', () => {
    expect(carry('5-iron') - carry('7-iron')).toBeGreaterThan(15);
    expect(carry('5-iron') - carry('7-iron')).toBeLessThan(22);
    const carries = CLUB_IDS.map(carry);
    expect(carries).toEqual(carries.toSorted((a, b) => b - a));
  });

  test('gives more spin with every shorter club, and a higher launch with every shorter iron', () => {
    const launches = CLUB_IDS.map((id) => shots.get(id)!.launch);
    const rising = (numbers: readonly number[]): void => expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    rising(launches.map(({ spinRpm }) => spinRpm));
    rising(launches.slice(CLUB_IDS.indexOf('5-iron')).map(({ launchDeg }) => launchDeg));
  });
});
