import { rad } from '../../math/angle';
import { CLUBS } from '../../model/club';
import { DIALS, type MovementId } from '../../model/movements';
import type { TopSetUp } from '../../model/setUp';
import { isReached } from '../../reading/checkpoints';
import type { Look } from './rule';
import type { TriedSwing } from './trial';

/** What failures may be told from successes by: all of it known before the change. */
export type FeatureId =
  | 'stature'
  | 'clubLength'
  | 'lag'
  | keyof TopSetUp
  | MovementId
  | 'bicepGap'
  | 'headDepth'
  | 'chestTurn'
  | 'pelvisTurn';

/** A number of a tried swing. Metres, radians, dial units. */
export interface Feature {
  readonly id: FeatureId;
  /** Thresholds are multiples of this: numbers that can be said. */
  readonly round: number;
  readonly read: (tried: TriedSwing, look: Look) => number;
}

type Numbers = { readonly [id in 'armToShaft' | 'bicepGap' | 'thoraxTurn' | 'pelvisTurn']: number };

const atArm =
  (id: keyof Numbers): Feature['read'] =>
  (_, { checkpoints: { leadArmParallel: read } }) =>
    isReached(read) ? read.readings[id] : NaN;

const topFeature = (id: keyof TopSetUp, round: number): Feature => ({ id, round, read: ({ top }) => top[id] });

/** Steps of the thresholds of the dials: a fifth to a sixth of a half usual range. */
const ROUND: Readonly<Record<MovementId, number>> = {
  leadWristFlexion: rad(5),
  rotationRate: 0.05,
  rotationDelay: 0.005,
  trailSideBend: rad(1),
  pelvisShift: 0.01,
};

/** In the order in which one goes before another that tells as much. */
export const FEATURES: readonly Feature[] = [
  ...DIALS.map(({ id }, i): Feature => ({ id, round: ROUND[id], read: ({ dials }) => dials[i] })),
  { id: 'lag', round: rad(5), read: atArm('armToShaft') },
  { id: 'stature', round: 0.05, read: ({ player }) => player.stature },
  { id: 'clubLength', round: 0.02, read: ({ player }) => CLUBS[player.club].lengthM },
  topFeature('handDepth', 0.02),
  topFeature('handHeight', 0.02),
  topFeature('turn', rad(5)),
  topFeature('wristSet', rad(5)),
  { id: 'bicepGap', round: 0.01, read: atArm('bicepGap') },
  {
    id: 'headDepth',
    round: 0.02,
    read: (_, { checkpoints: { shaftParallel: read } }) => (isReached(read) ? read.readings.headDepth : NaN),
  },
  { id: 'chestTurn', round: rad(5), read: atArm('thoraxTurn') },
  { id: 'pelvisTurn', round: rad(5), read: atArm('pelvisTurn') },
];
