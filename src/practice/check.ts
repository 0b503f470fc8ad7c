import {
  array,
  integer,
  literal,
  maxLength,
  maxValue,
  minValue,
  nullable,
  number,
  picklist,
  pipe,
  regex,
  safeParse,
  strictObject,
  string,
  union,
} from 'valibot';
import { day as date } from '../checking/kept';
import { FELT, MOST_REPETITIONS, PRACTICE_LIMITS, type Practice } from './practice';

const MOST_DRILLS = 3;
const boolean = union([literal(true), literal(false)]);
const schema = strictObject({
  planId: pipe(string(), regex(/^[0-9a-z]{12,24}$/)),
  days: pipe(
    array(
      strictObject({
        date,
        done: pipe(array(boolean), maxLength(MOST_DRILLS)),
        counts: pipe(array(pipe(number(), integer(), minValue(0), maxValue(MOST_REPETITIONS))), maxLength(MOST_DRILLS)),
      }),
    ),
    maxLength(PRACTICE_LIMITS.days),
  ),
  felt: pipe(array(nullable(picklist(FELT))), maxLength(MOST_DRILLS)),
  words: pipe(string(), maxLength(PRACTICE_LIMITS.words)),
});

/** Reads a practice from outside, whole or not at all: lists of one length, days rising and none twice. */
export function readPractice(value: unknown): Practice | undefined {
  const { success, output } = safeParse(schema, value);
  if (!success) return undefined;
  const drills = output.felt.length;
  const areWhole = output.days.every(
    ({ date: day, done, counts }, i) =>
      done.length === drills && counts.length === drills && (i === 0 || output.days[i - 1].date < day),
  );
  return areWhole ? output : undefined;
}
