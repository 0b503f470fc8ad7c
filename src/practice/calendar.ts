/** A reminder for every day of practice. */
export interface Reminder {
  /** Tells this reminder from others; the same again replaces it. */
  readonly uid: string;
  /** When the file was made, in UTC: "20261202T101500Z". */
  readonly stamp: string;
  /** First and last day, "2026-12-02". */
  readonly from: string;
  readonly until: string;
  readonly title: string;
  readonly text: string;
}

/** Most bytes of a line without its end (RFC 5545, 3.1). */
const LONGEST_LINE = 75;
/** Time of day of the reminder, where the device is: a floating time (RFC 5545, 3.3.5, form 1). */
const AT = '180000';
const LASTS = 'PT15M';

/** Backslash, semicolon, comma and line ends as a text value has them (RFC 5545, 3.3.11). */
const escapeText = (text: string): string =>
  text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r\n|\r|\n/g, '\\n');

/** Folds a line after at most 75 bytes, between characters; what goes on begins with a space (RFC 5545, 3.1). */
function fold(line: string): string {
  const encoder = new TextEncoder();
  const lines: string[] = [''];
  let size = 0;
  for (const character of line) {
    const bytes = encoder.encode(character).length;
    if (size + bytes > LONGEST_LINE) {
      lines.push(' ');
      size = 1;
    }
    lines[lines.length - 1] += character;
    size += bytes;
  }
  return lines.join('\r\n');
}

const compact = (day: string): string => day.replaceAll('-', '');

/**
 * A calendar file (RFC 5545) with one event a day at six in the evening, from the first day to the last, each with a display alarm at its
 * beginning.
 */
export function toCalendar({ uid, stamp, from, until, title, text }: Reminder): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Slantwise//Practice//EN',
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${compact(from)}T${AT}`,
    `DURATION:${LASTS}`,
    // The last day may be given as a local time where the start is one (RFC 5545, 3.3.10).
    `RRULE:FREQ=DAILY;UNTIL=${compact(until)}T${AT}`,
    `SUMMARY:${escapeText(title)}`,
    `DESCRIPTION:${escapeText(text)}`,
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    'TRIGGER:PT0S',
    `DESCRIPTION:${escapeText(title)}`,
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${fold(line)}\r\n`).join('');
}
