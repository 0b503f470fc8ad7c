import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Records } from '../file/importPlan';
import type { LessonRecord, PlayerRecord, StillRecord, SwingRecord } from './recordTypes';

export type SortBy = 'name' | 'lastLesson';

/** A line of the list of players. */
export interface Listed {
  readonly player: PlayerRecord;
  readonly lessons: number;
  readonly lastDate: string | null;
}

const collator = new Intl.Collator(undefined, { sensitivity: 'base', numeric: true });
/** For searching: without accents and capitals. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** What is written in a lesson's plan. */
const textOf = ({ now: { plan } }: LessonRecord): string =>
  plan ? [plan.feel, ...plan.drills.map(({ name }) => name), plan.words].join('\n') : '';

/** The players that match, sorted. Search looks into names, notes of players, and notes and plans of lessons. */
export function listPlayers(book: Records, search: string, sortBy: SortBy, withArchived: boolean): Listed[] {
  const wanted = plain(search.trim());
  const lines = new Map<string, { player: PlayerRecord; lessons: number; lastDate: string | null; text: string }>();
  for (const record of book.values()) {
    if (record.kind !== 'player' || (record.archived && !withArchived)) continue;
    lines.set(record.id, { player: record, lessons: 0, lastDate: null, text: `${record.name}\n${record.notes}` });
  }
  for (const record of book.values()) {
    const line = record.kind === 'lesson' ? lines.get(record.playerId) : undefined;
    if (!line || record.kind !== 'lesson') continue;
    line.lessons++;
    if (line.lastDate === null || record.date > line.lastDate) line.lastDate = record.date;
    if (wanted !== '') line.text += `\n${record.notes}\n${textOf(record)}`;
  }
  return [...lines.values()]
    .filter(({ text }) => wanted === '' || plain(text).includes(wanted))
    .toSorted((a, b) => {
      const byName = collator.compare(a.player.name, b.player.name);
      return sortBy === 'name' ? byName : (b.lastDate ?? '').localeCompare(a.lastDate ?? '') || byName;
    })
    .map(({ player, lessons, lastDate }) => ({ player, lessons, lastDate }));
}

/** Lessons of a player, the latest first; of one day, the one written later first. */
export const lessonsOf = (book: Records, playerId: string): LessonRecord[] =>
  [...book.values()]
    .filter((record): record is LessonRecord => record.kind === 'lesson' && record.playerId === playerId)
    .toSorted((a, b) => b.date.localeCompare(a.date) || b.createdMs - a.createdMs);

/** The saved swings of a player, by name. */
export const swingsOf = (book: Records, playerId: string): SwingRecord[] =>
  [...book.values()]
    .filter((record): record is SwingRecord => record.kind === 'swing' && record.playerId === playerId)
    .toSorted((a, b) => collator.compare(a.name, b.name));

/** The stills of a lesson, lead arm parallel first. */
export const stillsOf = (book: Records, lessonId: string): StillRecord[] =>
  [...book.values()]
    .filter((record): record is StillRecord => record.kind === 'still' && record.lessonId === lessonId)
    .toSorted((a, b) => CHECKPOINT_IDS.indexOf(a.of) - CHECKPOINT_IDS.indexOf(b.of));
