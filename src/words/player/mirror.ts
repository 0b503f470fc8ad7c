import { CHILDREN } from './page';

const BESIDE = 'Hold the picture beside a mirror instead.';

/** Why the mirror shows no camera picture, and what to do about it. */
export const CAMERA_WORDS = {
  off: 'Lean the device on something at hip height, three metres away.',
  asking: 'The browser asks whether this page may use the camera.',
  stopped: 'The camera was stopped when the page was hidden.',
  lost: 'The camera was switched off or taken away.',
  refused: `The camera is not allowed here. The browser’s settings for this page can allow it. ${BESIDE}`,
  none: `No camera was found on this device. ${BESIDE}`,
  busy: `The camera is in use by something else. Close that, then try again. ${BESIDE}`,
  unable: `This browser gives no camera to this page. ${BESIDE}`,
} as const;

export const MIRROR_CAUTION = `Make room to swing, with nobody near. Move slowly. Stop if it hurts. ${CHILDREN}`;

export const MIRROR_FINE_PRINT = 'Nothing is recorded. The camera measures nothing here.';

export const NEVER_THERE = 'This swing never reaches that checkpoint.';

/** What to do: hold a pose, or make the contour one's own size. */
export const MIRROR_TASK = {
  hold: { title: 'Stand in the ink. Hold five seconds.' },
  fit: {
    title: 'Stand at the ball, inside the ink.',
    how: 'Drag the lines to your head and feet.',
    contour: 'Contour of the player at address',
  },
} as const;

/** "Lead arm parallel, face on" */
export const sayPose = (checkpoint: string, side: 'faceOn' | 'downTheLine'): string =>
  `${checkpoint}, ${side === 'faceOn' ? 'face on' : 'down the line'}`;

/** What the contour is, for a screen reader. */
export const sayContour = (pose: string): string => `Contour of the pose: ${pose}`;

/** Beside the number itself: "of 10 held". */
export const sayHeld = (held: number, goal: number): string => (held <= goal ? `of ${goal} held` : 'held');
