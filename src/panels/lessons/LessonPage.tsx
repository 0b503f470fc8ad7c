import {
  book,
  cleanDrills,
  cleanNotes,
  computeCm,
  deleteRecord,
  deskLink,
  duplicateLesson,
  editLesson,
  LIMITS,
  type LessonRecord,
} from '../../record';
import { COMPUTED } from '../../words';
import { COMPUTED_EARLIER } from '../../words/book/newModel';
import { sayBoth } from '../../words/book/readings';
import { toDay } from '../../words/book/days';
import { MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { desk, put, useDesk } from '../../store';
import { goTo, useBook, useMayWrite } from './navigation';
import { SeenFields } from './SeenFields';
import { GROUP_NAMES } from '../dials/Movements';
import { TextField } from '../fields/TextField';

const edit = (lesson: LessonRecord, fields: Parameters<typeof editLesson>[2], label: string): void =>
  void book.apply(editLesson(lesson, book.birth().nowMs, fields, label));

/** The swing on the desk becomes what the player works toward. */
function setTarget(lesson: LessonRecord): void {
  const { document } = desk.getState();
  edit(lesson, { target: { movements: document.movements, computedCm: computeCm(document) } }, 'Target');
}

/** Shows the target behind the swing now, for comparison. */
function showTarget({ target }: LessonRecord): void {
  if (target) put({ session: { ...desk.getState().session, ghost: target.movements } });
}

function Swing({ lesson, isOpen }: { lesson: LessonRecord; isOpen: boolean }) {
  const units = useDesk(({ document }) => document.units);
  const mayWrite = useMayWrite();
  const { computedCm, computedBy, target } = lesson;
  const by = computedBy === undefined ? COMPUTED : COMPUTED_EARLIER;
  return (
    <>
      <dl className="lesson-swings">
        <dt>Now</dt>
        <dd>
          {sayBoth(null, computedCm, units)}, {by}
        </dd>
        <dt>Target</dt>
        <dd>{target ? `${sayBoth(null, target.computedCm, units)}, ${by}` : 'Not set'}</dd>
      </dl>
      <div className="lesson-actions">
        {mayWrite && isOpen && (
          <button type="button" className="plain" onClick={() => setTarget(lesson)}>
            Desk is the target
          </button>
        )}
        {target && (
          <button type="button" className="plain" onClick={() => showTarget(lesson)}>
            Target as ghost
          </button>
        )}
        {mayWrite && target && (
          <button type="button" className="plain" onClick={() => edit(lesson, { target: null }, 'No target')}>
            No target
          </button>
        )}
      </div>
    </>
  );
}

function Plan({ lesson }: { lesson: LessonRecord }) {
  const mayWrite = useMayWrite();
  const toggle = (id: MovementGroup): void => {
    const plan = MOVEMENT_GROUPS.filter((one) => lesson.plan.includes(one) !== (one === id));
    edit(lesson, { plan }, 'Plan');
  };
  return (
    <fieldset className="lesson-chips">
      <legend className="unseen">Plan: what the player works on</legend>
      {MOVEMENT_GROUPS.map((id) => (
        <button
          key={id}
          type="button"
          className="plain"
          aria-pressed={lesson.plan.includes(id)}
          aria-disabled={!mayWrite}
          onClick={() => mayWrite && toggle(id)}
        >
          {GROUP_NAMES[id]}
        </button>
      ))}
    </fieldset>
  );
}

function remove(lesson: LessonRecord): void {
  if (deskLink.openLesson()?.id === lesson.id) deskLink.close();
  if (book.apply(deleteRecord(lesson, 'Delete lesson'))) goTo({ page: 'player', id: lesson.playerId });
}

function duplicate(lesson: LessonRecord): void {
  const birth = book.birth();
  if (book.apply(duplicateLesson(lesson, birth, toDay(birth.nowMs)))) goTo({ page: 'lesson', id: birth.id });
}

/** Opens the lesson on the desk, or closes it there. */
function OnTheDesk({ lesson, isOpen }: { lesson: LessonRecord; isOpen: boolean }) {
  return (
    <div className="lesson-note">
      <p>{isOpen ? 'Open: what you dial goes into this lesson.' : 'Closed. The desk shows something else.'}</p>
      <button type="button" className="plain" onClick={() => (isOpen ? deskLink.close() : deskLink.open(lesson))}>
        {isOpen ? 'Close lesson' : 'Open on the desk'}
      </button>
    </div>
  );
}

/** One lesson: what was seen, where the swing is and shall go, what is worked on. */
export function LessonPage({ id }: { id: string }) {
  const lesson = useBook(({ records }) => records.get(id));
  const isOpen = useBook(({ meta }) => meta.openLessonId === id);
  const mayWrite = useMayWrite();
  if (lesson?.kind !== 'lesson') return null;
  return (
    <>
      <OnTheDesk lesson={lesson} isOpen={isOpen} />
      <h3>Seen by you</h3>
      <SeenFields lesson={lesson} />
      <h3>On the desk</h3>
      <Swing lesson={lesson} isOpen={isOpen} />
      <h3>Plan</h3>
      <Plan lesson={lesson} />
      <div className="lesson-texts">
        <TextField
          label="Drills, one a line"
          value={lesson.drills.join('\n')}
          most={LIMITS.drill * LIMITS.drills}
          lines={3}
          disabled={!mayWrite}
          onType={(typed, first) => edit(lesson, { drills: cleanDrills(typed.split('\n')) }, first ? 'Drills' : '')}
        />
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
