import type { BookState } from './bookState';
import type { Edit } from './edits';
import { migrate } from './migrations';
import type { Meta } from '../storage/storagePort';
import type { BookRecord } from './recordTypes';
import { readRecord } from '../file/validate';

/** The later change is the newer word. */
export const isNewer = (theirs: BookRecord, ours: BookRecord | undefined): boolean =>
  !ours || theirs.changedMs > ours.changedMs;

/** Whether something in the store is about this player, read or unreadable. */
export function isOf(raw: unknown, playerId: string, ids: ReadonlySet<string>): boolean {
  if (typeof raw !== 'object' || raw === null) return false;
  const { id, playerId: of } = raw as { id?: unknown; playerId?: unknown };
  return of === playerId || ids.has(id as string);
}

/** Lessons written since the last backup. Those of the example do not count. */
export function countLessons(meta: Meta, records: BookState['records'], { put, remove }: Edit): Meta {
  const isExample = (playerId: string): boolean => {
    const player = put.find(({ id }) => id === playerId) ?? records.get(playerId);
    return player?.kind === 'player' && player.example;
  };
  const lessons = new Set(meta.unsavedLessons);
  for (const record of put) if (record.kind === 'lesson' && !isExample(record.playerId)) lessons.add(record.id);
  for (const id of remove) lessons.delete(id);
  return { ...meta, unsavedLessons: [...lessons] };
}

/** Records sent by another tab, which may run an older or newer program: those that can be read, migrated. */
export const readLate = (records: readonly unknown[]): readonly BookRecord[] =>
  records.flatMap((raw) => {
    const read = readRecord(migrate(raw));
    return 'record' in read ? [read.record] : [];
  });
