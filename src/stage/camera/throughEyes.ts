import { rad } from '../../math/angle';
import { PART } from '../../figure/partIds';
import { pointOfPart } from '../../figure/place';
import { placeGaze } from '../../figure/stance';
import type { Insets, View } from '../../scene/camera/view';
import type { Place } from '../../scene/lines/lineBatch';
import type { SceneFrame } from '../../scene/sceneFrame';

/** Hands and feet come into the picture from a hand's breadth above the eyes, m, and from this share of the way to the hands' side. */
const RAISED = 0.17;
const TOWARD_HANDS = 0.5;
/** From straight ahead down to where one looks: never quite to his own feet, or the picture would turn round. */
const STEEPEST = rad(89);
/** How far back the eye steps at most to see what lies below it, m. */
const BACK = 0.4;
/** The field of view is as narrow as hands, ball and feet let it, between these. */
const FOV = { least: rad(52), most: rad(84) } as const;
/** Room round them, share of the picture's half. */
const ROOM = 1.15;
/** How far the view's target is off, m. */
const TARGET_AT = 1.6;

/** What he should see, by their parts' origins. */
const SEEN = [PART.fistLead, PART.fistTrail, PART.footLead, PART.footTrail] as const;

const eye = new Float64Array(3);
const gaze = new Float64Array(3);
const point = new Float64Array(3);

/**
 * What the player sees: until the ball is struck hands, ball and feet, level with the target line wherever the head sways; after it what
 * he looks at. `width` and `height` of the picture, css px.
 */
export function viewThroughEyes(
  { figure, placement, ball, heelLift }: SceneFrame,
  width: number,
  height: number,
  insets: Insets,
): View {
  const { k } = figure!.measures;
  pointOfPart(placement, PART.headEgg, 0, 0.07 * k + RAISED, 0.05 * k, eye);
  placeGaze(ball, heelLift, eye, gaze);
  const turn = Math.max(0, Math.min(1, (heelLift - 0.45) * 2));
  pointOfPart(placement, PART.fistTrail, 0, 0, 0, point);
  eye[0] += (point[0] - eye[0]) * TOWARD_HANDS * (1 - turn);

  const down = lookDown(placement, ball, 1 - turn);
  const { tall, wide } = reachOf(placement, ball, down);
  const freeWidth = Math.max(0.3 * width, width - 2 * Math.max(insets.left, insets.right));
  const freeHeight = Math.max(0.3 * height, height - 2 * Math.max(insets.top, insets.bottom));
  const half = Math.atan(ROOM * height * Math.max(tall / freeHeight, wide / freeWidth));
  const fov = Math.max(FOV.least, Math.min(FOV.most, 2 * half));

  // From the target back to the eye, from either way of looking.
  const far = Math.hypot(gaze[0] - eye[0], gaze[1] - eye[1], gaze[2] - eye[2]);
  const x = (turn * (eye[0] - gaze[0])) / far;
  const y = (turn * (eye[1] - gaze[1])) / far + (1 - turn) * Math.sin(down);
  const z = (turn * (eye[2] - gaze[2])) / far - (1 - turn) * Math.cos(down);
  const size = Math.hypot(x, y, z);
  const target: Place = [
    eye[0] - (x / size) * TARGET_AT,
    eye[1] - (y / size) * TARGET_AT,
    eye[2] - (z / size) * TARGET_AT,
  ];
  return { target, yaw: Math.atan2(x, z), pitch: Math.asin(y / size), distance: TARGET_AT, fov };
}

/**
 * How far down the eye looks to have them in the middle of the picture, rad below the horizon. Where it would have to look back past
 * straight down, it steps back itself, `share` of the way.
 */
function lookDown(placement: Float64Array, ball: ArrayLike<number>, share: number): number {
  const at = eye[2];
  for (let i = 0; i < 4; i++) {
    const past = middleOf(placement, ball) - STEEPEST;
    eye[2] -= share * Math.max(0, Math.tan(past));
    if (past <= 0 || eye[2] < at - BACK) break;
  }
  eye[2] = Math.max(eye[2], at - BACK);
  return Math.min(STEEPEST, middleOf(placement, ball));
}

/** Half way between the first and the last of them, as they are seen from the eye: rad below the horizon. */
function middleOf(placement: Float64Array, ball: ArrayLike<number>): number {
  let [least, most] = [Infinity, -Infinity];
  eachSeen(placement, ball, (_, dy, dz) => {
    const down = Math.atan2(-dy, dz);
    least = Math.min(least, down);
    most = Math.max(most, down);
  });
  return (least + most) / 2;
}

/** How far they lie off the middle of the picture, up or down and to a side, shares of their depth. */
function reachOf(
  placement: Float64Array,
  ball: ArrayLike<number>,
  down: number,
): { readonly tall: number; readonly wide: number } {
  const [s, c] = [Math.sin(down), Math.cos(down)];
  let [tall, wide] = [0, 0];
  eachSeen(placement, ball, (dx, dy, dz) => {
    const depth = Math.max(0.2, dz * c - dy * s);
    tall = Math.max(tall, Math.abs(dy * c + dz * s) / depth);
    wide = Math.max(wide, Math.abs(dx) / depth);
  });
  return { tall, wide };
}

/** Each of them as seen from the eye, m. */
function eachSeen(
  placement: Float64Array,
  ball: ArrayLike<number>,
  see: (dx: number, dy: number, dz: number) => void,
): void {
  see(ball[0] - eye[0], ball[1] - eye[1], ball[2] - eye[2]);
  for (const part of SEEN) {
    pointOfPart(placement, part, 0, 0, 0, point);
    see(point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]);
  }
}
