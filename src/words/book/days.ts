const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** "2026-11-25" where the device is. */
export function toDay(ms: number): string {
  const day = new Date(ms);
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** "25 Nov 2026" of a day "2026-11-25". */
export function sayDay(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}

/** "25 Nov" of a day "2026-11-25". */
export const sayShortDay = (day: string): string => sayDay(day).replace(/ \d{4}$/, '');

/** "14:02" today, "25 Nov 2026" before. */
export function sayWhen(ms: number, nowMs: number): string {
  if (toDay(ms) !== toDay(nowMs)) return sayDay(toDay(ms));
  const at = new Date(ms);
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}
