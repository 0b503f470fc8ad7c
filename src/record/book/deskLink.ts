import { desk, deskBases, put, subscribe } from '../../store/desk/desk';
import { createDeriver } from '../../store/derive/deriver';
import { NO_VERDICTS } from '../../store/derive/verdictHysteresis';
import { referenceSearch } from '../../store/effects/referenceSearch';
import type { GuessMade } from '../../store/desk/whyState';
import type { Document } from '../../store/document/document';
import { NO_HISTORY, type History } from '../../store/document/history';
import { isReached } from '../../reading/checkpoints';
import type { Clock } from '../storage/clock';
import { editLesson } from './edits';
import { sayNewModel } from '../../words/book/newModel';
import { LIMITS, NOTHING_COMPUTED, type Computed, type LessonRecord } from './recordTypes';
import type { LessonBook } from './lessonBook';

/** Delay from a change on the desk to the lesson, ms; the writer's own delay is added to it. */
const FOLLOW_MS = 100;

/** Cache: the last document of a lesson that was worked out. What the desk shows stays as it is. */
const lessonDeriver = createDeriver(deskBases);

/** Both judged readings of a document as the model computes them now, cm, without exaggeration or joints bent on the bench. */
export const computeCm = (document: Document): Computed => computeIfFound(document) ?? NOTHING_COMPUTED;

/** The same, or nothing as long as the document's reference swing is being found. */
export function computeIfFound(document: Document): Computed | undefined {
  referenceSearch.want(document);
  const state = desk.getState();
  const plain = { ...state.session, exaggerate: false, bench: null, ghost: null };
  const { status, checkpoints } = lessonDeriver.derive({ ...state, document, session: plain, verdicts: NO_VERDICTS });
  if (status !== 'ready') return undefined;
  const { leadArmParallel: p5, shaftParallel: p6 } = checkpoints;
  const toCm = (metres: number): number | null =>
    Number.isFinite(metres) ? Number((metres * 100).toFixed(2)) + 0 : null;
  return {
    leadArmParallel: isReached(p5) ? toCm(p5.readings.bicepGap) : null,
    shaftParallel: isReached(p6) ? toCm(p6.readings.headDepth) : null,
  };
}

/** A document with the units and board that are in use here. */
export const asSeenHere = (kept: Document, { units, board }: Document): Document => ({ ...kept, units, board });

const sameSwing = (a: Document, b: Document): boolean =>
  a === b || JSON.stringify(asSeenHere(a, b)) === JSON.stringify(b);

/** Gives a plan that an earlier model aimed the target that today's model computes; any other document stays as it is. */
function aimedAnew(old: Document): (document: Document) => Document {
  const targetCm = old.plan && computeCm({ ...old, movements: old.plan.movements });
  return (document) =>
    targetCm && document.plan?.id === old.plan?.id
      ? { ...document, plan: document.plan && { ...document.plan, targetCm } }
      : document;
}

export interface DeskLink {
  /** Call once the desk has been restored: later changes are the user's. */
  start(): void;
  open(lesson: LessonRecord): void;
  close(): void;
  /** Copies the desk into the open lesson at once. */
  follow(): void;
  openLesson(): LessonRecord | undefined;
  /** Makes this tab the writer and continues an open lesson here. */
  takeOver(): Promise<void>;
}

/** Keeps the open lesson in step with the desk, a moment after each change, so that nothing has to be saved by hand. */
export function linkDesk(book: LessonBook, clock: Clock): DeskLink {
  let callOff: (() => void) | undefined;
  let historyBefore: History = NO_HISTORY;
  let takingOver = false;
  let documentAtStart: Document | undefined;
  /** The open lesson as an earlier model left it, until its readings are computed anew. */
  let outdated: LessonRecord | undefined;

  const openLesson = (): LessonRecord | undefined => {
    const { records, meta } = book.state.getState();
    const record = meta.openLessonId === null ? undefined : records.get(meta.openLessonId);
    return record?.kind === 'lesson' ? record : undefined;
  };
  const isOurs = (): boolean => {
    const { mode } = book.state.getState();
    return mode === 'writing' || mode === 'apart';
  };

  /** Computes what an earlier model computed, once its reference swing is there, and says by how much it moved. */
  const bringUpToDate = (): void => {
    const lesson = openLesson();
    if (!outdated || lesson?.id !== outdated.id) return;
    const { now, computedCm } = outdated;
    const today = computeIfFound(now);
    if (!today) return;
    outdated = undefined;
    put({ notice: sayNewModel('lesson', computedCm, today, desk.getState().document.units) });
    if (!isOurs()) return;
    const aimed = aimedAnew(now);
    const { document } = desk.getState();
    if (aimed(document) !== document) put({ document: aimed(document) });
    const fields = { now: aimed(lesson.now), computedCm: sameSwing(lesson.now, now) ? today : computeCm(lesson.now) };
    book.apply(editLesson(lesson, clock.nowMs(), fields, ''));
  };

  const follow = (): void => {
    callOff?.();
    callOff = undefined;
    bringUpToDate();
    const lesson = openLesson();
    const { document } = desk.getState();
    if (!lesson || !isOurs() || sameSwing(lesson.now, document)) return;
    book.apply(editLesson(lesson, clock.nowMs(), { now: document, computedCm: computeCm(document) }, ''));
  };

  /** A guess that has been shown goes into the open lesson. */
  const keepGuesses = (made: readonly GuessMade[]): void => {
    const lesson = openLesson();
    if (!lesson || !isOurs() || made.length === 0) return;
    const toCm = (metres: number): number => Number((metres * 100).toFixed(1)) + 0;
    const added = made.map(({ id, drawn, went }) => ({ at: id, drawnCm: toCm(drawn), wentCm: toCm(went) }));
    const guesses = [...(lesson.guesses ?? []), ...added].slice(-LIMITS.guesses);
    book.apply(editLesson(lesson, clock.nowMs(), { guesses }, ''));
  };

  const lay = (document: Document, history: History): void =>
    put({ document: asSeenHere(document, desk.getState().document), history, gesture: null });

  const holdAgainstToday = (lesson: LessonRecord): void => {
    outdated = lesson.computedBy === undefined ? undefined : lesson;
    bringUpToDate();
  };

  subscribe(({ session: { guess } }, { session: { guess: before } }) => {
    if (guess && guess.made !== before?.made) keepGuesses(guess.made.slice(before?.made.length ?? 0));
  });
  subscribe((now, before) => {
    if (now.document === before.document && now.references === before.references) return;
    if (openLesson() && isOurs()) callOff ??= clock.after(FOLLOW_MS, follow);
  });

  // When this tab begins to write, a lesson that was open goes on where it was left: after a reload, and when asked to
  // take over. A tab that merely inherits the book keeps its own desk, once something was changed on it.
  book.state.subscribe((now, before) => {
    if (now.mode !== 'writing' || before.mode === 'writing' || before.mode === 'apart') return;
    const lesson = openLesson();
    const isUntouched = desk.getState().document === documentAtStart;
    const goesOn = before.mode === 'opening' || takingOver || isUntouched;
    takingOver = false;
    if (!goesOn) book.setMeta({ openLessonId: null, desk: null });
    else if (lesson) {
      if (!sameSwing(lesson.now, desk.getState().document)) lay(lesson.now, NO_HISTORY);
      holdAgainstToday(lesson);
    }
  });

  return {
    start() {
      documentAtStart = desk.getState().document;
    },
    openLesson,
    follow,
    takeOver() {
      takingOver = true;
      return book.takeOver();
    },
    open(lesson) {
      follow();
      const { document, history } = desk.getState();
      if (isOurs() && !openLesson()) {
        historyBefore = history;
        book.setMeta({ desk: document });
      }
      book.setMeta({ openLessonId: lesson.id });
      lay(lesson.now, NO_HISTORY);
      holdAgainstToday(lesson);
    },
    close() {
      follow();
      outdated = undefined;
      const { desk: before } = book.state.getState().meta;
      book.setMeta({ openLessonId: null, desk: null });
      if (before) lay(before, historyBefore);
      historyBefore = NO_HISTORY;
    },
  };
}
