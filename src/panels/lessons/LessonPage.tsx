import {
  book,
  cleanNotes,
  computeCm,
  deleteLesson,
  deskLink,
  duplicateLesson,
  editLesson,
  LIMITS,
  type LessonRecord,
} from '../../record';
import { COMPUTED } from '../../words';
import { NO_PLAN, sayOnDesk } from '../../words/book/book';
import { COMPUTED_EARLIER } from '../../words/book/newModel';
import { sayBoth } from '../../words/book/readings';
import { toDay } from '../../words/book/days';
import { sayGuessScore } from '../../words/why/guess';
import { desk, STILL_DIALLED, useDesk, type Document } from '../../store';
import { ghostDialled } from '../../store/derive/swings';
import { showGhost } from '../../store/desk/whyActions';
import type { ChosenPlan } from '../../store/document/chosenPlan';
import { choosePlan } from '../../store/plan/planActions';
import { goTo, useBook, useMayWrite } from './navigation';
import { ClosedSeen, OpenSeen } from './LessonSeen';
import { useLessonDesk } from './lessonDesk';
import { NextStep } from './NextStep';
import { finishLesson } from './startLesson';
import { KeptFilm } from '../film/kept/KeptFilm';
import { PlanFields } from '../plan/PlanFields';
import { PlanSummary } from '../plan/PlanSummary';
import { PracticeKept } from './practice/PracticeKept';
import { TextField } from '../fields/TextField';

const edit = (lesson: LessonRecord, fields: Parameters<typeof editLesson>[2], label: string): void =>
  void book.apply(editLesson(lesson, book.birth().nowMs, fields, label));

/** How the player guessed before he was shown. */
function GuessesKept({ lesson: { guesses } }: { lesson: LessonRecord }) {
  const units = useDesk(({ document }) => document.units);
  if (!guesses?.length) return null;
  const made = guesses.map(({ drawnCm, wentCm }) => ({ drawn: drawnCm / 100, went: wentCm / 100 }));
  return <p>Guess first. {sayGuessScore(made, units)}</p>;
}

/** The swing on the desk becomes what the player works toward: from where the last plan started, or from the swing that is kept beside it. */
function planDesk(): void {
  const { document, session } = desk.getState();
  const from = document.plan?.from ?? ghostDialled({ document, session }) ?? STILL_DIALLED;
  choosePlan({ from, movements: document.movements, targetCm: computeCm(document) });
}

/** The plan that was chosen, and what is said with it. */
function Plan({ lesson, isOpen }: { lesson: LessonRecord; isOpen: boolean }) {
  const { document, mayWrite, edit: change, type, endTyping } = useLessonDesk(lesson);
  const { plan } = document;
  const withPlan = (part: Partial<ChosenPlan>) => (of: Document) => ({
    ...of,
    plan: of.plan && { ...of.plan, ...part },
  });
  if (!plan) return <p>{NO_PLAN}</p>;
  return (
    <>
      <PlanSummary plan={plan} />
      <div className="lesson-actions">
        {isOpen && (
          <button type="button" className="plain" onClick={() => showGhost('plan')}>
            Show the plan
          </button>
        )}
        {mayWrite && (
          <button type="button" className="plain" onClick={() => change('Clear plan', (of) => ({ ...of, plan: null }))}>
            Clear plan
          </button>
        )}
      </div>
      <PlanFields
        plan={plan}
        disabled={!mayWrite}
        onEdit={(label, part) => change(label, withPlan(part))}
        onType={(label, first, part) => type(label, first, withPlan(part))}
        onDone={endTyping}
      />
    </>
  );
}

function remove(lesson: LessonRecord): void {
  if (deskLink.openLesson()?.id === lesson.id) deskLink.close();
  if (book.apply(deleteLesson(book.state.getState().records, lesson))) goTo({ page: 'player', id: lesson.playerId });
}

function duplicate(lesson: LessonRecord): void {
  const birth = book.birth();
  if (book.apply(duplicateLesson(lesson, birth, toDay(birth.nowMs)))) goTo({ page: 'lesson', id: birth.id });
}

/** Opens the lesson on the desk, or closes it there. */
function OnTheDesk({ lesson, isOpen }: { lesson: LessonRecord; isOpen: boolean }) {
  return (
    <div className="lesson-note">
      <p>{sayOnDesk(isOpen)}</p>
      <button type="button" className="plain" onClick={() => (isOpen ? deskLink.close() : deskLink.open(lesson))}>
        {isOpen ? 'Close lesson' : 'Open on the desk'}
      </button>
    </div>
  );
}

/** One lesson: what was seen, the plan that was chosen, and what is dialled on the desk. */
export function LessonPage({ id }: { id: string }) {
  const lesson = useBook(({ records }) => records.get(id));
  const isOpen = useBook(({ meta }) => meta.openLessonId === id);
  const mayWrite = useMayWrite();
  const units = useDesk(({ document }) => document.units);
  if (lesson?.kind !== 'lesson') return null;
  return (
    <>
      <OnTheDesk lesson={lesson} isOpen={isOpen} />
      <h3>What I saw</h3>
      {isOpen ? <OpenSeen lesson={lesson} /> : <ClosedSeen lesson={lesson} />}
      <KeptFilm lesson={lesson} />
      {isOpen && <NextStep from="lessons" />}
      <h3>Plan</h3>
      <Plan lesson={lesson} isOpen={isOpen} />
      <PracticeKept lesson={lesson} />
      <GuessesKept lesson={lesson} />
      <h3>On the desk</h3>
      <p>
        {sayBoth(null, lesson.computedCm, units)}, {lesson.computedBy === undefined ? COMPUTED : COMPUTED_EARLIER}.
      </p>
      {mayWrite && isOpen && (
        <div className="lesson-actions">
          <button type="button" className="plain" onClick={planDesk}>
            Save as target
          </button>
        </div>
      )}
      <div className="lesson-texts">
        <TextField
          label="Notes"
          value={lesson.notes}
          most={LIMITS.notes}
          lines={4}
          disabled={!mayWrite}
          onType={(typed, first) => edit(lesson, { notes: cleanNotes(typed) }, first ? 'Notes' : '')}
        />
        <div className="field">
          <label htmlFor={`date-${id}`}>Date</label>
          <input
            id={`date-${id}`}
            type="date"
            value={lesson.date}
            readOnly={!mayWrite}
            onChange={(event) => event.currentTarget.value && edit(lesson, { date: event.currentTarget.value }, 'Date')}
          />
        </div>
      </div>
      {mayWrite && isOpen && (
        <p className="next-step">
          <button type="button" className="plain" onClick={() => finishLesson(lesson)}>
            Save and finish
          </button>
        </p>
      )}
      {mayWrite && (
        <div className="lesson-actions">
          <button type="button" className="plain" onClick={() => duplicate(lesson)}>
            Duplicate
          </button>
          <button type="button" className="plain" onClick={() => remove(lesson)}>
            Delete
          </button>
        </div>
      )}
    </>
  );
}
