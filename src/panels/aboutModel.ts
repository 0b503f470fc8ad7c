/** What was fitted when the reference swing was found: it cannot count as evidence. */
export const CALIBRATED: readonly string[] = [
  'The reference meets the ball on line and square, at a published head speed.',
  'Both checkpoints of the reference are on plane.',
  'The trail hand reaches the grip from address to just past impact.',
  'Joint angles lean toward published ones at address, top and impact.',
  'Pelvis, chest, lead arm and shaft turn at published peak speeds.',
  'Where a known cause and effect had the wrong sign, the sign was asked for.',
];

/** What follows without having been fitted: this is where the model can be checked, and can be wrong. */
export const PREDICTED: readonly string[] = [
  'How much each movement shifts the line and the head.',
  'What several movements do together.',
  'How the lead-arm plane steepens, and how fast the forearm turns at impact.',
  'When each part turns fastest. Arm and pelvis come later here than published.',
  'Hands at impact are slower here than published. A rigid golfer has no other way.',
];
