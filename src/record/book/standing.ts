import type { BookStanding } from '../../words/book/book';
import type { BookState } from './bookState';
import { isOfExampleId } from './example';
import type { BookRecord } from './recordTypes';

const DAY_MS = 86_400_000;
/** When to remind of a backup: after so many days or so many lessons. */
const REMIND_DAYS = 7;
const REMIND_LESSONS = 5;

/** Whether to remind: lessons are waiting for a backup, many of them or for long. */
function needsBackup({ meta, records }: BookState, nowMs: number): boolean {
  const waiting = meta.unsavedLessons.length;
  if (waiting === 0) return false;
  const first = (): number => Math.min(...meta.unsavedLessons.map((id) => records.get(id)?.createdMs ?? nowMs));
  const since = meta.lastBackupMs ?? first();
  return waiting >= REMIND_LESSONS || nowMs - since >= REMIND_DAYS * DAY_MS;
}

function isOfExample(records: BookState['records'], record: BookRecord): boolean {
  const player = record.kind === 'player' ? record : records.get(record.playerId);
  return player?.kind === 'player' && player.example;
}

/** How the book stands: what is kept of the coach's own, and whether it is time for a backup. */
export function standingOf(state: BookState, nowMs: number): BookStanding {
  const { mode, saving, savedMs, records, meta } = state;
  const own = [...records.values()].filter((record) => !isOfExample(records, record));
  // A book that has only ever held the example has nothing to lose: what fails is tried again without a word.
  const isAtStake = (of: readonly string[] = []): boolean =>
    mode !== 'writing' || own.length > 0 || of.some((id) => !isOfExampleId(id));
  return {
    mode,
    meta,
    problem: saving.phase === 'failed' && isAtStake(saving.of) ? saving.problem : null,
    isSaved: saving.phase === 'saved',
    lastMs: own.length === 0 ? null : (savedMs ?? Math.max(...own.map(({ changedMs }) => changedMs))),
    needsBackup: needsBackup(state, nowMs),
  };
}
