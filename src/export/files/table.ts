import { READING_EDGES, toEdge } from '../../edge/units';
import { toDeg } from '../../math/angle';
import { AT } from '../../model/chain';
import { createJointVector, J, JOINTS } from '../../model/joints';
import { K } from '../../model/keys';
import { readAt } from '../../reading/checkpoints';
import { POSITION_IDS, type Positions } from '../../reading/positions';
import { headVelocityAt, swingJoints, type Swing } from '../../reading/swing';
import { COMPUTED } from '../../words';
import { toCsv, toNumber, type Cell } from './csv';

/** A swing that goes into a table: its name there, and when it passes the ten positions. */
export interface Tabled {
  readonly name: string;
  readonly swing: Swing;
  readonly positions: Positions;
}

/** Decimals of what is printed, by unit: far below what anybody can see in a swing. */
const DECIMALS = { Deg: 4, Cm: 4, M: 6, Ms: 3, Mps: 4, ratio: 6 } as const;

/** All but those that are a joint's own angle, which has its column already. */
const READINGS = READING_EDGES.filter(([, field]) => JOINTS.every((joint) => joint.field !== field));

/** Names of the columns; each number wears its unit. Angles and lengths in the senses of the model's own tables. */
export const COLUMNS: readonly string[] = [
  'swing',
  'club',
  'source',
  'position',
  'timeMs',
  ...JOINTS.map(({ field }) => field),
  ...READINGS.map(([, field]) => field),
  'headXM',
  'headYM',
  'headZM',
  'headSpeedMps',
];

/** Positions at which the shaft is level and seen end on. */
const LEVEL_SHAFT: readonly string[] = ['P2', 'P6', 'P8'];

/** Time between two rows, s of the player's own time. */
const STEP_S = 0.005;

/**
 * Every degree of freedom and every reading over time as comma-separated values: a row each 5 ms of the player's own time (zero at the
 * top of the backswing) and one at each of the ten positions.
 */
export const toTable = (swings: readonly Tabled[]): string => toCsv(COLUMNS, swings.flatMap(rowsOf));

function rowsOf({ name, swing, positions }: Tabled): Cell[][] {
  const { times } = swing.curves;
  const instants: { t: number; position?: string }[] = POSITION_IDS.flatMap((position) => {
    const t = positions[position];
    return t === null ? [] : [{ t, position }];
  });
  const last = Math.floor((times[K.finish] * swing.tempo) / STEP_S);
  for (let i = Math.ceil((times[K.address] * swing.tempo) / STEP_S); i <= last; i++) {
    const t = (i * STEP_S) / swing.tempo;
    if (!instants.some((instant) => Math.abs(instant.t - t) < 1e-9)) instants.push({ t });
  }
  const joints = createJointVector();
  const velocity = new Float64Array(3);
  return instants
    .toSorted((a, b) => a.t - b.t)
    .map(({ t, position = '' }) => {
      swingJoints(swing, t, joints);
      const { pose, readings } = readAt(swing, t, LEVEL_SHAFT.includes(position));
      headVelocityAt(swing, t, velocity);
      return [
        { text: name },
        { text: swing.rig.club.name },
        { text: COMPUTED },
        { text: position },
        toNumber(t * swing.tempo * 1000, DECIMALS.Ms),
        ...JOINTS.map(({ id, kind }) =>
          kind === 'angle' ? toNumber(toDeg(joints[J[id]]), DECIMALS.Deg) : toNumber(joints[J[id]], DECIMALS.M),
        ),
        ...READINGS.map(([id, , unit]) => toNumber(toEdge(readings[id], unit), DECIMALS[unit])),
        ...[0, 1, 2].map((axis) => toNumber(pose[AT.head + axis], DECIMALS.M)),
        toNumber(Math.hypot(velocity[0], velocity[1], velocity[2]), DECIMALS.Mps),
      ];
    });
}
