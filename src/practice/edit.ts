import { MOST_REPETITIONS, PRACTICE_LIMITS, type Felt, type Practice, type PracticeDay } from './practice';

/** Nothing practised yet of a plan with so many drills. */
export const noPractice = (planId: string, drills: number): Practice => ({
  planId,
  days: [],
  felt: Array.from({ length: drills }, () => null),
  words: '',
});

const isEmpty = ({ done, counts }: PracticeDay): boolean =>
  !done.includes(true) && counts.every((count) => count === 0);

/** What was done on a day; nothing where the day has no entry. */
export function practiceOn({ days, felt }: Practice, date: string): PracticeDay {
  const none: PracticeDay = { date, done: felt.map(() => false), counts: felt.map(() => 0) };
  return days.find((day) => day.date === date) ?? none;
}

/** With another entry for its day. A day on which nothing is left done goes; of too many days the oldest goes. */
function withDay(practice: Practice, day: PracticeDay): Practice {
  const others = practice.days.filter(({ date }) => date !== day.date);
  const days = (isEmpty(day) ? others : [...others, day]).toSorted((a, b) => (a.date < b.date ? -1 : 1));
  return { ...practice, days: days.slice(-PRACTICE_LIMITS.days) };
}

const changed = <T>(list: readonly T[], at: number, to: T): readonly T[] => list.map((one, i) => (i === at ? to : one));

/** Ticks a drill (counted from 0) on a day, or takes the tick back. */
export function tickDrill(practice: Practice, date: string, drill: number, isDone: boolean): Practice {
  const day = practiceOn(practice, date);
  return withDay(practice, { ...day, done: changed(day.done, drill, isDone) });
}

/** Counts repetitions of a drill up or down on a day; never below none or above `MOST_REPETITIONS`. */
export function countDrill(practice: Practice, date: string, drill: number, by: number): Practice {
  const day = practiceOn(practice, date);
  const count = Math.min(MOST_REPETITIONS, Math.max(0, (day.counts[drill] ?? 0) + by));
  return withDay(practice, { ...day, counts: changed(day.counts, drill, count) });
}

/** Answers how often a drill was felt. */
export const answerFelt = (practice: Practice, drill: number, felt: Felt): Practice => ({
  ...practice,
  felt: changed(practice.felt, drill, felt),
});

/** The line to the coach, cut to what it may be. */
export const writeWords = (practice: Practice, words: string): Practice => ({
  ...practice,
  words: words.slice(0, PRACTICE_LIMITS.words),
});
