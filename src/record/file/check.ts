import { toText } from './text';

/** What is wrong with a record, named by its field. Never leaves the record layer. */
export class Damage extends Error {}

export const damaged = (field: string): never => {
  throw new Damage(field);
};

export type Fields = Readonly<Record<string, unknown>>;

/** The fields of an object that has these and no others. */
export function fieldsOf(value: unknown, name: string, allowed: readonly string[]): Fields {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return damaged(name);
  const keys = Object.keys(value);
  const stranger = keys.find((key) => !allowed.includes(key));
  if (stranger !== undefined) return damaged(`${name}.${stranger.slice(0, 40)}`);
  return keys.length === allowed.length ? (value as Fields) : damaged(name);
}

export function numberIn(value: unknown, name: string, min: number, max: number): number {
  return typeof value === 'number' && value >= min && value <= max ? value + 0 : damaged(name);
}

export function oneOf<T extends string>(value: unknown, name: string, allowed: readonly T[]): T {
  return allowed.includes(value as T) ? (value as T) : damaged(name);
}

export const flag = (value: unknown, name: string): boolean => (typeof value === 'boolean' ? value : damaged(name));

/** A text that is already as it may be kept; what is not was never written by us. */
export function textIn(value: unknown, name: string, most: number): string {
  return typeof value === 'string' && value.length <= most && toText(value) === value ? value : damaged(name);
}

/** A copied list, each entry read on its own. */
export function listOf<T>(value: unknown, name: string, most: number, read: (entry: unknown) => T): readonly T[] {
  return Array.isArray(value) && value.length <= most ? (value as unknown[]).map(read) : damaged(name);
}

/** A list without repetitions out of a few words. */
export function someOf<T extends string>(value: unknown, name: string, allowed: readonly T[]): readonly T[] {
  const list = listOf(value, name, allowed.length, (entry) => oneOf(entry, name, allowed));
  return new Set(list).size === list.length ? list : damaged(name);
}

const ID = /^[0-9a-z][0-9a-z-]{7,39}$/;
export const idIn = (value: unknown, name: string): string =>
  typeof value === 'string' && ID.test(value) ? value : damaged(name);

/** Until the year 2200. */
const LAST_MS = 7_258_118_400_000;
export const timeIn = (value: unknown, name: string): number => {
  const ms = numberIn(value, name, 0, LAST_MS);
  return Number.isInteger(ms) ? ms : damaged(name);
};

/** A day of the calendar that exists. */
export function dateIn(value: unknown, name: string): string {
  if (typeof value !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(value)) return damaged(name);
  const [year, month, day] = value.split('-').map(Number);
  const made = new Date(Date.UTC(year, month - 1, day));
  const exists = year >= 1900 && made.getUTCMonth() === month - 1 && made.getUTCDate() === day;
  return exists ? value : damaged(name);
}
