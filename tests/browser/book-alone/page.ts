import { addLesson, addPlayer, book, deskLink, editLesson, startBook, stillsOf, type Edit } from '../../../src/record';
import { keepFilmWith } from '../../../src/record/film/filmEdits';
import { desk } from '../../../src/store';
import { setGuess } from '../../../src/store/desk/guess';
import { toDay } from '../../../src/words/book/days';
import { FILM, JPEG } from '../../unit/keptFilm';
import { filmOf, guessOf, stillOf, whatAt, type Stroke } from './strokes';

/** What a test may do with the book of this page. */
export interface BookAlone {
  /** The page writes the book, and what earlier pages left is in it. */
  readonly ready: Promise<void>;
  /** A player with an open lesson. */
  begin(): Promise<void>;
  /** The open lesson with its stills. */
  kept(): readonly unknown[];
  /** Writes what is due at a stroke: a letter of the notes, a guess, or a film with its stills. */
  write(stroke: Stroke): void;
}

startBook();

const ready = new Promise<void>((resolve) => {
  const look = (): void => {
    if (book.state.getState().mode === 'writing') resolve();
  };
  book.state.subscribe(look);
  look();
});

function apply(edit: Edit): Edit {
  if (!book.apply(edit)) throw new Error('the book takes no changes');
  return edit;
}

async function begin(): Promise<void> {
  const { player } = desk.getState().document;
  const { put } = apply(addPlayer(book.state.getState().records, book.birth(), 'Robin', player, null));
  const birth = book.birth();
  const computedCm = { leadArmParallel: null, shaftParallel: null };
  const added = addLesson(birth, put[0].id, toDay(birth.nowMs), desk.getState().document, computedCm);
  const [lesson] = apply(added).put;
  if (lesson.kind !== 'lesson') throw new Error('no lesson was added');
  deskLink.open(lesson);
  await book.flush();
}

/** As long as a still of a phone's film. */
const LONG_JPEG = JPEG + 'A'.repeat(60_000);

function write(stroke: Stroke): void {
  const lesson = deskLink.openLesson()!;
  const what = whatAt(stroke);
  if (what === 'guess') {
    // As when a guess on the desk is shown: the lesson hears of it.
    const made = desk.getState().session.guess?.made ?? [];
    setGuess({ stage: 'shown', drawn: {}, made: [...made, guessOf(stroke)] });
  } else if (what === 'film') {
    const stills = (['leadArmParallel', 'shaftParallel'] as const).map((of) => ({
      of,
      ...stillOf(stroke),
      jpeg: LONG_JPEG,
    }));
    const { records } = book.state.getState();
    apply(keepFilmWith(records, lesson, () => book.birth(), filmOf(FILM, stroke), stills)!);
  } else {
    apply(editLesson(lesson, book.birth().nowMs, { notes: `round ${stroke.round}, letter ${stroke.letter}` }, ''));
  }
}

const alone: BookAlone = {
  ready,
  begin,
  kept: () => {
    const lesson = deskLink.openLesson()!;
    return [lesson, ...stillsOf(book.state.getState().records, lesson.id)];
  },
  write,
};
Object.assign(globalThis, { alone });
