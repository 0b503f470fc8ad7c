import type { Practice } from '../../../practice/practice';
import { practiceOf, type LessonRecord } from '../../../record';
import type { ChosenPlan } from '../../../store/document/chosenPlan';
import { sayDay, sayShortDay } from '../../../words/book/days';
import { sayDays } from '../../../words/book/practice';
import { goTo, useBook, useMayWrite } from '../navigation';
import { NOTHING_BACK } from '../../../words/book/practicePanel';
import './practice.css';

/** What came back from the player of this lesson's plan, and the way to take more. */
export function PracticeKept({ lesson }: { lesson: LessonRecord }) {
  const records = useBook((state) => state.records);
  const mayWrite = useMayWrite();
  const { plan } = lesson.now;
  const all = practiceOf(records, lesson);
  if (!plan && all.length === 0) return null;
  return (
    <>
      <h3>Practice at home</h3>
      {all.length === 0 && <p>{NOTHING_BACK}</p>}
      {all.map((practice) => (
        <OfPlan key={practice.planId} practice={practice} plan={practice.planId === plan?.id ? plan : null} />
      ))}
      {mayWrite && (
        <div className="lesson-actions">
          <button type="button" className="plain" onClick={() => goTo({ page: 'practice' })}>
            Practice from the player
          </button>
        </div>
      )}
    </>
  );
}

function OfPlan({ practice: { days, felt, words }, plan }: { practice: Practice; plan: ChosenPlan | null }) {
  const drills = felt.map((_, i) => `drill ${i}`);
  const nameOf = (i: number): string => plan?.drills[i]?.name ?? `Drill ${i + 1}`;
  return (
    <div className="practice-kept">
      <p>
        {sayDays(days.length)}
        {days.length > 0 && `, ${sayShortDay(days[0].date)} to ${sayDay(days.at(-1)!.date)}`}
        {plan === null && ', of an earlier plan'}.
      </p>
      {words !== '' && <blockquote>{words}</blockquote>}
      <table className="progress-numbers">
        <caption className="unseen">Each drill: days, repetitions and what the player felt</caption>
        <thead>
          <tr>
            <th scope="col">Drill</th>
            <th scope="col">Days</th>
            <th scope="col">Times</th>
            <th scope="col">Felt it</th>
          </tr>
        </thead>
        <tbody>
          {felt.map((answer, i) => (
            <tr key={drills[i]}>
              <th scope="row">{nameOf(i)}</th>
              <td>{days.filter(({ done, counts }) => done[i] || counts[i] > 0).length}</td>
              <td>{days.reduce((sum, { counts }) => sum + counts[i], 0)}</td>
              <td>{answer ?? 'no answer'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {days.length > 0 && (
        <details>
          <summary>Day by day</summary>
          <ul>
            {days.map(({ date, done, counts }) => (
              <li key={date}>
                {sayDay(date)}: {sayDrills(done, counts, nameOf)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

/** "Ruler on the wrist 12, done; Lead hand alone 5" */
const sayDrills = (done: readonly boolean[], counts: readonly number[], nameOf: (i: number) => string): string =>
  counts
    .map((count, i) => ({ count, isDone: done[i], name: nameOf(i) }))
    .filter(({ count, isDone }) => count > 0 || isDone)
    .map(({ count, isDone, name }) => `${name}${count > 0 ? ` ${count}` : ''}${isDone ? ', done' : ''}`)
    .join('; ');
