import { expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { STILL, type Movements } from '../../src/model/movements';
import type { ReferenceSwing } from '../../src/model/keys';
import { createPose } from '../../src/model/pose';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing, swingPose, withMovements } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { createRandom } from '../reference/random';

/** Room for what another machine computes differently in the last digit, m or 1: as near as the search itself meets the ball. */
const MOST: Readonly<Record<string, number>> = { held: 1e-6, closest: 1e-6 };
const TIMES = [0.215, 0.23, 0.25, 0.28];
const DRAWS = 400;

test('a change in the last digit of a reference swing moves the arms by less than a micrometre, whether they meet the ball or not', () => {
  const chance = createRandom(11);
  const between = (low: number, high: number): number => low + (high - low) * chance();
  const pose = createPose();
  let compared = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    const body = bodyOf({ statureM: [1.62, 1.78, 1.93][draw % 3], handed: 'right' });
    const club = clubOf(CLUBS[CLUB_IDS[draw % CLUB_IDS.length]]);
    const { reference } = solveReference(body, club);
    const movements: Movements = {
      ...STILL,
      leadWristFlexion: rad(between(-30, 30)),
      rotationRate: between(0.7, 1.3),
      rotationDelay: between(-0.03, 0.03),
      trailSideBend: rad(between(-10, 10)),
    };
    const played = (from: ReferenceSwing): { status: string; places: number[] } => {
      const swing = createSwing(body, club, from);
      const moved = withMovements(swing, movements);
      const done = deliver(moved, readCheckpoints(moved), strikeOf(swing, readCheckpoints(swing))!, 'held plane');
      const places = TIMES.flatMap((t) => {
        swingPose(done.swing, t, pose);
        return [...pose];
      });
      return { status: 'missing' in done.delivery ? 'missing' : done.delivery.status, places };
    };
    const plain = played(reference);
    // About a unit in the last place, up or down.
    const noisy = played({ ...reference, values: reference.values.map((v) => v * (1 + 4e-16 * (chance() - 0.5))) });
    if (plain.status !== noisy.status || MOST[plain.status] === undefined) continue;
    compared++;
    const apart = Math.max(...plain.places.map((v, i) => Math.abs(v - noisy.places[i])));
    expect(apart, `draw ${draw}, ${plain.status}`).toBeLessThan(MOST[plain.status]);
  }
  expect(compared).toBeGreaterThan(DRAWS / 2);
});
