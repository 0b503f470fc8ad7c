import { addLesson, addPlayer, book, deskLink, editLesson, startBook, type Edit } from '../../../src/record';
import { toDay } from '../../../src/words/book/days';
import { desk } from '../../../src/store';

/** What a test may do with the book of this page. */
export interface BookAlone {
  /** The page writes the book, and what earlier pages left is in it. */
  readonly ready: Promise<void>;
  /** A player with an open lesson. */
  begin(): Promise<void>;
  notes(): string;
  write(notes: string): void;
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

const alone: BookAlone = {
  ready,
  begin,
  notes: () => deskLink.openLesson()!.notes,
  write: (notes) => void apply(editLesson(deskLink.openLesson()!, book.birth().nowMs, { notes }, '')),
};
Object.assign(globalThis, { alone });
