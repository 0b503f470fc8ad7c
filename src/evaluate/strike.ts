import { toDeg } from '../math/angle';
import type { Refused } from '../flight/answer';
import type { NoShot, Shot } from '../flight/shot';
import type { Flight } from '../flight/trajectory';
import type { Delivery, NotDelivered } from '../reading/delivery/delivery';
import { LineError } from './lineError';
import { toCm } from '../edge/units';

/** A delivery under its names at an edge. Senses as in `Delivery`; a low point that is not near the ball is null in JSON. */
export function toEdgeDelivery(delivery: Delivery | NotDelivered): object {
  if ('missing' in delivery) return delivery;
  const { miss, returnTakes } = delivery;
  return {
    pathDeg: toDeg(delivery.path),
    attackDeg: toDeg(delivery.attack),
    faceDeg: toDeg(delivery.face),
    faceLeftDeg: toDeg(delivery.faceLeft),
    faceReturnedDeg: toDeg(delivery.faceReturned),
    returnTakes: returnTakes && {
      rollDeg: toDeg(returnTakes.roll),
      flexionDeg: toDeg(returnTakes.flexion),
      inRange: returnTakes.isInRange,
    },
    faceToPathDeg: toDeg(delivery.faceToPath),
    dynamicLoftDeg: toDeg(delivery.dynamicLoft),
    shaftBendDeg: toDeg(delivery.shaftBend),
    spinLoftDeg: toDeg(delivery.spinLoft),
    shaftLeanDeg: toDeg(delivery.shaftLean),
    headSpeedMps: delivery.headSpeed,
    lowPointCm: toCm(delivery.lowPoint),
    planeTiltDeg: toDeg(delivery.planeTilt),
    planeDirectionDeg: toDeg(delivery.planeDirection),
    impactTimeMs: delivery.impactTime * 1000,
    rule: delivery.rule,
    status: delivery.status,
    miss: { towardToeCm: toCm(miss.toe), highCm: toCm(miss.high), lateMs: miss.late * 1000 },
    trailShortfallCm: toCm(delivery.reachShortfall),
  };
}

/** A flight without its track. */
export const toEdgeFlight = (flight: Flight): Omit<Flight, 'track'> => ({
  carryM: flight.carryM,
  timeS: flight.timeS,
  apexM: flight.apexM,
  landingDeg: flight.landingDeg,
  startDeg: flight.startDeg,
  offlineM: flight.offlineM,
  curveM: flight.curveM,
  landingSpeedMps: flight.landingSpeedMps,
  extrapolated: flight.extrapolated,
});

/** Start line and curve at both ends of the face's band; absent where they are the shot's own. */
export const toEdgeEnds = ({ ends }: Shot): object =>
  ends ? { faceLeft: { ...ends.left }, faceReturned: { ...ends.returned } } : {};

/** A shot under its names at an edge: positive is right of the target line for the right-handed player. */
export function toEdgeShot(shot: Shot | NoShot): object {
  if ('missing' in shot) return { missing: shot.missing };
  return { ...shot.launch, ...toEdgeFlight(shot.flight), carryWidthM: shot.width, ...toEdgeEnds(shot) };
}

/** A refusal over a field is an error of its line; any other is an answer of its own. */
export function orRefusal<T extends object>(answer: T | Refused): T | { missing: Refused['missing']; message: string } {
  if (!('missing' in answer)) return answer;
  const { missing, field, message } = answer;
  if (missing === 'bad-input') throw new LineError(field ?? '', message);
  return { missing, message };
}
