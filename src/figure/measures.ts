import { SEGMENT_FRACTIONS, type Body } from '../model/body';
import type { Club } from '../model/club';

/** Lengths that placing needs, m. */
export interface Measures {
  /** Stature: the unit of everything drawn by eye. */
  readonly k: number;
  /** This player's trunk over the usual trunk. */
  readonly trunkScale: number;
  readonly upperArm: number;
  readonly forearm: number;
  readonly palm: number;
  readonly thigh: number;
  readonly shank: number;
  readonly ankle: number;
  /** This player's foot over the usual foot. */
  readonly footScale: number;
  readonly hipX: number;
  readonly yokeRoot: number;
  readonly yokeLength: number;
  readonly fistLength: number;
  readonly gripInset: number;
  /** Half the distance between the ankles. */
  readonly stance: number;
}

/** Half the distance between the ankles, fractions of stature. Common practice: wider for longer clubs. */
const STANCE = { driver: 0.142, wood: 0.134, iron: 0.123, wedge: 0.112 } as const;

/** The lengths of one player with one club, m. Widths follow the stature, lengths the player's own segments. */
export function measure(body: Body, club: Club): Measures {
  const k = body.stature;
  const usual = (id: keyof typeof SEGMENT_FRACTIONS): number => SEGMENT_FRACTIONS[id] * k;
  const yokeRoot = 0.05 * k * (body.shoulderHalf / usual('shoulderHalf'));
  return {
    k,
    trunkScale: body.trunk / usual('trunk'),
    upperArm: body.upperArm,
    forearm: body.forearm,
    palm: body.grip,
    thigh: body.thigh,
    shank: body.shank,
    ankle: body.ankle,
    footScale: body.foot / usual('foot'),
    hipX: 0.0506 * k * (body.hipHalf / usual('hipHalf')),
    yokeRoot,
    yokeLength: Math.hypot(body.shoulderHalf - yokeRoot, 0.014 * k),
    fistLength: 0.5 * (0.0475 * k + club.handGap),
    gripInset: club.gripInset,
    stance: STANCE[club.kind] * k,
  };
}
