import { rad } from '../math/angle';

/**
 * The degrees of freedom of the golfer, in the order of the chain. Lengths in metres, angles in radians.
 * A table on purpose: panels, checks and exports read the same rows.
 */
export interface Joint {
  readonly id: JointId;
  readonly label: string;
  readonly kind: 'length' | 'angle';
  /** Name of the field at an edge (JSON, table), with its unit. */
  readonly field: string;
  readonly min: number;
  readonly max: number;
  /** What positive means, in words one can act out. */
  readonly positive: string;
  readonly source: string;
}

export const JOINT_IDS = [
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
] as const;
export type JointId = (typeof JOINT_IDS)[number];

/** Index of each degree of freedom in a pose vector. */
export const J = Object.fromEntries(JOINT_IDS.map((id, i) => [id, i])) as Readonly<Record<JointId, number>>;
/** Number of degrees of freedom. */
export const JOINT_COUNT = JOINT_IDS.length;

/** One value per degree of freedom, in the order of `JOINT_IDS`. */
export type JointVector = Float64Array;

const MODEL = 'model range';
const AAOS = 'AAOS normal range of motion';
/**
 * A shoulder blade forward and back moves with the collar bone at the breastbone: 15-30 deg each way in textbooks of functional anatomy
 * (mark B), the wider end. Our half-breadth of the shoulders turns with it.
 */
const COLLAR_BONE = 'collar bone at the breastbone, textbooks of functional anatomy';

function length(id: JointId, label: string, min: number, max: number, positive: string): Joint {
  return { id, label, kind: 'length', field: `${id}M`, min, max, positive, source: MODEL };
}

function angle(
  id: JointId,
  label: string,
  minDeg: number,
  maxDeg: number,
  positive: string,
  source: string = MODEL,
): Joint {
  return { id, label, kind: 'angle', field: `${id}Deg`, min: rad(minDeg), max: rad(maxDeg), positive, source };
}

export const JOINTS: readonly Joint[] = [
  length('pelvisSway', 'Hips to the target', -0.3, 0.3, 'the pelvis moves toward the target'),
  length('pelvisHeight', 'Hips up', 0.4, 1.4, 'the pelvis rises from the ground'),
  length('pelvisThrust', 'Hips to the ball', -0.3, 0.3, 'the pelvis moves toward the ball'),
  angle('pelvisTurn', 'Hips open', -70, 110, 'the pelvis opens toward the target'),
  angle('pelvisBend', 'Hips tipped forward', -10, 45, 'the pelvis tips forward'),
  angle('pelvisSideTilt', 'Lead hip up', -25, 25, 'the lead hip rises'),
  angle('trunkBend', 'Trunk bent forward', -20, 60, 'the trunk bends forward to the ball'),
  angle('trunkTilt', 'Trunk back from target', -30, 45, 'the upper body leans away from the target'),
  angle('thoraxTurn', 'Chest open', -120, 150, 'the chest opens toward the target'),
  angle('leadProtraction', 'Lead shoulder forward', -30, 30, 'the lead shoulder moves forward', COLLAR_BONE),
  angle('trailProtraction', 'Trail shoulder forward', -30, 30, 'the trail shoulder moves forward', COLLAR_BONE),
  angle('leadArmAdduction', 'Lead arm across the chest', -60, 110, 'the lead arm crosses the chest', 'ACSM'),
  angle('leadArmElevation', 'Lead arm up', -90, 60, 'the lead arm lifts toward the head'),
  angle(
    'leadArmRoll',
    'Lead arm rolled',
    -150,
    150,
    'the thumb turns toward the trail side',
    'AAOS, forearm and shoulder',
  ),
  angle('leadWristFlexion', 'Lead wrist bowed', -70, 80, 'the palm folds toward the forearm (bowed)', AAOS),
  angle('leadWristRadial', 'Lead wrist cocked', -30, 20, 'the thumb comes toward the forearm (cocked)', AAOS),
];

/** A fresh pose vector of zeros. Not for hot paths. */
export const createJointVector = (): JointVector => new Float64Array(JOINT_COUNT);
