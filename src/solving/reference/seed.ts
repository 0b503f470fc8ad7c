import { rad } from '../../math/angle';
import type { Body } from '../../model/body';
import { J, JOINT_COUNT, JOINTS, type JointId } from '../../model/joints';
import { BACKSWING_RATIO, DOWNSWING, K, KEY_COUNT, type KeyId, type ReferenceSwing } from '../../model/keys';
import { statureOfLegs } from './fitting';

/** Columns of the table below. Lengths as fractions of stature, angles in degrees. */
const COLUMNS: readonly JointId[] = [
  'pelvisSway',
  'pelvisHeight',
  'pelvisThrust',
  'pelvisTurn',
  'pelvisBend',
  'pelvisSideTilt',
  'trunkBend',
  'trunkTilt',
  'thoraxTurn',
  'leadProtraction',
  'trailProtraction',
  'leadArmAdduction',
  'leadArmElevation',
  'leadArmRoll',
  'leadWristFlexion',
  'leadWristRadial',
];

// prettier-ignore
const TABLE: Record<KeyId, readonly number[]> = {
  //                 sway   height thrust turn bend tilt | bend tilt  turn  prL  prT  add  elev roll flex radial
  address:         [ 0.000, 0.503, -.010,   0,  18,  -2,   35,   8,    4,   4,  12,  42, -55,   6, -14, -18],
  takeaway:        [-0.006, 0.502, -.008, -16,  18,   0,   35,   6,  -36,  12,   6,  50, -45,  46, -10,  -6],
  midBackswing:    [-0.014, 0.499, -.004, -34,  18,   2,   35,   4,  -72,  18,  -4,  58, -18,  84,  -6,  12],
  top:             [-0.017, 0.497, -.002, -42,  18,   3,   34,   2,  -90,  18, -10,  62,   5, 100,   0,  20],
  leadArmParallel: [ 0.022, 0.486,  .000,  -5,  18,   2,   36,  10,  -56,  15,  -5,  63, -12,  59,   4,  19],
  shaftParallel:   [ 0.031, 0.497,  .004,  22,  16,  -2,   36,  17,   -5,   8,   0,  58, -41,  39,   6,  13],
  impact:          [ 0.034, 0.508,  .008,  38,  10,  -6,   35,  23,   28,   2,   5,  54, -57,   4,   5, -11],
  exit:            [ 0.037, 0.517,  .010,  48,   6,  -6,   33,  27,   55,   0,   8,  43, -63, -43,   8, -30],
  followThrough:   [ 0.082, 0.512,  .010,  78,   1,  -3,   18,  17,   84,   0,  14,  25, -10, -80, -15,   0],
  finish:          [ 0.108, 0.5135, .000,  97,  -3,   3,   -2,   6,  112,   0,  14,  20,  25, -90, -30,  10],
};

/** Times of the keys as fractions of the downswing, zero at the top. */
const TIMES: Record<KeyId, number> = {
  address: -BACKSWING_RATIO,
  takeaway: -0.6 * BACKSWING_RATIO,
  midBackswing: -0.3 * BACKSWING_RATIO,
  top: 0,
  leadArmParallel: 0.6,
  shaftParallel: 0.845,
  impact: 1,
  exit: 1.12,
  followThrough: 1.5,
  finish: 2.8,
};

/**
 * Where the search for a reference swing starts: a swing of a player of this stature, joint angles from published landmarks and
 * an early hand-made search. It is a start, not an answer.
 */
export function seedReference(body: Body): ReferenceSwing {
  const times = new Float64Array(KEY_COUNT);
  const values = new Float64Array(KEY_COUNT * JOINT_COUNT);
  for (const key of Object.keys(TABLE) as KeyId[]) {
    times[K[key]] = TIMES[key] * DOWNSWING;
    COLUMNS.forEach((id, column) => {
      const typed = TABLE[key][column];
      const isAngle = JOINTS[J[id]].kind === 'angle';
      const unit = id === 'pelvisHeight' ? statureOfLegs(body) : body.stature;
      values[K[key] * JOINT_COUNT + J[id]] = isAngle ? rad(typed) : typed * unit;
    });
  }
  return { times, values, gripTurn: rad(26.5), gripAngle: 0, lie: 0, ballPoint: [0.05, 0.02, 0.45 * body.stature] };
}
