import { others, timesS, usual } from '../../../assets/references.json';
import { deg, rad, toDeg, toRad } from '../../math/angle';
import { SEGMENT_FRACTIONS, type Body, type SegmentId } from '../../model/body';
import { CLUB_IDS, CLUBS, clubOf, type Club, type ClubId } from '../../model/club';
import { J, JOINT_COUNT, JOINTS } from '../../model/joints';
import { KEY_COUNT, type ReferenceSwing } from '../../model/keys';
import { statureOfLegs } from './fitting';

/** A solved swing that comes with the app: joint values as in `JOINT_IDS`, metres and degrees, one row a key. */
export interface ShippedSwing {
  readonly statureM: number;
  readonly club: string;
  readonly gripTurnDeg: number;
  /** Change of the lie that fits the club to the player; + more upright. */
  readonly lieDeg: number;
  readonly ballPointM: readonly number[];
  readonly keys: readonly (readonly number[])[];
}

/** The stature of the usual player, who stands on a fresh desk, m. */
export const USUAL_STATURE_M = 1.78;
/** The usual player's swings, a club each. The page itself carries these alone: the list of all is four fifths of what it would load. */
const USUAL: readonly ShippedSwing[] = usual;
const allSwings = (): readonly ShippedSwing[] => [...USUAL, ...others];

/** A shipped swing in the model's units. */
export function readShipped({ gripTurnDeg, lieDeg, ballPointM, keys }: ShippedSwing): ReferenceSwing {
  const values = new Float64Array(KEY_COUNT * JOINT_COUNT);
  keys.forEach((row, k) =>
    row.forEach((value, j) => {
      values[k * JOINT_COUNT + j] = JOINTS[j].kind === 'angle' ? toRad(deg(value)) : value;
    }),
  );
  const [x, y, z] = ballPointM;
  return {
    times: Float64Array.from(timesS),
    values,
    gripTurn: rad(gripTurnDeg),
    gripAngle: 0,
    lie: rad(lieDeg),
    ballPoint: [x, y, z],
  };
}

/** Decimals kept in the file: a millionth of a degree or of a metre moves the head by less than a thousandth of a millimetre. */
const DECIMALS = 1e6;
const rounded = (value: number): number => Math.round(value * DECIMALS) / DECIMALS;

/** A solved swing as it goes into the file. */
export function writeShipped(statureM: number, club: string, swing: ReferenceSwing): ShippedSwing {
  const keys = Array.from({ length: KEY_COUNT }, (_, k) =>
    JOINTS.map(({ kind }, j) => {
      const value = swing.values[k * JOINT_COUNT + j];
      return rounded(kind === 'angle' ? toDeg(value) : value);
    }),
  );
  return {
    statureM,
    club,
    gripTurnDeg: rounded(toDeg(swing.gripTurn)),
    lieDeg: rounded(toDeg(swing.lie)),
    ballPointM: swing.ballPoint.map(rounded),
    keys,
  };
}

/** What is shipped: statures and clubs, for tests and the model page. */
export const shippedSwings = allSwings;
/** The usual player's alone. */
export const usualSwings = (): readonly ShippedSwing[] => USUAL;

const usualSegments = (body: Body): boolean =>
  (Object.keys(SEGMENT_FRACTIONS) as SegmentId[]).every(
    (id) => Math.abs(body[id] - SEGMENT_FRACTIONS[id] * body.stature) < 1e-9,
  );

/** Everything of a club that a swing depends on; the hands' place on it no less than its length. */
const CLUB_NUMBERS = ['length', 'lie', 'loft', 'gripInset', 'handGap', 'gripAngle', 'gripTurn'] as const;

const sameClub = (club: Club, id: string): boolean => {
  const known = clubOf(CLUBS[id as ClubId]);
  if (club.lag !== undefined || club.isOffTheRack) return false;
  return club.kind === known.kind && CLUB_NUMBERS.every((field) => Math.abs(club[field] - known[field]) < 1e-9);
};

function findAmong(swings: readonly ShippedSwing[], body: Body, club: Club): ReferenceSwing | undefined {
  if (!usualSegments(body)) return undefined;
  const found = swings.find((s) => Math.abs(s.statureM - body.stature) < 1e-9 && sameClub(club, s.club));
  return found && readShipped(found);
}

/** The shipped swing of exactly this body and club; absent when there is none. */
export const findShipped = (body: Body, club: Club): ReferenceSwing | undefined => findAmong(allSwings(), body, club);

/** The same, of the usual player alone. */
export const findUsual = (body: Body, club: Club): ReferenceSwing | undefined => findAmong(USUAL, body, club);

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
  allSwings()
    .filter(({ club }) => club === id)
    .toSorted((a, b) => a.statureM - b.statureM);

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
