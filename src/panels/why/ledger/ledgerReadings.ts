import { CHECKPOINT_IDS, CHECKPOINTS } from '../../../reading/checkpointTable';
import type { CheckpointId, ReadingId } from '../../../reading/checkpoints';
import { BALL_READINGS } from '../../../solving/diagnosis/question';
import type { LedgerReading } from '../../../store/desk/whyState';
import { CHECKPOINT_NAMES } from '../../../words';
import { LEDGER_WORDS } from '../../../words/why/why';

type AtCheckpoint = ReadingId | 'impliedPath';

/** The two that the verdicts hang on. */
export const JUDGED: readonly LedgerReading[] = CHECKPOINT_IDS.map(
  (id): LedgerReading => `${id}:${CHECKPOINTS[id].judged}`,
);

/** Everything that is read at a checkpoint, in the order in which a coach looks for it. */
const READ: readonly AtCheckpoint[] = [
  'shaftPlane',
  'shaftPitch',
  'bicepGap',
  'bicepCrossing',
  'headDepth',
  'shaftAim',
  'planeDirection',
  'impliedPath',
  'planeTilt',
  'gripEndLine',
  'faceToVertical',
  'armToShaft',
  'thoraxTurn',
  'pelvisTurn',
  'handHeight',
  'handDepth',
  'reachRatio',
  'reachShortfall',
];
/** A level shaft is level, its grip end never points at the ground, and seen end on it passes no bicep. */
const NONE_WHERE_LEVEL: readonly AtCheckpoint[] = ['shaftPitch', 'gripEndLine', 'bicepGap', 'bicepCrossing'];

const option = (value: LedgerReading, at: CheckpointId, id: AtCheckpoint) => ({
  value,
  text: `${CHECKPOINT_NAMES[at].title}: ${LEDGER_WORDS[id].title}`,
});
const readings = (at: CheckpointId) =>
  READ.filter((id) => at === 'leadArmParallel' || !NONE_WHERE_LEVEL.includes(id))
    .map((id) => option(`${at}:${id}`, at, id))
    .filter(({ value }) => !JUDGED.includes(value));

/** What the ledger can be asked, under headings; what is judged stands first. */
export const READING_GROUPS = [
  {
    label: 'What is judged',
    options: [
      option('leadArmParallel:bicepGap', 'leadArmParallel', 'bicepGap'),
      option('shaftParallel:headDepth', 'shaftParallel', 'headDepth'),
    ],
  },
  { label: CHECKPOINT_NAMES.leadArmParallel.title, options: readings('leadArmParallel') },
  { label: CHECKPOINT_NAMES.shaftParallel.title, options: readings('shaftParallel') },
  {
    label: 'At the ball',
    options: BALL_READINGS.map((id) => ({ value: `ball:${id}` as LedgerReading, text: LEDGER_WORDS[id].title })),
  },
];
