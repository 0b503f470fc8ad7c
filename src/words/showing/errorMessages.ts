/** How Chromium, Firefox and Safari say that a part of the app did not arrive; no standard words it (from memory). */
const NOT_ARRIVED = /dynamically imported module|^Importing a module script failed/;

/** Said of what did not arrive: a browser may remember that, and trying again would be of no use while the page stands. */
const sayNotArrived = (what: string, rest: string): string =>
  `${what} is fetched when it is needed, and did not arrive. ${rest} Once there is a network, load the page again.`;

/** Why a storyboard could not be drawn. */
export const sayNoStoryboard = (error: unknown): string =>
  error instanceof Error && NOT_ARRIVED.test(error.message)
    ? sayNotArrived('What draws it', 'There is no storyboard.')
    : 'The storyboard could not be drawn on this device.';

/** Why something could not be made, in words: what happened, and what to do. */
export function sayError(error: unknown, wasHidden: boolean): string {
  const nothing = 'No file was made.';
  const { name, message } = error instanceof Error ? error : { name: '', message: String(error) };
  if (name === 'Stopped') return 'Stopped. No file was made.';
  if (NOT_ARRIVED.test(message)) return sayNotArrived('What makes it', nothing);
  if (name === 'PictureLost')
    return `The graphics of this device took the picture away. ${nothing} Try again, or a smaller size.`;
  if (wasHidden) return `The page was hidden and the work stopped. ${nothing} Keep the page in front and try again.`;
  if (name === 'QuotaExceededError' || name === 'RangeError')
    return `There is not enough memory for this. ${nothing} Try a smaller size or a shorter clip.`;
  if (name === 'EncodingError' || name === 'OperationError' || name === 'InvalidStateError')
    return `The encoder of this device gave up. ${nothing} Try another format or a smaller size.`;
  return `It could not be made: ${message.replace(/\.?$/, '.')} ${nothing}`;
}

/** Said in place of a part of the app that did not arrive, and when asking again brought no answer either. */
export const PART_NOT_ARRIVED = sayNotArrived('It', 'Everything else goes on.');
export const STILL_NO_ANSWER =
  'There is still no answer. This page stays as it is: try once more when there is a network.';

/** The same of a link or a file. */
export const LINK_NOT_OPENED = sayNotArrived('What opens it', 'Nothing was changed.');
/** Said while a part of the app is on its way. */
export const sayFetching = (part: 'bench' | 'clip maker' | 'film desk' | 'lesson book'): string =>
  `Fetching the ${part} …`;

export const REST_IS_SAFE = 'Player, club, movements, undo steps and the lesson book are safe.';
