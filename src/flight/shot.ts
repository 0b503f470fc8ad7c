import { CLUBS, type Club } from '../model/club';
import type { Delivery, NotDelivered } from '../reading/delivery/delivery';
import { airAt } from './air';
import { isRefused, type Refused } from './answer';
import { carryWidth, SHOT_DRAG } from './coefficients';
import { headOf, type Head } from './heads';
import { findLaunch } from './impact';
import { numbersOf, type LaunchNumbers } from './launch';
import { findFlight, type Flight } from './trajectory';

/** The day a ball is struck on, in the player's own frame: +X toward the target, +Z from the player toward the ball line. */
export interface Weather {
  /** Wind toward the target, m/s. Negative blows against the ball. */
  readonly tailWind: number;
  /** Wind from the player across the target line, m/s: from left to right for a right-handed player. */
  readonly crossWind: number;
  /** Above sea level, m. */
  readonly altitude: number;
}
/** No wind, at sea level. */
export const STILL_DAY: Weather = { tailWind: 0, crossWind: 0, altitude: 0 };

/** What a delivery makes of the ball. Right means +Z: away from the player's side, also for the mirrored left-handed one. */
export interface Shot {
  readonly head: Head;
  readonly launch: LaunchNumbers;
  readonly flight: Flight;
  /** From the shortest to the longest carry that published models would give, m. */
  readonly width: number;
  /** Where it starts and how it curves at both ends of the face's band; null where nothing adapts or a ball does not fly. */
  readonly ends: { readonly left: ShotEnd; readonly returned: ShotEnd } | null;
}
/** A shot with the face at one end of its band. Degrees, metres; senses as in `Flight`. */
type ShotEnd = Pick<Flight, 'startDeg' | 'curveM' | 'offlineM'>;
/** Why there is no shot: nothing was delivered, the head passes the ball, or the ball does not fly. */
export type NoShot = NotDelivered | { readonly missing: 'misses' } | Pick<Refused, 'missing'>;

/**
 * How far the head may pass beside where it was meant and still strike the ball, m. Our choice: half the length of a face toward toe
 * or heel, about half a ball high or low. Within it the strike counts as centred.
 */
const MEETS = { toe: 0.04, high: 0.02 } as const;

/** Whether the head meets the ball at all. */
const doesMeet = ({ miss }: Pick<Delivery, 'miss'>): boolean =>
  Math.abs(miss.toe) <= MEETS.toe && Math.abs(miss.high) <= MEETS.high;

/** The head of a club; a club of one's own that borrows a known name keeps the head of its kind. */
export function headOfClub({ name, kind }: Pick<Club, 'name' | 'kind'>): Head {
  const known: { readonly [name: string]: { readonly kind: Club['kind'] } } = CLUBS;
  return headOf(Object.hasOwn(CLUBS, name) && known[name].kind === kind ? name : '', kind);
}

/** The shot of a delivery with a club on a day; `points` of its track, 0 for none. A centred strike by a free head. */
export function findShot(
  delivery: Delivery | NotDelivered,
  club: Pick<Club, 'name' | 'kind'>,
  { tailWind, crossWind, altitude }: Weather = STILL_DAY,
  points = 0,
): Shot | NoShot {
  if ('missing' in delivery) return delivery;
  if (!doesMeet(delivery)) return { missing: 'misses' };
  const head = headOfClub(club);
  const { mass, restitution, tangential } = head;
  const day = { drag: SHOT_DRAG, wind: [tailWind, 0, crossWind] as const, air: airAt(altitude) };
  const launchOf = ({ headVelocity, faceNormal }: Pick<Delivery, 'headVelocity' | 'faceNormal'>) =>
    findLaunch({ headVelocity, faceNormal, headMass: mass, restitution, tangential });
  const launch = launchOf(delivery);
  if (isRefused(launch)) return { missing: launch.missing };
  const flight = findFlight(launch, { ...day, points });
  if (isRefused(flight)) return { missing: flight.missing };
  const [left, returned] = delivery.returnTakes ? delivery.ends.map(endOf) : [];
  const ends = left && returned ? { left, returned } : null;
  return { head, launch: numbersOf(launch), flight, width: carryWidth(flight.carryM), ends };

  function endOf(end: Delivery['ends'][number]): ShotEnd | undefined {
    const launched = launchOf(end);
    const flown = isRefused(launched) ? launched : findFlight(launched, { ...day, points: 0 });
    if (isRefused(flown)) return undefined;
    const { startDeg, curveM, offlineM } = flown;
    return { startDeg, curveM, offlineM };
  }
}
