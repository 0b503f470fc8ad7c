import { DEFAULT_DOCUMENT, type Document } from '../document/document';
import { NO_HISTORY, type History } from '../document/history';
import { FRESH_SESSION, type Session } from './session';

/** A drag or a held key that has not ended yet: one undo step when it does. */
export interface Gesture {
  readonly label: string;
  readonly before: Document;
}

export interface DeskState {
  readonly document: Document;
  readonly session: Session;
  readonly history: History;
  readonly gesture: Gesture | null;
  /** Something the user should know, in words: a document kept aside, storage that is full. */
  readonly notice: string | null;
  /** Counts the reference swings found in the background, so that what hangs on them is worked out again. */
  readonly found: number;
  /** The reference swing has been looked for so long that it has to be said. */
  readonly overdue: boolean;
}

export const FRESH_DESK: DeskState = {
  document: DEFAULT_DOCUMENT,
  session: FRESH_SESSION,
  history: NO_HISTORY,
  gesture: null,
  notice: null,
  found: 0,
  overdue: false,
};
