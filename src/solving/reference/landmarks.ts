import { rad } from '../../math/angle';
import type { Club } from '../../model/club';
import type { JointId } from '../../model/joints';
import type { KeyId } from '../../model/keys';
import { headSpeedGoal } from './headSpeed';

/**
 * What the search for a reference swing leans toward, and how firmly. Each row: the value at a key and one spread.
 * Lengths are fractions of stature, angles degrees. Where a landmark is published its source stands beside it; the others are
 * interpolated between published ones and said to be so.
 */
export interface Landmark {
  readonly joint: JointId;
  readonly spread: number;
  readonly at: { readonly [key in KeyId]?: number };
}

/**
 * Shoulder blades: drawn to where they rest on the rib cage, the shoulders in line with the middle between them, by a third of their
 * range of motion. Nothing is published of them in a swing; where they go is the fit's answer.
 */
const AT_REST = { top: 0, leadArmParallel: 0, shaftParallel: 0, impact: 0, exit: 0 } as const;

/**
 * Downswing. Published: thorax turn at top -82..-87 and at impact +27 +- 9 (McTeigue 1994; Cheetham 2014), side lean at impact
 * (31 of side bend after the turn is 21 of lean before it), wrist flexion at top -11 +- 20 and at impact +1 +- 14 (Wheare et al. 2021;
 * of the 48 of uncocking it found from top to impact only 27 fit between the wrist's range and the room it needs at the ball). Lead arm
 * parallel: one open recording (thorax -44..-49, lean 9, adduction 51). Shaft parallel and exit: interpolated.
 */
export const DOWNSWING_LANDMARKS: readonly Landmark[] = [
  {
    joint: 'pelvisSway',
    spread: 0.006,
    at: { top: -0.017, leadArmParallel: 0.02, shaftParallel: 0.031, impact: 0.036, exit: 0.04 },
  },
  {
    joint: 'pelvisHeight',
    spread: 0.005,
    at: { top: 0.5, leadArmParallel: 0.489, shaftParallel: 0.496, impact: 0.506, exit: 0.51 },
  },
  { joint: 'thoraxTurn', spread: 3, at: { top: -85, leadArmParallel: -36, shaftParallel: 2, impact: 25, exit: 38 } },
  {
    joint: 'trunkBend',
    spread: 1.5,
    at: { top: 34, leadArmParallel: 33, shaftParallel: 33, impact: 33, exit: 32 },
  },
  { joint: 'trunkTilt', spread: 2, at: { top: 3, leadArmParallel: 11, shaftParallel: 16, impact: 21, exit: 24 } },
  { joint: 'leadProtraction', spread: 10, at: AT_REST },
  { joint: 'trailProtraction', spread: 10, at: AT_REST },
  {
    joint: 'leadArmAdduction',
    spread: 5,
    at: { top: 60, leadArmParallel: 52, shaftParallel: 52, impact: 48, exit: 40 },
  },
  {
    joint: 'leadArmElevation',
    spread: 8,
    at: { top: 6, leadArmParallel: -10, shaftParallel: -40, impact: -54, exit: -56 },
  },
  { joint: 'leadArmRoll', spread: 15, at: { top: 92, leadArmParallel: 64, shaftParallel: 40, impact: -14, exit: -58 } },
  {
    joint: 'leadWristFlexion',
    spread: 5,
    at: { top: -11, leadArmParallel: -7, shaftParallel: -2, impact: 1, exit: 0 },
  },
  {
    joint: 'leadWristRadial',
    spread: 6,
    at: { top: 19, leadArmParallel: 17, shaftParallel: 12, impact: -8, exit: -29 },
  },
];

/**
 * Backswing. Published: wrist flexion at address -21 +- 12, 37 of cocking from address to top (Wheare et al. 2021), trunk bend at
 * address 26-35. Between address and top: interpolated.
 */
export const BACKSWING_LANDMARKS: readonly Landmark[] = [
  { joint: 'trunkBend', spread: 2, at: { address: 34 } },
  { joint: 'trunkTilt', spread: 2, at: { address: 7 } },
  { joint: 'pelvisHeight', spread: 0.004, at: { address: 0.503 } },
  { joint: 'thoraxTurn', spread: 3, at: { address: 1, takeaway: -38, midBackswing: -70 } },
  { joint: 'leadProtraction', spread: 4, at: { address: 6, takeaway: 12, midBackswing: 15 } },
  { joint: 'trailProtraction', spread: 6, at: { address: 12, takeaway: 5, midBackswing: -4 } },
  { joint: 'leadArmAdduction', spread: 6, at: { address: 45, takeaway: 46, midBackswing: 52 } },
  { joint: 'leadArmElevation', spread: 8, at: { address: -54, takeaway: -46, midBackswing: -20 } },
  { joint: 'leadArmRoll', spread: 15, at: { address: 8, takeaway: 40, midBackswing: 76 } },
  { joint: 'leadWristFlexion', spread: 4, at: { address: -14, takeaway: -13, midBackswing: -12 } },
  { joint: 'leadWristRadial', spread: 5, at: { address: -17, takeaway: -6, midBackswing: 12 } },
];

/** From just past impact to the finish: made for the eye, no published landmark, enters no reading. */
export const FINISH_LANDMARKS: readonly Landmark[] = [
  { joint: 'pelvisHeight', spread: 0.003, at: { followThrough: 0.512, finish: 0.5135 } },
  { joint: 'leadProtraction', spread: 6, at: { followThrough: -4, finish: 0 } },
  { joint: 'trailProtraction', spread: 6, at: { followThrough: 20, finish: 18 } },
  { joint: 'leadArmAdduction', spread: 8, at: { followThrough: 34, finish: 18 } },
  { joint: 'leadArmElevation', spread: 8, at: { followThrough: -12, finish: 30 } },
  { joint: 'leadArmRoll', spread: 12, at: { followThrough: -80, finish: -22 } },
  { joint: 'leadWristFlexion', spread: 6, at: { followThrough: -6, finish: -16 } },
  { joint: 'leadWristRadial', spread: 6, at: { followThrough: -6, finish: 16 } },
];

/** Goals that change with the club: common practice, except head speed (`headSpeed.ts`). */
export interface ClubGoals {
  /** Ball forward of the middle of the ankles, m. */
  readonly ballX: number;
  /** Height of the head's reference point when it meets the ball, m. */
  readonly ballY: number;
  /** rad; positive rises. */
  readonly attack: number;
  /** m/s at a stature of 1.78 m. */
  readonly headSpeed: number;
  /** Bounds of the goal for other statures, m/s. */
  readonly headSpeedBounds: readonly [number, number];
  /** Hands ahead of the head at impact, m. */
  readonly handsLead: number;
}

/** The goals for a club: driver level or rising, everything else descending; longer clubs further forward. */
export function goalsFor(club: Club): ClubGoals {
  const speed = headSpeedGoal(club);
  // From a 35 in wedge (middle of the stance) to a 45 in driver (inside the lead heel).
  const long = Math.max(0, Math.min(1, (club.length - 0.9) / (1.143 - 0.9)));
  switch (club.kind) {
    case 'driver':
      return { ballX: 0.14, ballY: 0.045, attack: rad(1), handsLead: 0.03, ...speed };
    case 'wood':
      return {
        ballX: 0.1,
        ballY: 0.02,
        attack: rad(-2.6),
        handsLead: 0.05,
        ...speed,
      };
    case 'iron':
      return {
        ballX: 0.14 * long,
        ballY: 0.02,
        attack: rad(-3.5),
        handsLead: 0.09,
        ...speed,
      };
    case 'wedge':
      return {
        ballX: 0.14 * long,
        ballY: 0.02,
        attack: rad(-3.8),
        handsLead: 0.09,
        ...speed,
      };
  }
}
