import { vec3 } from 'gl-matrix';
import { rad, type Rad } from '../math/angle';
import { badInput, findBadField, isRefused, type Bounds, type Refused } from './answer';
import { IMPACT_BALL, type Ball } from './ball';
import { numbersOf, type Launch, type LaunchNumbers, type Vec3 } from './launch';

/**
 * How lively the face is: e = atRest - slope * (speed at which face and ball close, m/s), never below 0.
 * `slope` in s/m.
 */
export interface Restitution {
  readonly atRest: number;
  readonly slope: number;
}

/** Source: Penner 2001 (Am J Phys 69:563), 2003 (Rep Prog Phys 66:131), mark B. Under-predicts modern drivers. */
export const PENNER: Restitution = { atRest: 0.86, slope: 0.0029 };

/** Restitution at a closing speed in m/s, along the face normal. */
export const restitutionAt = ({ atRest, slope }: Restitution, closingSpeed: number): number =>
  Math.max(0, atRest - slope * closingSpeed);

/**
 * How the ball turns as it leaves the face, as tangential restitution: with it at 0 the ball rolls on the face, the published formula.
 * Below 0 the face still slides under it, above 0 the ball turns faster than it rolls, because its cover springs back.
 */
const ROLLS = 0;

/** A centred strike in the world frame: m/s, unit vector out of the face, kg. */
export interface Strike {
  readonly headVelocity: Vec3;
  readonly faceNormal: Vec3;
  readonly headMass: number;
  readonly restitution?: Restitution;
  /** -1: nothing grips and there is no spin. `ROLLS` when left out. */
  readonly tangential?: number;
  readonly ball?: Ball;
}

/**
 * What the ball does after a centred strike by a free head.
 * Along the normal: v_n = (1 + e) V_n / (1 + m/M). Along the face: v_p = (1 + e_t) V_p / (1 + m/M + m r^2/I), with V_p the
 * part of the head's velocity that lies in the face and e_t the tangential restitution. Spin: (m r/I) v_p about v_p x normal,
 * so the axis is square to the plane of head velocity and normal, and a lofted face moving at the target gives +Z: backspin.
 * Source: Penner 2001, 2003, mark B; the paper's formulas for one plane, written as vectors. It has e_t = 0; the factor
 * 1 + e_t is Newton's rule of restitution for the sliding of the two surfaces.
 */
export function findLaunch(strike: Strike): Launch | Refused {
  const { headVelocity, faceNormal, headMass, restitution = PENNER, tangential = ROLLS, ball = IMPACT_BALL } = strike;
  const bad = findBadStrike(strike);
  if (bad) return bad;
  const closing = vec3.dot(headVelocity, faceNormal);
  if (closing <= 0) {
    return { missing: 'no-contact', message: 'The face does not move toward the ball. Turn the face or the path.' };
  }
  const share = ball.mass / headMass;
  const along = ((1 + restitutionAt(restitution, closing)) * closing) / (1 + share);
  const grip = (1 + tangential) / (1 + share + (ball.mass * ball.radius ** 2) / ball.inertia);
  const alongFace = vec3.scaleAndAdd([0, 0, 0], headVelocity, faceNormal, -closing);
  vec3.scale(alongFace, alongFace, grip);
  // v_p x n, in the order that gives backspin its sign.
  const spinAxis = vec3.cross([0, 0, 0], alongFace, faceNormal);
  const slide = vec3.length(spinAxis);
  const [x, y, z] = vec3.scaleAndAdd([0, 0, 0], alongFace, faceNormal, along);
  return {
    velocity: [x, y, z],
    // A strike square to the face leaves no spin; its axis is then the backspin one, about which nothing turns.
    spinAxis: slide > 0 ? [spinAxis[0] / slide, spinAxis[1] / slide, spinAxis[2] / slide] : [0, 0, 1],
    spinRate: (ball.mass * ball.radius * slide) / ball.inertia,
  };
}

/** A strike in the words of an edge: angles in degrees, positive right of the target line or upward. */
export interface StrikeNumbers {
  readonly headSpeedMps: number;
  /** Of the face normal above the horizontal. */
  readonly dynamicLoftDeg: number;
  /** Of the face normal, seen from above. 0 square to the target line, positive open for a right-handed player. */
  readonly faceDeg: number;
  /** Of the head's velocity, seen from above. Positive in-to-out for a right-handed player. */
  readonly pathDeg: number;
  /** Of the head's velocity. Positive upward. */
  readonly attackDeg: number;
  readonly headMassKg: number;
}

const STRIKE_BOUNDS: Record<keyof StrikeNumbers, Bounds> = {
  headSpeedMps: { above: 0, max: 100 },
  dynamicLoftDeg: { min: -90, max: 90 },
  faceDeg: { min: -180, max: 180 },
  pathDeg: { min: -180, max: 180 },
  attackDeg: { min: -90, max: 90 },
  headMassKg: { above: 0, max: 10 },
};

/** The strike with these numbers, or what is wrong with them. */
export function strikeOf(numbers: StrikeNumbers): Strike | Refused {
  const bad = findBadField(numbers, STRIKE_BOUNDS);
  if (bad) return bad;
  return {
    headVelocity: pointing(numbers.headSpeedMps, rad(numbers.attackDeg), rad(numbers.pathDeg)),
    faceNormal: pointing(1, rad(numbers.dynamicLoftDeg), rad(numbers.faceDeg)),
    headMass: numbers.headMassKg,
  };
}

/** Ball speed, launch, start line and spin after the strike with these numbers. Signs as the two interfaces say. */
export function impactOf(
  numbers: StrikeNumbers,
  restitution: Restitution = PENNER,
  tangential: number = ROLLS,
): LaunchNumbers | Refused {
  const strike = strikeOf(numbers);
  if (isRefused(strike)) return strike;
  const launch = findLaunch({ ...strike, restitution, tangential });
  return isRefused(launch) ? launch : numbersOf(launch);
}

/**
 * Spin loft: the angle between the head's velocity and the face normal, which makes the spin. Rad, 0 for a square blow.
 * Atan2 of the cross and dot products, so that small angles keep their digits.
 * @internal Tests compare it with published impacts.
 */
export const spinLoft = ({ headVelocity, faceNormal }: Strike): Rad =>
  Math.atan2(vec3.length(vec3.cross([0, 0, 0], headVelocity, faceNormal)), vec3.dot(headVelocity, faceNormal));

/**
 * Where between path (0) and face (1) the ball starts, seen from above. `undefined` where they agree to 1e-9 deg.
 * Published: 0.61 to 0.83 (Wood et al. 2018, Proceedings 2(6):249, mark A), lower for lofted clubs.
 * @internal Tests compare it with the published shares.
 */
export function startShare(startDeg: number, pathDeg: number, faceDeg: number): number | undefined {
  return Math.abs(faceDeg - pathDeg) < 1e-9 ? undefined : (startDeg - pathDeg) / (faceDeg - pathDeg);
}

const pointing = (length: number, up: Rad, right: Rad): Vec3 => [
  length * Math.cos(up) * Math.cos(right),
  length * Math.sin(up),
  length * Math.cos(up) * Math.sin(right),
];

function findBadStrike({ headVelocity, faceNormal, headMass, tangential = ROLLS }: Strike): Refused | undefined {
  if (!headVelocity.every(Number.isFinite))
    return badInput('headVelocity', 'headVelocity: every part must be finite, m/s.');
  if (!(Math.abs(vec3.length(faceNormal) - 1) < 1e-6)) {
    return badInput('faceNormal', 'faceNormal: must be a unit vector.');
  }
  if (!(tangential >= -1 && tangential <= 1)) return badInput('tangential', 'tangential: must be from -1 to 1.');
  return headMass > 0 && headMass < Infinity ? undefined : findBadField({ headMass }, { headMass: { above: 0 } });
}
