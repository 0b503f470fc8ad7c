import { PRACTICE_LIMITS, type Practice, type PracticeDay } from './practice';

const filled = <T>(list: readonly T[], length: number, empty: T): T[] =>
  Array.from({ length }, (_, i) => list[i] ?? empty);

function mergeDay(kept: PracticeDay | undefined, come: PracticeDay | undefined, drills: number): PracticeDay {
  const { date } = (come ?? kept)!;
  return {
    date,
    done: filled([], drills, false).map((_, i) => (kept?.done[i] ?? false) || (come?.done[i] ?? false)),
    counts: filled([], drills, 0).map((_, i) => Math.max(kept?.counts[i] ?? 0, come?.counts[i] ?? 0)),
  };
}

/**
 * Two practices of one plan as one. For each day and drill the higher count and any tick stand. Answers and words are those of the
 * practice that reaches farther, or came now where both reach as far; where it gives none, the other's stay. Of too many days the oldest go.
 */
export function mergePractice(kept: Practice, come: Practice): Practice {
  const drills = Math.max(kept.felt.length, come.felt.length);
  const dates = [...new Set([...kept.days, ...come.days].map(({ date }) => date))].toSorted();
  const on = ({ days }: Practice, date: string) => days.find((day) => day.date === date);
  const isNewer = (come.days.at(-1)?.date ?? '') >= (kept.days.at(-1)?.date ?? '');
  const [first, second] = isNewer ? [come, kept] : [kept, come];
  return {
    planId: kept.planId,
    days: dates.map((date) => mergeDay(on(kept, date), on(come, date), drills)).slice(-PRACTICE_LIMITS.days),
    felt: filled([], drills, null).map((_, i) => first.felt[i] ?? second.felt[i] ?? null),
    words: first.words || second.words,
  };
}

/** What came with a practice, against what was there before. */
export interface Gained {
  readonly newDays: number;
  readonly fullerDays: number;
  readonly newAnswers: boolean;
  readonly newWords: boolean;
}

/** What `merged` has that `kept` has not; nothing where both say the same. */
export function gainedBy(kept: Practice, merged: Practice): Gained | undefined {
  if (JSON.stringify(kept) === JSON.stringify(merged)) return undefined;
  const before = new Map(kept.days.map((day) => [day.date, JSON.stringify(day)]));
  return {
    newDays: merged.days.filter(({ date }) => !before.has(date)).length,
    fullerDays: merged.days.filter((day) => (before.get(day.date) ?? JSON.stringify(day)) !== JSON.stringify(day))
      .length,
    newAnswers: JSON.stringify(kept.felt) !== JSON.stringify(merged.felt),
    newWords: kept.words !== merged.words,
  };
}
