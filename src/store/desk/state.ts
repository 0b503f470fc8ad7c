import type { Ground } from '../derive/baseSwings';
import { NO_REFERENCES, type References } from '../derive/references';
import { NO_VERDICTS, type StandingVerdicts } from '../derive/verdictHysteresis';
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
  /** What searches for reference swings have found. */
  readonly references: References;
  /** The last player and club whose reference swing was found: they stay on the desk while another is looked for. */
  readonly lastGround: Ground | null;
  /** The verdicts that stand on the plates, so that none flickers. */
  readonly verdicts: StandingVerdicts;
  /** The reference swing has been looked for so long that it has to be said. */
  readonly overdue: boolean;
}

export const FRESH_DESK: DeskState = {
  document: DEFAULT_DOCUMENT,
  session: FRESH_SESSION,
  history: NO_HISTORY,
  gesture: null,
  notice: null,
  references: NO_REFERENCES,
  lastGround: null,
  verdicts: NO_VERDICTS,
  overdue: false,
};
