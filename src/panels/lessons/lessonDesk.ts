import { book, editLesson, type LessonRecord } from '../../record';
import { beginGesture, change, endGesture, useDesk, type Document } from '../../store';
import { useBook, useMayWrite } from './navigation';

/** The desk of a lesson, wherever it is: on the desk while the lesson is open there, and in the book otherwise. */
interface LessonDesk {
  readonly document: Document;
  readonly mayWrite: boolean;
  /** One change, undone where it was made: on the desk, or in the book. */
  readonly edit: (label: string, change: (document: Document) => Document) => void;
  /** A text that is being typed: one undo step from its first letter until the field is left. */
  readonly type: (label: string, first: boolean, change: (document: Document) => Document) => void;
  readonly endTyping: () => void;
}

/** What was seen and planned in a lesson, and how to change it. */
export function useLessonDesk(lesson: LessonRecord): LessonDesk {
  const isOpen = useBook(({ meta }) => meta.openLessonId === lesson.id);
  const mayWrite = useMayWrite();
  const onDesk = useDesk((state) => state.document);
  if (isOpen) {
    return {
      document: onDesk,
      mayWrite,
      edit: change,
      type(label, first, edit) {
        if (first) beginGesture(label);
        change(label, edit);
      },
      endTyping: () => endGesture(),
    };
  }
  const edit: LessonDesk['edit'] = (label, make) =>
    void book.apply(editLesson(lesson, book.birth().nowMs, { now: make(lesson.now) }, label));
  return {
    document: lesson.now,
    mayWrite,
    edit,
    type: (label, first, make) => edit(first ? label : '', make),
    endTyping: () => {},
  };
}
