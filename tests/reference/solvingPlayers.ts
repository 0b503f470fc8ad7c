import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { DIALS, STILL, type MovementId, type Movements } from '../../src/model/movements';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { createSwing, withMovements, type Swing } from '../../src/reading/swing';
import { DEFAULT_BANDS, verdictAt, type Verdict } from '../../src/reading/verdicts';
import { findShipped, shippedSwings } from '../../src/solving/reference/shipped';
import { createRandom } from './random';

const swings = new Map<string, Swing>();

/** The reference swing that ships for a player and a club. */
export function referenceSwing(statureM = 1.78, clubId: ClubId = '7-iron'): Swing {
  const key = `${statureM} ${clubId}`;
  const known = swings.get(key);
  if (known) return known;
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[clubId]);
  const reference = findShipped(body, club);
  if (!reference) throw new Error(`no reference swing ships for ${key}`);
  const swing = createSwing(body, club, reference);
  swings.set(key, swing);
  return swing;
}

/** One of the players whose reference swing ships, any stature and club. */
export function randomReference(random: () => number): Swing {
  const shipped = shippedSwings();
  const { statureM, club } = shipped[Math.floor(random() * shipped.length)];
  return referenceSwing(statureM, club as ClubId);
}

/** That player with some movements dialled on top. */
export const playerWith = (movements: Partial<Movements>, reference = referenceSwing()): Swing =>
  withMovements(reference, { ...STILL, ...movements });

/** Movements from edge units. */
export const dialled = (values: {
  wristDeg?: number;
  rate?: number;
  delayMs?: number;
  tiltDeg?: number;
}): Movements => ({
  ...STILL,
  leadWristFlexion: rad(values.wristDeg ?? 0),
  rotationRate: values.rate ?? 1,
  rotationDelay: (values.delayMs ?? 0) / 1000,
  trailSideBend: rad(values.tiltDeg ?? 0),
});

/** Bicep gap and head depth, m, by the full reading of the swing. NaN: never reached. */
export function fullReadings(swing: Swing): [number, number] {
  const { leadArmParallel, shaftParallel } = readCheckpoints(swing);
  return [
    isReached(leadArmParallel) ? leadArmParallel.readings.bicepGap : NaN,
    isReached(shaftParallel) ? shaftParallel.readings.headDepth : NaN,
  ];
}

export const verdictsOf = (swing: Swing): Verdict[] => {
  const { leadArmParallel, shaftParallel } = readCheckpoints(swing);
  return [
    verdictAt('leadArmParallel', leadArmParallel, DEFAULT_BANDS),
    verdictAt('shaftParallel', shaftParallel, DEFAULT_BANDS),
  ];
};

/** Random movements inside the usual range of every dial. */
export const randomMovements = (random: () => number): Movements => ({
  ...STILL,
  ...(Object.fromEntries(
    DIALS.map(({ id, usualMin, usualMax }) => [id, usualMin + (usualMax - usualMin) * random()]),
  ) as Record<MovementId, number>),
});

/** Players of any stature and club who are off plane, half of them too steep and half over-shallow. The same for the same seed. */
export function playersOffPlane(count: number, seed: number): Swing[] {
  const random = createRandom(seed);
  const players: Swing[] = [];
  while (players.length < count) {
    const swing = withMovements(randomReference(random), randomMovements(random));
    const wanted = players.length % 2 === 0 ? 'steep' : 'shallow';
    const verdicts = verdictsOf(swing);
    const other = wanted === 'steep' ? 'shallow' : 'steep';
    if (verdicts.includes(wanted) && !verdicts.includes(other) && !verdicts.includes('missing')) players.push(swing);
  }
  return players;
}
