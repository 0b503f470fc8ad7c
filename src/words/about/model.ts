export const ABOUT_LEAD =
  'Slantwise moves a jointed figure by the rules of geometry. It shows what a change does; it does not film anybody.';

/** Where each number comes from. */
export const SOURCES: readonly { readonly name: string; readonly of: string }[] = [
  { name: 'Measured by you', of: 'Height, body lengths, your own club. The model takes them as typed.' },
  {
    name: 'Computed by the model',
    of: 'Every pose, distance, angle, path and speed. They follow from the joints, nothing else.',
  },
  {
    name: 'A rule of thumb',
    of: 'The bands for steep, on plane and over-shallow, usual ranges, body proportions, typical clubs.',
  },
];

/** What was typed in or fitted when the reference swing was found, and what that decides: it cannot count as evidence. */
export const CALIBRATED: readonly string[] = [
  'The reference meets the ball on line and square, at a published head speed.',
  'Head speed from club to club follows professional means, from memory.',
  'How the ball spins off woods and irons was set on published launches.',
  'Both checkpoints of the reference are on plane.',
  'The trail hand reaches the grip from address to just past impact.',
  'Joint angles lean toward published ones at address, top and impact.',
  'Chest, lead arm and shaft turn at published peak speeds.',
  'How the pelvis turns is typed in, and with it when it turns fastest.',
  'Hand speed at impact is asked for, and mostly falls short of what is published.',
  'How far the wrist uncocks follows from what is asked at top and impact.',
  'When chest, arm and shaft turn fastest is steered by speeds asked for at impact.',
  'Arm and pelvis usually turn fastest later here than published.',
  'Shoulder blades move within their range; they are drawn to where they rest.',
  'The lie of a fitted club follows the player. The heads are bent in the search.',
];

/** What follows without having been fitted: this is where the model can be checked, and can be wrong. */
export const PREDICTED: readonly string[] = [
  'What wrist, turn and side bend do to line and head: no fit asks.',
  'What several movements do together.',
  'Spin at the published launches that were kept out.',
  'How steeply the lead arm moves late, and how fast the forearm turns at impact.',
  'How much the wrist does at another lag. At a right angle it turns only the face.',
];

/** The assumption between shaft parallel and the ball: what it says, its published ground, and what it leaves unsaid. */
export const FROM_PLANE_TO_PATH: readonly string[] = [
  'Player compensates: what changes in the plane at shaft parallel carries over to the path. This is assumed.',
  'The arms change as little as they can so that the head meets the ball.',
  'The face is left as it comes, or returned to square: both ends are shown.',
  'How far players bring it back is assumed: half way, or what the set-up says.',
  "Its ground: shaft angle at mid-downswing predicts the swing plane's direction (Morrison et al. 2017).",
  'That study explains most of the direction among players. It does not say how one player adapts.',
  'Nothing is claimed about muscles, timing by feel, or what a player can learn.',
  'No compensation: the joints run on as dialled. The miss is told in centimetres.',
];

/** How the ball is worked out, and where that ends. */
export const THE_BALL: readonly string[] = [
  'Strike: a free head meets the ball at mid-face (Penner 2001, 2003).',
  'Those formulas give modern drivers too little ball speed. The driver here is as lively as rules allow: assumed.',
  'How the ball turns is calibrated: one number for woods, one for irons.',
  'A bending shaft adds loft: 5° with a driver (MacKenzie and Sprigings 2009).',
  'With shorter clubs it adds less, by our rule. The drawn shaft stays straight.',
  'Head masses are usual weights from memory. Off-centre strikes, gear effect and turf are left out.',
  'Flight: drag and lift as Naruo, Mizota and Shimozono (2004) measured them.',
  'A slow ball drags more, as Lyu and others (2018) found. Past a spin ratio of 0.22 drag rises as Dewhurst has it.',
  'They hold for spin ratios of 0.03 to 1.13 and from 17 to 69 m/s.',
  'Outside that range the numbers are carried on, and the forecast says "extrapolated".',
  'Against carries from memory a wedge flies 7 % short. A 5-iron carries within 2 % and lands 4° too flat.',
  'Published flight models differ by about 20 m on a drive. Carry is shown with that width.',
  'Names of shots (push, draw, slice) are common practice, without a published source.',
];

/** How a player's film is read, and what was tested of it. */
export const THE_FILM: readonly string[] = [
  'Camera, player and movements are fitted at once to all marks of a film.',
  'The margin is 2.25 standard deviations. A word needs the whole margin clear of the edge.',
  'Tested on made-up films: the model with joint noise, lens distortion and a rolling shutter.',
  'There the margin held 95 to 99 of 100 readings.',
  'Some were drawn in the scene, encoded and opened again. None had motion blur.',
  'H.264, VP8, VP9 and AV1 were decoded frame by frame. HEVC was not.',
  'All marks named the right movement in 72 of 100, two readings in 44.',
  'Not tested: a real phone or tablet, and a real player before a measured camera.',
  'No published accuracy of a shaft plane from one camera was found.',
];

/** How far to trust the model. */
export const TRUST: readonly string[] = [
  'Trust the direction of a change. Trust its size less: players differ.',
  'The verdict bands are common practice without a published source. Change them in Set-up.',
  'Joint angles at both checkpoints are interpolated; no published measurements were found.',
  'Legs, neck and feet are drawn to look right. They enter no number; measured legs set how high the pelvis stands.',
  'No muscles, no ground forces. The shaft is rigid; what bending adds to the loft follows published simulations.',
  'A badly placed camera bends what you see; the plates are free of that. Set-up tells how far.',
];

export const NO_RISK_SCORE = 'Slantwise gives no risk score: the evidence does not support one.';

export const YOUR_DATA = 'Everything stays in this browser. There is no account, and nothing is sent anywhere.';
