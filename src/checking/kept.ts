import { check, pipe, regex, string } from 'valibot';
import { textUpTo } from './schemas';
import { toText } from './text';

/** Why a text is refused that holds more than it shows. */
export const NOT_KEPT = 'Not as Slantwise keeps a text.';

/** Whether a text is as it may be kept: whole characters, nothing unseen. */
export const isKept = (text: string): boolean => toText(text) === text;

/** A text that is already as it may be kept; what is not was never written by us. */
export const keptText = (longest: number) => pipe(textUpTo(longest), check(isKept, NOT_KEPT));

/** A day of the calendar, "2026-11-25". */
export const day = pipe(
  string(),
  regex(/^\d{4}-\d\d-\d\d$/, 'Not a day of the calendar. Expected one like 2026-11-25.'),
  check(isDay, 'Not a day of the calendar. Expected one like 2026-11-25.'),
);

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

function isDay(text: string): boolean {
  const [year, month, date] = text.split('-').map(Number);
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const last = month === 2 && isLeap ? 29 : DAYS[month - 1];
  return year >= 1900 && date >= 1 && last !== undefined && date <= last;
}
