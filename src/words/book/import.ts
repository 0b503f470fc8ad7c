type Kind = 'player' | 'lesson' | 'swing' | 'still';
type Counts = { readonly [K in Kind]: number };
type Tallied = readonly { readonly kind: Kind }[];

const NAMES: Readonly<Record<Kind, readonly [string, string]>> = {
  player: ['player', 'players'],
  lesson: ['lesson', 'lessons'],
  swing: ['saved swing', 'saved swings'],
  still: ['still', 'stills'],
};
const KINDS = Object.keys(NAMES) as Kind[];
const count = (number: number, kind: Kind): string => `${number} ${NAMES[kind][number === 1 ? 0 : 1]}`;

function sayCounts(counts: Counts): string {
  const parts = KINDS.filter((kind) => counts[kind] > 0).map((kind) => count(counts[kind], kind));
  return parts.length < 2 ? (parts[0] ?? 'nothing') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

const tally = (records: Tallied): Counts => ({
  player: records.filter(({ kind }) => kind === 'player').length,
  lesson: records.filter(({ kind }) => kind === 'lesson').length,
  swing: records.filter(({ kind }) => kind === 'swing').length,
  still: records.filter(({ kind }) => kind === 'still').length,
});

/** A file as far as it could be read. */
interface Reading {
  readonly sound: boolean;
  readonly records: Tallied;
  readonly expected: Counts;
  readonly lost: readonly { readonly kind: Kind | null; readonly why: string }[];
}

/** What was saved out of a damaged file: "7 of 8 players recovered." One sentence a kind; none for a sound file. */
export function sayRecovered(reading: Reading): string[] {
  if (reading.sound) return [];
  const found = tally(reading.records);
  const sentences = KINDS.filter((kind) => reading.expected[kind] > 0).map(
    (kind) => `${found[kind]} of ${count(reading.expected[kind], kind)} recovered.`,
  );
  const reasons = [...new Set(reading.lost.map(({ kind, why }) => `One ${kind ?? 'record'} was left out: ${why}.`))];
  return ['This file is damaged.', ...sentences, ...reasons.slice(0, 4)];
}

const FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  body: 'body',
  clubs: 'clubs',
  notes: 'notes',
  archived: 'archived or not',
  example: 'example or not',
  date: 'date',
  now: 'what was seen, the plan or the swing',
  computedCm: 'computed readings',
  computedBy: 'what computed them',
  playerId: 'player',
  createdMs: 'day of making',
  practice: 'practice from the player',
  film: 'marks on the film',
};

/** What an import would do to the book. */
interface Import {
  readonly added: Tallied;
  readonly changed: readonly { readonly ours: { readonly kind: Kind } }[];
  readonly left: Tallied;
  readonly same: number;
  readonly madeUp: readonly unknown[];
}

/** What an import would do: one sentence each. */
export function sayPlan({ added, changed, left, same, madeUp }: Import): string[] {
  const sentences: string[] = [];
  if (added.length > 0) sentences.push(`Adds ${sayCounts(tally(added))}.`);
  if (madeUp.length > 0) sentences.push(`Makes ${count(madeUp.length, 'player')} for lessons without one.`);
  if (changed.length > 0) sentences.push(`Changes ${sayCounts(tally(changed.map(({ ours }) => ours)))}.`);
  if (left.length > 0) sentences.push(`Leaves ${sayCounts(tally(left))} as they are here.`);
  if (same > 0) sentences.push(`${same} ${same === 1 ? 'record is' : 'records are'} here already.`);
  return sentences.length === 0 ? ['This file is empty. Nothing to add.'] : sentences;
}

/** "Ann: notes, body" or "Lesson 25 Nov: drills". */
export const sayChange = (title: string, fields: readonly string[]): string =>
  `${title}: ${fields.map((field) => FIELDS[field] ?? field).join(', ')}`;
