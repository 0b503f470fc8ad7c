/** What was typed in or fitted when the reference swing was found, and what that decides: it cannot count as evidence. */
export const CALIBRATED: readonly string[] = [
  'The reference meets the ball on line and square, at a published head speed.',
  'Both checkpoints of the reference are on plane.',
  'The trail hand reaches the grip from address to just past impact.',
  'Joint angles lean toward published ones at address, top and impact.',
  'Chest, lead arm and shaft turn at published peak speeds.',
  'How the pelvis turns is typed in, and with it when it turns fastest.',
  'Hand speed at impact is asked for, and mostly falls short of what is published.',
  'How far the wrist uncocks follows from what is asked at top and impact.',
  'When chest, arm and shaft turn fastest is steered by speeds asked for at impact.',
  'Arm and pelvis usually turn fastest later here than published.',
  'Tilt flattens the shaft at lead arm parallel because sign and size were asked for.',
  'Asking for that also changed how much other movements do.',
];

/** What follows without having been fitted: this is where the model can be checked, and can be wrong. */
export const PREDICTED: readonly string[] = [
  'How much lead wrist and turn shift the line and the head.',
  'How tilt shifts the line and the head, but not how it flattens the shaft.',
  'What several movements do together.',
  'How steeply the lead arm moves late, and how fast the forearm turns at impact.',
  'Past the usual range, or read at parallel, more tilt can stand the shaft up.',
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
  'Strike: a free head meets the ball at mid-face (Penner 2001, 2003).',
  'Those formulas give modern drivers too little ball speed. The driver here is as lively as rules allow: assumed.',
  'Head masses are usual weights from memory. Off-centre strikes, gear effect and turf are left out.',
  'Flight: drag and lift as Smits and Smith (1994) measured them. Spin ratios: 0.08 to 0.2.',
  'Outside that range the numbers are carried on, and the forecast says "extrapolated".',
  'Published flight models differ by about 20 m on a drive. Carry is shown with that width.',
  'Names of shots (push, draw, slice) are common practice, without a published source.',
];
