/**
 * A pose: every point, direction and orientation of the golfer and the club at one instant, in one flat buffer.
 * World frame: +X toward the target, +Y up, +Z from the golfer toward the ball line; metres; origin on the ground between the ankles.
 * Points and directions take three numbers, orientations nine (the x, y and z axis of the part, one after the other).
 */
export type Pose = Float64Array;

/** Where things stand in a `Pose`. */
export const AT = {
  pelvis: 0,
  midShoulder: 3,
  leadShoulder: 6,
  trailShoulder: 9,
  leadGrip: 12,
  trailGrip: 15,
  trailElbow: 18,
  bicep: 21,
  head: 24,
  /** Unit direction of the lead arm, shoulder to grip. */
  armDirection: 27,
  /** Unit direction of the shaft, grip to head. */
  shaftDirection: 30,
  /** Unit normal of the face. */
  faceNormal: 33,
  /** Unit direction heel to toe. */
  toeDirection: 36,
  pelvisAxes: 39,
  trunkAxes: 48,
  thoraxAxes: 57,
  armAxes: 66,
  handAxes: 75,
  /** Distance trail shoulder to trail grip over the length of the trail arm; above 1 is out of reach. */
  reachRatio: 84,
  /** Metres by which the trail arm is too short; 0 when it reaches. */
  reachShortfall: 85,
  leadElbow: 86,
} as const;
const POSE_SIZE = 89;

/** A fresh pose buffer. Not for hot paths. */
export const createPose = (): Pose => new Float64Array(POSE_SIZE);
