import type { ClubId } from '../../model/club';
import type { Player } from '../../model/body';
import type { Document } from '../../store/document/document';
import { NOTHING_SEEN } from '../../store/document/sighting';
import type { Records } from '../file/importPlan';
import { recordsOf } from '../file/importPlan';
import { stillsOf } from './lists';
import {
  LIMITS,
  RECORD_VERSION,
  type BookRecord,
  type Computed,
  type LessonRecord,
  type PlayerRecord,
  type SwingRecord,
} from './recordTypes';
import { firstOf, toName, toText } from '../../checking/text';

/** A change of the book: records to store and ids to remove. Undone by restoring what was there. */
export interface Edit {
  readonly label: string;
  readonly put: readonly BookRecord[];
  readonly remove: readonly string[];
}

/** Id and time of a new record. */
export interface Birth {
  readonly id: string;
  readonly nowMs: number;
}

/** The head of a new record. */
export const bornNow = ({ id, nowMs }: Birth) =>
  ({ id, version: RECORD_VERSION, createdMs: nowMs, changedMs: nowMs }) as const;

/** A name as it may be kept: one line, trimmed, cut to length. */
export const cleanName = (raw: string): string => firstOf(toName(raw), LIMITS.name).trim();

/** Notes as they may be kept: cut to length. */
export const cleanNotes = (raw: string): string => firstOf(toText(raw), LIMITS.notes);

/** A name nobody has yet: "Ann", "Ann 2", "Ann 3". */
export function freeName(book: Records, wanted: string): string {
  const names = new Set([...book.values()].map((record) => (record.kind === 'player' ? record.name : '')));
  const base = cleanName(wanted) || 'Player';
  if (!names.has(base)) return base;
  for (let number = 2; ; number++) {
    const name = `${firstOf(base, LIMITS.name - 6)} ${number}`;
    if (!names.has(name)) return name;
  }
}

/** A new player. */
export function addPlayer(book: Records, birth: Birth, name: string, body: Player, club: ClubId | null): Edit {
  const player: PlayerRecord = {
    kind: 'player',
    ...bornNow(birth),
    name: freeName(book, name),
    body,
    clubs: club === null ? [] : [club],
    notes: '',
    archived: false,
    example: false,
  };
  return { label: `Add ${player.name}`, put: [player], remove: [] };
}

type OfPlayer = Partial<Pick<PlayerRecord, 'name' | 'body' | 'clubs' | 'notes' | 'archived'>>;
type OfLesson = Partial<Pick<LessonRecord, 'date' | 'now' | 'computedCm' | 'notes' | 'practice' | 'guesses' | 'film'>>;

/** The same record with some fields new. The later of clock and last change: a clock set back must not make it older. */
export const touched = <R extends BookRecord>(record: R, nowMs: number, fields: Partial<R>): R => ({
  ...record,
  ...fields,
  changedMs: Math.max(nowMs, record.changedMs + 1),
});

/** Changes fields of a player. */
export function editPlayer(player: PlayerRecord, nowMs: number, fields: OfPlayer, label: string): Edit {
  return { label, put: [touched(player, nowMs, fields)], remove: [] };
}

/** Without the mark of an earlier model: its readings are computed anew. */
function asOfToday<R extends LessonRecord | SwingRecord>({ computedBy: _, ...record }: R): Omit<R, 'computedBy'> {
  return record;
}

/** Changes fields of a lesson. New readings are today's model's. */
export function editLesson(lesson: LessonRecord, nowMs: number, fields: OfLesson, label: string): Edit {
  const edited: LessonRecord = fields.computedCm ? asOfToday(lesson) : lesson;
  return { label, put: [touched(edited, nowMs, fields)], remove: [] };
}

/** A lesson with the desk, and the readings, of another state of it. */
export const withDeskOf = (lesson: LessonRecord, { now, computedCm, computedBy }: LessonRecord): LessonRecord => ({
  ...asOfToday(lesson),
  now,
  computedCm,
  ...(computedBy !== undefined && { computedBy }),
});

/** Readings of a saved swing computed anew. */
export function recomputeSwing(swing: SwingRecord, nowMs: number, computedCm: Computed): Edit {
  return { label: '', put: [touched<SwingRecord>(asOfToday(swing), nowMs, { computedCm })], remove: [] };
}

/** Gives a saved swing another name. */
export function renameSwing(swing: SwingRecord, nowMs: number, name: string): Edit {
  return { label: 'Rename swing', put: [touched(swing, nowMs, { name })], remove: [] };
}

/** A player with everything about him once more, under a new name. */
export function duplicatePlayer(book: Records, player: PlayerRecord, births: () => Birth): Edit {
  const first = births();
  const name = freeName(book, player.name);
  const records = recordsOf(book, player.id);
  const birthOf = new Map(records.map(({ id, kind }) => [id, kind === 'player' ? first : births()]));
  const copies = records.flatMap((record): BookRecord[] => {
    const birth = bornNow(birthOf.get(record.id)!);
    if (record.kind === 'player') return [{ ...record, ...birth, name, example: false }];
    if (record.kind !== 'still') return [{ ...record, ...birth, playerId: first.id }];
    const lesson = birthOf.get(record.lessonId);
    return lesson ? [{ ...record, ...birth, playerId: first.id, lessonId: lesson.id }] : [];
  });
  return { label: `Duplicate ${player.name}`, put: copies, remove: [] };
}

/** Deletes a player with all lessons and swings. */
export function deletePlayer(book: Records, player: PlayerRecord): Edit {
  return { label: `Delete ${player.name}`, put: [], remove: recordsOf(book, player.id).map(({ id }) => id) };
}

/** Deletes a lesson with its stills. */
export function deleteLesson(book: Records, { id }: LessonRecord): Edit {
  return { label: 'Delete lesson', put: [], remove: [id, ...stillsOf(book, id).map((still) => still.id)] };
}

/** Deletes one record. */
export const deleteRecord = ({ id }: BookRecord, label: string): Edit => ({ label, put: [], remove: [id] });

/** A new lesson that goes on from a desk: its plan is carried over, what is seen today is still to be seen. */
export function addLesson(birth: Birth, playerId: string, date: string, now: Document, computedCm: Computed): Edit {
  const lesson: LessonRecord = {
    kind: 'lesson',
    ...bornNow(birth),
    playerId,
    date,
    now: { ...now, seen: NOTHING_SEEN },
    computedCm,
    notes: '',
  };
  return { label: 'New lesson', put: [lesson], remove: [] };
}

/** A copy of a lesson under another date. What the player practised and guessed, and his film, stay with the first. */
export function duplicateLesson(
  { practice: _practice, guesses: _guesses, film: _film, ...lesson }: LessonRecord,
  birth: Birth,
  date: string,
): Edit {
  return { label: 'Duplicate lesson', put: [{ ...lesson, ...bornNow(birth), date }], remove: [] };
}

/** Saves the swing on the desk under a name. */
export function keepSwing(birth: Birth, playerId: string, name: string, now: Document, computedCm: Computed): Edit {
  const swing: SwingRecord = {
    kind: 'swing',
    ...bornNow(birth),
    playerId,
    name: cleanName(name) || 'Swing',
    now,
    computedCm,
  };
  return { label: `Keep ${swing.name}`, put: [swing], remove: [] };
}

/** What puts back what an edit changes. */
export function inverseOf(book: Records, { label, put, remove }: Edit): Edit {
  const ids = [...put.map(({ id }) => id), ...remove];
  const before = ids.map((id) => book.get(id)).filter((record) => record !== undefined);
  return { label, put: before, remove: put.map(({ id }) => id).filter((id) => !book.has(id)) };
}
