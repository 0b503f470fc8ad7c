/*
 * Days of the Gregorian calendar as whole numbers, without a clock: the day number counts from 1970-01-01 (a Thursday). Years run from
 * March, so that a leap day comes last.
 */

const DAYS_IN_ERA = 146_097;

function toNumber(day: string): number {
  const [year, month, date] = day.split('-').map(Number);
  const y = month > 2 ? year : year - 1;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + date - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_IN_ERA + dayOfEra - 719_468;
}

function fromNumber(number: number): string {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / DAYS_IN_ERA);
  const dayOfEra = shifted - era * DAYS_IN_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  const year = era * 400 + yearOfEra + (month <= 2 ? 1 : 0);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

/** A day so many days after another, "2026-12-02"; before it where `days` is negative. */
export const dayAfter = (day: string, days: number): string => fromNumber(toNumber(day) + days);

/** The week, Monday first, in which a day lies. */
export function weekOf(day: string): readonly string[] {
  const number = toNumber(day);
  // Day 0 was a Thursday, three days after a Monday.
  const sinceMonday = (((number + 3) % 7) + 7) % 7;
  return Array.from({ length: 7 }, (_, i) => fromNumber(number + i - sinceMonday));
}
