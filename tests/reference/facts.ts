import { rad, toDeg } from '../../src/math/angle';
import { bodyOf, SEGMENT_FRACTIONS, type Player, type SegmentId } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf, type ClubSpec } from '../../src/model/club';
import { DIALS, STILL, type MovementId } from '../../src/model/movements';
import { createPose } from '../../src/model/pose';
import { findLeadArmParallel, findShaftParallel } from '../../src/reading/checkpoints';
import { bicepGap, headDepth, shaftPlane } from '../../src/reading/readings';
import { createSwing, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { createRandom } from './random';

// Causes and effects every teacher knows (common practice, no published source). No search for a reference swing asks for any of them.

/** +1 when more of the movement raises the readings. */
const SENSES: { readonly [id in MovementId]?: 1 | -1 } = {
  trailSideBend: -1,
  rotationDelay: -1,
  rotationRate: 1,
  leadWristFlexion: -1,
};
export const FACT_DIALS = DIALS.filter(({ id }) => SENSES[id] !== undefined);
export const FACT_READINGS = ['bicep gap at lead arm', 'shaft plane at lead arm', 'head depth at shaft'] as const;
/** Reading angles of the lead arm, deg: the two ends and the middle of what coaches use. */
export const ARM_ANGLES_DEG = [0, -10, -20] as const;

/** No trade fact speaks of what a turn does to the shaft plane. */
export const speaksOf = (id: MovementId, reading: number): boolean => reading !== 1 || !id.startsWith('rotation');

const pose = createPose();

/** Gap (cm), shaft plane (deg) and head depth (cm) with one dial at `value` (model units); NaN where a checkpoint is not reached. */
function factReadings(swing: Swing, id: MovementId, value: number, armDeg: number): [number, number, number] {
  const moved = withMovements(swing, { ...STILL, [id]: value });
  const arm = findLeadArmParallel(moved, rad(armDeg));
  if ('missing' in arm) return [NaN, NaN, NaN];
  swingPose(moved, arm.t, pose);
  const [gap, plane] = [100 * bicepGap(pose), toDeg(shaftPlane(pose))];
  const shaft = findShaftParallel(moved, arm.t);
  if ('missing' in shaft) return [gap, plane, NaN];
  swingPose(moved, shaft.t, pose);
  return [gap, plane, 100 * headDepth(pose)];
}

/** Change of every reading over `count` even steps of a dial, in the sense of the fact: positive everywhere when the fact holds. */
export function factSteps(
  swing: Swing,
  id: MovementId,
  [from, to]: readonly [number, number],
  count: number,
  armDeg: number,
): number[][] {
  const all = Array.from({ length: count + 1 }, (_, i) =>
    factReadings(swing, id, from + ((to - from) * i) / count, armDeg),
  );
  return FACT_READINGS.map((_, k) => all.slice(1).map((after, i) => SENSES[id]! * (after[k] - all[i][k])));
}

/** Every fact that fails over the usual range of its dial, in words; none when all hold. `count` steps over the range. */
export function failingFacts(swing: Swing, count: number): string[] {
  return FACT_DIALS.flatMap(({ id, usualMin, usualMax }) =>
    ARM_ANGLES_DEG.flatMap((armDeg) => {
      const steps = factSteps(swing, id, [usualMin, usualMax], count, armDeg);
      return FACT_READINGS.flatMap((reading, k) =>
        speaksOf(id, k) && !steps[k].every((step) => step > 0) ? [`${id}, ${reading}, read at ${armDeg}`] : [],
      );
    }),
  );
}

/** A player and a club that no shipped swing was fitted for. */
export interface Stranger {
  readonly name: string;
  readonly player: Player;
  readonly club: ClubSpec;
}

/**
 * Players over nearly the whole range of statures, every second with arms, trunk and legs of his own by up to 4 %; each with one of the seven
 * clubs, every third cut and bent for him by up to 3 cm and 2 deg. The same seed gives the same ones everywhere.
 */
export function createStrangers(seed: number, count: number): Stranger[] {
  const random = createRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  return Array.from({ length: count }, (_, i) => {
    const statureM = Number(between(1.42, 2.08).toFixed(3));
    const id = CLUB_IDS[Math.floor(random() * CLUB_IDS.length)];
    const own = (part: SegmentId): number => SEGMENT_FRACTIONS[part] * statureM * between(0.96, 1.04);
    const segmentsM = { upperArm: own('upperArm'), forearm: own('forearm'), trunk: own('trunk'), thigh: own('thigh') };
    const cut = { lengthM: CLUBS[id].lengthM + between(-0.03, 0.03), lieDeg: CLUBS[id].lieDeg + between(-2, 2) };
    const name = `${statureM} m, ${id}${i % 2 ? ', own segments' : ''}${i % 3 ? '' : ', own club'}`;
    return {
      name,
      player: { statureM, handed: 'right', ...(i % 2 && { segmentsM }) },
      club: { ...CLUBS[id], ...(i % 3 ? {} : cut) },
    };
  });
}

/** The reference swing of a stranger, solved as the app solves it. */
export function swingOfStranger({ player, club: spec }: Stranger): Swing {
  const body = bodyOf(player);
  const club = clubOf(spec);
  return createSwing(body, club, solveReference(body, club).reference);
}
