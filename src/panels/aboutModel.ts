/** What was fitted when the reference swing was found: it cannot count as evidence. */
export const CALIBRATED: readonly string[] = [
  'The reference swing: it meets the ball, square, with both checkpoints on plane.',
  'It lies near published joint angles at address, top and impact.',
];

/** What follows without having been fitted: this is where the model can be checked, and can be wrong. */
export const PREDICTED: readonly string[] = [
  'How far each movement shifts the shaft line and the head at the checkpoints.',
  'What several movements do together.',
];
