import { rad } from '../../math/angle';
import { J, JOINTS } from '../../model/joints';
import { DIALS } from '../../model/movements';

/**
 * What is looked for, each in its own standard deviations from where it is expected: zero is expected, 1 is one deviation off. In this
 * order: camera, club and feet at address, what lies on the ground, times, joints at either checkpoint, movements.
 */
export const U = {
  eyeX: 0,
  eyeY: 1,
  eyeZ: 2,
  yaw: 3,
  pitch: 4,
  roll: 5,
  focal: 6,
  lie: 7,
  lean: 8,
  trailToeX: 9,
  trailToeZ: 10,
  leadToeX: 11,
  leadToeZ: 12,
  stickZ: 13,
  stickNear: 14,
  stickFar: 15,
  targetHeight: 16,
  armTime: 17,
  shaftTime: 18,
  frameTime: 19,
  joints: 20,
} as const;

/**
 * Joints in which a player may differ from the reference at a checkpoint. The pelvis's own angles are left out: only its place carries
 * what is marked.
 */
export const FREE_JOINTS: readonly number[] = JOINTS.map((_, j) => j).filter(
  (j) => j !== J.pelvisTurn && j !== J.pelvisBend && j !== J.pelvisSideTilt,
);

/** Spread of a player about the reference: 3 deg a joint, 2.5 cm of the pelvis's place. Our choice, wide. */
const JOINT_SPREAD = { angle: rad(3), length: 0.025 } as const;
/** Standard deviation of each free joint, rad or m. */
export const JOINT_SD = FREE_JOINTS.map((j) => JOINT_SPREAD[JOINTS[j].kind]);
/** How much of a joint's difference at lead arm parallel is still there at shaft parallel. The rest is new. */
export const CARRIED = 0.5;
export const RENEWED = Math.sqrt(1 - CARRIED ** 2);

export const SECOND_JOINTS = U.joints + FREE_JOINTS.length;
export const FIRST_DIAL = SECOND_JOINTS + FREE_JOINTS.length;
export const UNKNOWN_COUNT = FIRST_DIAL + DIALS.length;

/** Standard deviation of a movement among players: that of an even spread over its usual range. */
export const DIAL_SD = DIALS.map(({ usualMin, usualMax }) => (usualMax - usualMin) / 2 / Math.sqrt(3));

/**
 * Where a phone stands and what it sees, and the spread of each: 3 to 8 m away, 0.6 to 1.5 m high, within 10 deg of the line, 24 to 70 mm
 * on full frame. m, rad; the focal length as a logarithm. `eyeX` and `eyeZ` from the hands at address.
 */
export const CAMERA_PRIOR = {
  eyeX: { mean: -5, sd: 2.5 },
  eyeY: { mean: 1.1, sd: 0.5 },
  eyeZ: { mean: 0, sd: 0.8 },
  yaw: { mean: 0, sd: rad(10) },
  pitch: { mean: rad(-3), sd: rad(8) },
  roll: { mean: 0, sd: rad(2) },
  focal: { mean: Math.log(40), sd: 0.4 },
} as const;
/** Diagonal of full frame, mm: what equivalent focal lengths refer to. */
export const FULL_FRAME_MM = Math.hypot(36, 24);

/** Spreads of the player at address: club, feet, and where a stick lies from the ball line. m, rad. */
export const ADDRESS_SD = { lie: rad(3), lean: rad(4), toe: 0.05, stickZ: 0.6, stickX: 2, target: rad(1.5) } as const;

/** Time of a frame against the reference's, s, and what the time between two frames is out by: known and unknown frame rate. */
export const TIME_SD = { checkpoint: 0.04, known: 0.15, unknown: 0.8 } as const;
/** Frame rate taken where nobody knows it, 1/s. */
export const GUESSED_FPS = 120;
/** How far off parallel the lead arm may be in the frame a coach picks, rad (our estimate). */
export const PICKED_ARM_SD = rad(4);
