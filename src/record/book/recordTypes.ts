import type { ClubId } from '../../model/club';
import type { Player } from '../../model/body';
import type { Practice } from '../../practice/practice';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Document } from '../../store/document/document';
import type { KeptFilm } from '../film/keptFilm';

/** Version of one record, in the book and in a backup file. A newer one is left untouched. */
export const RECORD_VERSION = 3;

interface Kept {
  readonly id: string;
  readonly version: typeof RECORD_VERSION;
  readonly createdMs: number;
  /** Last change, ms since 1970. Of two copies of a record the one with the later change is the newer. */
  readonly changedMs: number;
}

/** A person. A nickname is enough. */
export interface PlayerRecord extends Kept {
  readonly kind: 'player';
  readonly name: string;
  readonly body: Player;
  readonly clubs: readonly ClubId[];
  readonly notes: string;
  readonly archived: boolean;
  /** Our own invention, there to be looked at and removed. */
  readonly example: boolean;
}

/** What the model computed when the record was written; null where a checkpoint was not reached. */
export type Computed = { readonly [id in CheckpointId]: number | null };

/** The model with a lean where there is side bend now: the version of the documents that were written with it. */
export const LEAN_MODEL = 1;

/** Marks what an earlier model computed, until the record is opened and computed anew. */
interface OfEarlierModel {
  readonly computedBy?: typeof LEAN_MODEL;
}

/** One guess of where the shaft would go, and where it went: the judged reading, cm. */
interface Guessed {
  readonly at: CheckpointId;
  readonly drawnCm: number;
  readonly wentCm: number;
}

/** One lesson. `now` is the desk as it was left, with what the coach saw and the plan that was chosen. */
export interface LessonRecord extends Kept, OfEarlierModel {
  readonly kind: 'lesson';
  readonly playerId: string;
  /** Calendar day where the lesson was given, "2026-11-25". */
  readonly date: string;
  readonly now: Document;
  readonly computedCm: Computed;
  readonly notes: string;
  /** What came back from the player, one for each plan. Absent where nothing came. */
  readonly practice?: readonly Practice[];
  /** What the player guessed before he was shown. Absent where he guessed nothing. */
  readonly guesses?: readonly Guessed[];
  /** What was marked on the player's film. Absent where none was kept. */
  readonly film?: KeptFilm;
}

/** A swing worth keeping. */
export interface SwingRecord extends Kept, OfEarlierModel {
  readonly kind: 'swing';
  readonly playerId: string;
  readonly name: string;
  readonly now: Document;
  readonly computedCm: Computed;
}

/**
 * A picture out of a player's film, which the coach chose to keep with a lesson: encoded anew, so that place and time are not in it. A record
 * of its own, because a lesson is written at every change.
 */
export interface StillRecord extends Kept {
  readonly kind: 'still';
  readonly playerId: string;
  readonly lessonId: string;
  readonly of: CheckpointId;
  /** px, the longer side at most `LIMITS.stillSide`. */
  readonly w: number;
  readonly h: number;
  /** A JPEG, in base64. */
  readonly jpeg: string;
}

export type BookRecord = PlayerRecord | LessonRecord | SwingRecord | StillRecord;
export type Kind = BookRecord['kind'];
export const KINDS: readonly Kind[] = ['player', 'lesson', 'swing', 'still'];

/** Length limits, enforced in the fields and when reading files. */
export const LIMITS = {
  name: 60,
  notes: 8000,
  /** Plans of which one lesson keeps practice. */
  practices: 6,
  /** Guesses that one lesson keeps: the last ones. */
  guesses: 100,
  /** Longer side of a still, px, and its size, bytes. */
  stillSide: 960,
  stillBytes: 150_000,
  /** Characters of one record and of one file, and how deep its brackets may go: looked at before anything is read. */
  recordText: 250_000,
  fileText: 96_000_000,
  depth: 12,
  records: 50_000,
} as const;

export const NOTHING_COMPUTED: Computed = { leadArmParallel: null, shaftParallel: null };
