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

/** The assumption between shaft parallel and the ball: what it says, its published ground, and what it leaves unsaid. */
export const FROM_PLANE_TO_PATH: readonly string[] = [
  'Held plane: what changes in the plane at shaft parallel carries over to the path. This is assumed.',
  'The arms change as little as they can so that the head meets the ball.',
  "Its ground: shaft angle at mid-downswing predicts the swing plane's direction (Morrison et al. 2017).",
  'That study explains most of the direction among players. It does not say how one player adapts.',
  'Nothing is claimed about muscles, timing by feel, or what a player can learn.',
  'Nothing adapts: the joints run on as dialled. The miss is told in centimetres.',
];

/** How the ball is worked out, and where that ends. */
export const THE_BALL: readonly string[] = [
  'Strike: a free head meets the ball in the middle of the face (Penner 2001, 2003).',
  'Those formulas give modern drivers too little ball speed. The driver here is as lively as rules allow: assumed.',
  'Head masses are usual weights from memory. Off-centre strikes, gear effect and turf are left out.',
  'Flight: drag and lift as measured by Smits and Smith (1994), for spin ratios of 0.08 to 0.2.',
  'Outside that range the numbers are carried on, and the forecast says "extrapolated".',
  'Published flight models differ by about 20 m on a drive. Carry is shown with that width.',
  'Names of shots (push, draw, slice) are common practice, without a published source.',
];
