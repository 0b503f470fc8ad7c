import { CLUB_IDS } from '../../model/club';
import { MOVEMENT_GROUPS } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import { DOCUMENT_VERSION, type Document } from '../../store/document/document';
import { readDocument, readPart } from '../../store/document/validate';
import {
  damaged,
  Damage,
  dateIn,
  fieldsOf,
  flag,
  idIn,
  listOf,
  numberIn,
  oneOf,
  someOf,
  textIn,
  timeIn,
  type Fields,
} from './check';
import {
  KINDS,
  LIMITS,
  RECORD_VERSION,
  type BookRecord,
  type Computed,
  type Kind,
  type LessonRecord,
  type PlayerRecord,
  type SwingRecord,
  type Target,
} from '../book/recordTypes';
import { toName, toText } from './text';

/** A record, read; or why it cannot be: a newer program wrote it, or this field of it is damaged. */
export type ReadRecord = { readonly record: BookRecord } | { readonly newer: true } | { readonly damage: string };

const kept = (given: Fields) => ({
  id: idIn(given['id'], 'id'),
  version: RECORD_VERSION as typeof RECORD_VERSION,
  createdMs: timeIn(given['createdMs'], 'createdMs'),
  changedMs: timeIn(given['changedMs'], 'changedMs'),
});
const KEPT = ['kind', 'id', 'version', 'createdMs', 'changedMs'];

function nameIn(value: unknown, name: string): string {
  const text = textIn(value, name, LIMITS.name);
  return text !== '' && toName(text) === text ? text : damaged(name);
}

function documentIn(value: unknown, name: string): Document {
  const read = readDocument(value);
  if (!('document' in read)) return damaged(`${name}: ${read.problem}`);
  const { my } = read.document.club;
  return my && toText(my.name) !== my.name ? damaged(`${name}.club.my.name`) : read.document;
}

/** One section of a document standing alone, read by the document's own reader. */
function sectionIn<S extends 'player' | 'movements'>(value: unknown, section: S, name: string): Document[S] {
  const read = readPart({ [section]: value });
  return read?.[section] ?? damaged(name);
}

const CHECKPOINTS: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];

function computedIn(value: unknown, name: string): Computed {
  const given = fieldsOf(value, name, CHECKPOINTS);
  const one = (id: CheckpointId): number | null =>
    given[id] === null ? null : numberIn(given[id], `${name}.${id}`, -1000, 1000);
  return { leadArmParallel: one('leadArmParallel'), shaftParallel: one('shaftParallel') };
}

function targetIn(value: unknown): Target | null {
  if (value === null) return null;
  const { movements, computedCm } = fieldsOf(value, 'target', ['movements', 'computedCm']);
  return {
    movements: sectionIn(movements, 'movements', 'target.movements'),
    computedCm: computedIn(computedCm, 'target.computedCm'),
  };
}

function readPlayer(value: unknown): PlayerRecord {
  const given = fieldsOf(value, 'player', [...KEPT, 'name', 'body', 'clubs', 'notes', 'archived', 'example']);
  return {
    kind: 'player',
    ...kept(given),
    name: nameIn(given['name'], 'name'),
    body: sectionIn(given['body'], 'player', 'body'),
    clubs: someOf(given['clubs'], 'clubs', CLUB_IDS),
    notes: textIn(given['notes'], 'notes', LIMITS.notes),
    archived: flag(given['archived'], 'archived'),
    example: flag(given['example'], 'example'),
  };
}

const OF_LESSON = ['playerId', 'date', 'now', 'computedCm', 'target', 'plan', 'drills', 'notes'];

function readLesson(value: unknown): LessonRecord {
  const given = fieldsOf(value, 'lesson', [...KEPT, ...OF_LESSON]);
  return {
    kind: 'lesson',
    ...kept(given),
    playerId: idIn(given['playerId'], 'playerId'),
    date: dateIn(given['date'], 'date'),
    now: documentIn(given['now'], 'now'),
    computedCm: computedIn(given['computedCm'], 'computedCm'),
    target: targetIn(given['target']),
    plan: someOf(given['plan'], 'plan', MOVEMENT_GROUPS),
    drills: listOf(given['drills'], 'drills', LIMITS.drills, (one) => textIn(one, 'drills', LIMITS.drill)),
    notes: textIn(given['notes'], 'notes', LIMITS.notes),
  };
}

function readSwing(value: unknown): SwingRecord {
  const given = fieldsOf(value, 'swing', [...KEPT, 'playerId', 'name', 'now', 'computedCm']);
  return {
    kind: 'swing',
    ...kept(given),
    playerId: idIn(given['playerId'], 'playerId'),
    name: nameIn(given['name'], 'name'),
    now: documentIn(given['now'], 'now'),
    computedCm: computedIn(given['computedCm'], 'computedCm'),
  };
}

const READERS: { readonly [K in Kind]: (value: unknown) => BookRecord } = {
  player: readPlayer,
  lesson: readLesson,
  swing: readSwing,
};

/** True when a part of the record was written by a newer program: its own version, or that of the desk inside it. */
function isNewer(value: object): boolean {
  const { version, now } = value as { version?: unknown; now?: unknown };
  const inside = typeof now === 'object' && now !== null ? (now as { version?: unknown }).version : undefined;
  const over = (number: unknown, ours: number): boolean => Number.isInteger(number) && (number as number) > ours;
  return over(version, RECORD_VERSION) || over(inside, DOCUMENT_VERSION);
}

/**
 * Reads a record field by field into a fresh object. Nothing unknown gets in and nothing is guessed: a record is taken
 * whole or not at all.
 */
export function readRecord(value: unknown): ReadRecord {
  try {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return { damage: 'it is no record' };
    if (isNewer(value)) return { newer: true };
    const { kind, version } = value as { kind?: unknown; version?: unknown };
    if (version !== RECORD_VERSION) return { damage: 'version' };
    return { record: READERS[oneOf(kind, 'kind', KINDS)](value) };
  } catch (error) {
    if (error instanceof Damage) return { damage: error.message };
    throw error;
  }
}
