import { timesS, usual } from '../../../assets/references.json';
import { deg, rad, toDeg, toRad } from '../../math/angle';
import { SEGMENT_FRACTIONS, type Body, type SegmentId } from '../../model/body';
import { CLUBS, clubOf, type Club, type ClubId } from '../../model/club';
import { JOINT_COUNT, JOINTS } from '../../model/joints';
import { KEY_COUNT, type ReferenceSwing } from '../../model/keys';

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
/**
 * The usual player's swings, a club each. The page itself carries these alone, so they stand in a file of their own: the others are
 * six times as much, and come with what needs them.
 */
const USUAL: readonly ShippedSwing[] = usual;

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

/** The usual player's swings. */
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

/** The swing of exactly this body and club among some; absent when there is none. */
export function findAmong(swings: readonly ShippedSwing[], body: Body, club: Club): ReferenceSwing | undefined {
  if (!usualSegments(body)) return undefined;
  const found = swings.find((s) => Math.abs(s.statureM - body.stature) < 1e-9 && sameClub(club, s.club));
  return found && readShipped(found);
}

/** The usual player's swing with exactly this body and club; absent when there is none. */
export const findUsual = (body: Body, club: Club): ReferenceSwing | undefined => findAmong(USUAL, body, club);
