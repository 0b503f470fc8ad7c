/** Going to the frames on either side of level. */
export const LEVEL = { go: 'Go to the level frames' } as const;

const frames = (count: number): string => `${count} ${count === 1 ? 'frame' : 'frames'}`;

/** What the found camera says about the frame that was picked by eye. `by`: frames from it to the first of the two. */
export function sayLed(by: number): string {
  if (by === 0) return 'The shaft falls through level between this frame and the one before.';
  if (by === -1) return 'The shaft is level just before that frame. Mark this one too.';
  return `In the world the shaft is level ${frames(Math.abs(by))} ${by > 0 ? 'later' : 'earlier'}: here.`;
}

/** Said where the frame is only expected. */
export const EXPECTED_LEVEL = 'The shaft should be about level here. Mark hands and club head.';

/** "Both frames stand to one side of level, which is at frame 871." */
export const sayBesideLevel = (frame: number): string =>
  `Both frames stand to one side of level, which is at frame ${Math.floor(frame) + 1}.`;
