import { others } from '../../../assets/other-references.json';
import { rad } from '../../math/angle';
import type { Body } from '../../model/body';
import { CLUB_IDS, CLUBS, type Club, type ClubId } from '../../model/club';
import { J, JOINT_COUNT, JOINTS } from '../../model/joints';
import type { ReferenceSwing } from '../../model/keys';
import { statureOfLegs } from './fitting';
import { findAmong, readShipped, usualSwings, type ShippedSwing } from './usual';

const ALL: readonly ShippedSwing[] = [...usualSwings(), ...others];

/** Every shipped swing: those of the usual player and those of others. */
export const shippedSwings = (): readonly ShippedSwing[] => ALL;

/** The shipped swing of exactly this body and club; absent when there is none. */
export const findShipped = (body: Body, club: Club): ReferenceSwing | undefined => findAmong(ALL, body, club);

/**
 * A start for a search: the shipped swings of the likeliest club for the two statures round this body's, scaled to it and mixed;
 * the line through the last two statures is carried on beyond them. Absent only from a file with fewer than two statures.
 */
export function findStart(body: Body, club: Club): ReferenceSwing | undefined {
  const swings = swingsOf(likeliestClub(club));
  const next = swings.findIndex(({ statureM }) => statureM >= body.stature);
  const above = Math.max(1, next < 0 ? swings.length - 1 : next);
  const [low, high] = [swings[above - 1], swings[above]];
  if (!low || !high) return undefined;
  return mix(scaled(low, body), scaled(high, body), (body.stature - low.statureM) / (high.statureM - low.statureM));
}

const swingsOf = (id: ClubId): ShippedSwing[] =>
  ALL.filter(({ club }) => club === id).toSorted((a, b) => a.statureM - b.statureM);

/** The kind first, then the length; ten degrees of loft count as much as 1.7 cm. */
function likeliestClub(club: Club): ClubId {
  const away = (id: ClubId): number => {
    const { kind, lengthM, loftDeg } = CLUBS[id];
    return (kind === club.kind ? 0 : 2) + Math.abs(lengthM - club.length) + Math.abs(rad(loftDeg) - club.loft) / 10;
  };
  return CLUB_IDS.reduce((best, id) => (away(id) < away(best) ? id : best));
}

/** A swing as a start for another stature: lengths `by` so much, the pelvis's height with the `legs`, angles kept. */
export function scaleSwing(swing: ReferenceSwing, by: number, legs = by): ReferenceSwing {
  const values = swing.values.map((value, i) => {
    const joint = i % JOINT_COUNT;
    return JOINTS[joint].kind === 'angle' ? value : value * (joint === J.pelvisHeight ? legs : by);
  });
  const [x, y, z] = swing.ballPoint;
  return { ...swing, values, ballPoint: [x, y, z * by] };
}

const scaled = (row: ShippedSwing, body: Body): ReferenceSwing =>
  scaleSwing(readShipped(row), body.stature / row.statureM, statureOfLegs(body) / row.statureM);

function mix(a: ReferenceSwing, b: ReferenceSwing, share: number): ReferenceSwing {
  const between = (from: number, to: number): number => from + share * (to - from);
  const [x, y, z] = a.ballPoint.map((value, i) => between(value, b.ballPoint[i]));
  return {
    times: a.times,
    values: a.values.map((value, i) => between(value, b.values[i])),
    gripTurn: between(a.gripTurn, b.gripTurn),
    gripAngle: between(a.gripAngle, b.gripAngle),
    lie: between(a.lie, b.lie),
    ballPoint: [x, y, z],
  };
}
