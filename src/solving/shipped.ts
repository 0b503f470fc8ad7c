import shipped from '../../assets/references.json';
import { deg, rad, toDeg, toRad } from '../math/angle';
import { bodyOf, SEGMENT_FRACTIONS, type Body, type SegmentId } from '../model/body';
import type { Club } from '../model/club';
import { CLUBS, type ClubId } from '../model/club';
import { JOINT_COUNT, JOINTS } from '../model/joints';
import { KEY_COUNT, type ReferenceSwing } from '../model/keys';

/** The solved swings that come with the app: joint values as in `JOINT_IDS`, metres and degrees, one row a key. */
export interface ShippedFile {
  readonly about: string;
  readonly timesS: readonly number[];
  readonly swings: readonly ShippedSwing[];
}
export interface ShippedSwing {
  readonly statureM: number;
  readonly club: string;
  readonly gripTurnDeg: number;
  readonly ballPointM: readonly number[];
  readonly keys: readonly (readonly number[])[];
}

const file: ShippedFile = shipped;

/** A shipped swing in the model's units. */
export function readShipped({ gripTurnDeg, ballPointM, keys }: ShippedSwing): ReferenceSwing {
  const values = new Float64Array(KEY_COUNT * JOINT_COUNT);
  keys.forEach((row, k) =>
    row.forEach((value, j) => {
      values[k * JOINT_COUNT + j] = JOINTS[j].kind === 'angle' ? toRad(deg(value)) : value;
    }),
  );
  const [x, y, z] = ballPointM;
  return { times: Float64Array.from(file.timesS), values, gripTurn: rad(gripTurnDeg), ballPoint: [x, y, z] };
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
    ballPointM: swing.ballPoint.map(rounded),
    keys,
  };
}

/** What is shipped: statures and clubs, for tests and the model page. */
export const shippedSwings = (): readonly ShippedSwing[] => file.swings;

const usualSegments = (body: Body): boolean =>
  (Object.keys(SEGMENT_FRACTIONS) as SegmentId[]).every(
    (id) => Math.abs(body[id] - SEGMENT_FRACTIONS[id] * body.stature) < 1e-9,
  );

const sameClub = (club: Club, id: string): boolean => {
  const known = CLUBS[id as ClubId];
  return (
    Math.abs(club.length - known.lengthM) < 1e-9 &&
    Math.abs(club.lie - rad(known.lieDeg)) < 1e-9 &&
    Math.abs(club.loft - rad(known.loftDeg)) < 1e-9
  );
};

/** The shipped swing of exactly this body and club; absent when there is none. */
export function findShipped(body: Body, club: Club): ReferenceSwing | undefined {
  if (!usualSegments(body)) return undefined;
  const found = file.swings.find((s) => Math.abs(s.statureM - body.stature) < 1e-9 && sameClub(club, s.club));
  return found && readShipped(found);
}

/** The shipped swing nearest to this body and club, and whose it is: a start for a search. Absent only from an empty file. */
export function findNearest(body: Body, club: Club): { from: Body; swing: ReferenceSwing } | undefined {
  let best: ShippedSwing | undefined;
  let least = Infinity;
  for (const s of file.swings) {
    const known = CLUBS[s.club as ClubId];
    // A club kind apart counts more than any stature; 10 cm of club length as much as 10 cm of stature.
    const away =
      Math.abs(s.statureM - body.stature) +
      Math.abs(known.lengthM - club.length) +
      (known.kind === club.kind ? 0 : 2) +
      Math.abs(rad(known.loftDeg) - club.loft) / 10;
    if (away < least) {
      least = away;
      best = s;
    }
  }
  return best && { from: bodyOf({ statureM: best.statureM, handed: 'right' }), swing: readShipped(best) };
}
