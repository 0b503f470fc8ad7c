import type { BookRecord, KeptFilm } from '../../../src/record';
import type { GuessMade } from '../../../src/store/desk/whyState';

/** One thing written into a lesson while it waits to be killed: the how-manieth of its round, both counted from 0. */
export interface Stroke {
  readonly round: number;
  readonly letter: number;
}

export const KINDS = ['notes', 'guess', 'film'] as const;
export type StrokeKind = (typeof KINDS)[number];

/** What is written changes from kill to kill: notes alone, guesses between the letters, films with stills between them. */
export function whatAt({ round, letter }: Stroke): StrokeKind {
  if (round % 3 === 1 && letter % 2 === 1) return 'guess';
  return round % 3 === 2 && letter % 8 === 5 ? 'film' : 'notes';
}

// Every record carries its stroke in numbers it has anyway.

/** A guess: drawn at as many cm as letters, gone to as many as rounds. */
export const guessOf = ({ round, letter }: Stroke): GuessMade => ({
  id: 'leadArmParallel',
  drawn: letter / 100,
  went: round / 100,
});
/** A film, by its frame of impact. */
export const filmOf = (film: KeptFilm, { round, letter }: Stroke): KeptFilm => ({
  ...film,
  notes: { ...film.notes, impact: round * 1000 + letter },
});
/** A still, by its size, px. */
export const stillOf = ({ round, letter }: Stroke): { readonly w: number; readonly h: number } => ({
  w: 1 + letter,
  h: 1 + (round % 900),
});

const readNotes = (text: string): Stroke | undefined => {
  const [, round, letter] = /^round (\d+), letter (\d+)$/.exec(text) ?? [];
  return letter === undefined ? undefined : { round: Number(round), letter: Number(letter) };
};

/** The last stroke of each kind that a lesson holds. Throws where a film stands there with other stills than its own. */
export function lastStrokes(records: readonly BookRecord[]): Readonly<Partial<Record<StrokeKind, Stroke | undefined>>> {
  const [lesson] = records.filter((record) => record.kind === 'lesson' && !record.id.startsWith('example'));
  if (lesson?.kind !== 'lesson') throw new Error('the lesson is gone');
  const { notes, guesses, film } = lesson;
  const guess = guesses?.at(-1);
  const impact = film?.notes.impact;
  const filmed = impact === undefined ? undefined : { round: Math.floor(impact / 1000), letter: impact % 1000 };
  const stills = records.flatMap((record) => (record.kind === 'still' ? [{ w: record.w, h: record.h }] : []));
  const own = filmed ? [stillOf(filmed), stillOf(filmed)] : [];
  if (JSON.stringify(stills) !== JSON.stringify(own))
    throw new Error(`film ${JSON.stringify(filmed)} with stills ${JSON.stringify(stills)}`);
  return { notes: readNotes(notes), guess: guess && { round: guess.wentCm, letter: guess.drawnCm }, film: filmed };
}
