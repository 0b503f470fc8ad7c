import {
  boolean,
  check,
  custom,
  exactOptional,
  integer,
  literal,
  nonEmpty,
  nullable,
  pipe,
  regex,
  string,
  transform,
  type GenericSchema,
} from 'valibot';
import { eachOf, isFields, listUpTo, fields, numberIn, oneOf, whole } from '../../checking/schemas';
import { read } from '../../checking/read';
import { CLUB_IDS } from '../../model/club';
import { readPractice } from '../../practice/check';
import type { Practice } from '../../practice/practice';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DOCUMENT_VERSION } from '../../store/document/document';
import { documentSchema, SECTION_SCHEMAS } from '../../store/document/validate';
import { KINDS, LEAN_MODEL, LIMITS, RECORD_VERSION, type BookRecord, type Kind } from '../book/recordTypes';
import { toName } from '../../checking/text';
import { day, isKept, keptText, NOT_KEPT } from '../../checking/kept';
import { filmSchema, isJpeg } from '../film/filmSchema';

/** A record, read; or why it cannot be: a newer program wrote it, or this field of it is damaged. */
export type ReadRecord = { readonly record: BookRecord } | { readonly newer: true } | { readonly damage: string };

const name = pipe(
  keptText(LIMITS.name),
  nonEmpty('A name has at least one letter.'),
  check((text) => toName(text) === text, 'Not as Slantwise keeps a name.'),
);
/** Without repetitions. */
const someOf = <const T extends string>(words: readonly T[]) =>
  pipe(
    listUpTo(oneOf(words), words.length),
    check((list) => new Set(list).size === list.length, 'A word stands twice. Leave one out.'),
  );
const id = pipe(string(), regex(/^[0-9a-z][0-9a-z-]{7,39}$/, 'Not an id.'));

/** Minus nought is nought. */
const tidy = transform((value: number) => value + 0);
/** The year 2200. */
const LAST_MS = 7_258_118_400_000;
const time = pipe(numberIn(0, LAST_MS), integer('Whole milliseconds only.'), tidy);
const now = pipe(
  documentSchema,
  whole(({ club: { my } }) =>
    my === null || isKept(my.name) ? undefined : { path: 'club.my.name', message: NOT_KEPT },
  ),
);
const centimetres = nullable(pipe(numberIn(-1000, 1000), tidy));
const computedCm = fields(eachOf(CHECKPOINT_IDS, () => centimetres));

/** Absent where today's model computed the readings. */
const computedBy = exactOptional(literal(LEAN_MODEL));

const isPractice = (value: unknown): value is Practice => {
  const practice = readPractice(value);
  return practice !== undefined && toName(practice.words) === practice.words;
};
const onePractice = pipe(
  custom<Practice>(isPractice, 'Not a practice.'),
  transform((value) => readPractice(value)!),
);
/** Absent where nothing came from the player. */
const practice = exactOptional(
  pipe(
    listUpTo(onePractice, LIMITS.practices),
    check((list) => new Set(list.map(({ planId }) => planId)).size === list.length, 'A plan stands twice.'),
  ),
);

const guesses = exactOptional(
  listUpTo(
    fields({
      at: oneOf(CHECKPOINT_IDS),
      drawnCm: pipe(numberIn(-1000, 1000), tidy),
      wentCm: pipe(numberIn(-1000, 1000), tidy),
    }),
    LIMITS.guesses,
  ),
);

const side = pipe(numberIn(1, LIMITS.stillSide), integer('Whole pixels only.'));

const head = <K extends Kind>(kind: K) => ({
  kind: literal(kind),
  id,
  version: literal(RECORD_VERSION),
  createdMs: time,
  changedMs: time,
});

const SCHEMAS = {
  player: fields({
    ...head('player'),
    name,
    body: SECTION_SCHEMAS.player,
    clubs: someOf(CLUB_IDS),
    notes: keptText(LIMITS.notes),
    archived: boolean(),
    example: boolean(),
  }),
  lesson: fields({
    ...head('lesson'),
    playerId: id,
    date: day,
    now,
    computedCm,
    computedBy,
    notes: keptText(LIMITS.notes),
    practice,
    guesses,
    film: exactOptional(filmSchema),
  }),
  swing: fields({ ...head('swing'), playerId: id, name, now, computedCm, computedBy }),
  still: fields({
    ...head('still'),
    playerId: id,
    lessonId: id,
    of: oneOf(CHECKPOINT_IDS),
    w: side,
    h: side,
    jpeg: pipe(string(), check(isJpeg, 'Not a picture as Slantwise keeps one.')),
  }),
} satisfies { readonly [K in Kind]: GenericSchema<unknown, Extract<BookRecord, { readonly kind: K }>> };

/** True when a part of the record was written by a newer program: its own version, or that of the desk inside it. */
function isNewer({ version, now: desk }: Readonly<Record<string, unknown>>): boolean {
  const over = (number: unknown, ours: number): boolean => Number.isInteger(number) && (number as number) > ours;
  return over(version, RECORD_VERSION) || (isFields(desk) && over(desk['version'], DOCUMENT_VERSION));
}

/** A record whose desk an earlier model wrote says so of its readings too: reading brings the desk alone up to date. */
const withItsModel = (value: Readonly<Record<string, unknown>>): object =>
  isFields(value['now']) && value['now']['version'] === LEAN_MODEL ? { ...value, computedBy: LEAN_MODEL } : value;

/**
 * Reads a record field by field into a fresh object. Nothing unknown gets in and nothing is guessed: a record is taken
 * whole or not at all.
 */
export function readRecord(value: unknown): ReadRecord {
  if (!isFields(value)) return { damage: 'it is no record' };
  if (isNewer(value)) return { newer: true };
  if (value['version'] !== RECORD_VERSION) return { damage: 'version' };
  const kind = KINDS.find((one) => one === value['kind']);
  if (kind === undefined) return { damage: 'kind' };
  const found = read<GenericSchema<unknown, BookRecord>>(SCHEMAS[kind], withItsModel(value));
  return 'value' in found ? { record: found.value } : { damage: found.fault.path };
}
