/**
 * The two checkpoints of the downswing, in the order in which a swing passes them: all that is fixed about each, in one
 * place.
 *
 * - `position`: in the trade's count of ten.
 * - `judged`, `judgedCm`: the reading the verdict hangs on, and its name at an edge, where it is in centimetres.
 * - `band`: of that reading, m. Common practice, no published source: the middle third of an upper arm 9 to 10 cm thick,
 *   and a head that covers the hands or lies slightly behind them. Editable, shown with the number and never alone.
 * - `verdicts`: at an edge, in the trade's terms.
 * - `title`, `inSentence`: on screen.
 */
export const CHECKPOINTS = {
  leadArmParallel: {
    position: 'P5',
    judged: 'bicepGap',
    judgedCm: 'bicepGapCm',
    band: { low: -0.015, high: 0.015 },
    verdicts: { steep: 'steep', onPlane: 'on plane', shallow: 'over-shallow', missing: 'not reached' },
    title: 'Lead arm parallel',
    inSentence: 'lead arm parallel',
  },
  shaftParallel: {
    position: 'P6',
    judged: 'headDepth',
    judgedCm: 'headDepthCm',
    band: { low: -0.1, high: 0.02 },
    verdicts: { steep: 'in front', onPlane: 'on plane', shallow: 'too far behind', missing: 'not reached' },
    title: 'Shaft parallel',
    inSentence: 'shaft parallel',
  },
} as const;

export type CheckpointId = keyof typeof CHECKPOINTS;

/** Both checkpoints, in the order in which a swing passes them. */
export const CHECKPOINT_IDS = ['leadArmParallel', 'shaftParallel'] as const satisfies readonly CheckpointId[];
