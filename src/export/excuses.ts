import { Stopped } from './making';

/** Why something could not be made, in words: what happened, and what to do. */
export function sayExcuse(error: unknown, wasHidden: boolean): string {
  if (error instanceof Stopped) return 'Stopped. No file was made.';
  const nothing = 'No file was made.';
  const { name, message } = error instanceof Error ? error : { name: '', message: String(error) };
  if (name === 'PictureLost')
    return `The graphics of this device took the picture away. ${nothing} Try again, or a smaller size.`;
  if (wasHidden) return `The page was hidden and the work stopped. ${nothing} Keep the page in front and try again.`;
  if (name === 'QuotaExceededError' || name === 'RangeError')
    return `There is not enough memory for this. ${nothing} Try a smaller size or a shorter clip.`;
  if (name === 'EncodingError' || name === 'OperationError' || name === 'InvalidStateError')
    return `The encoder of this device gave up. ${nothing} Try another format or a smaller size.`;
  return `It could not be made: ${message.replace(/\.?$/, '.')} ${nothing}`;
}
