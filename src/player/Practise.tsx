import { useEffect, useState } from 'react';
import { Choice } from '../panels/fields/Choice';
import { toCalendar } from '../practice/calendar';
import { dayAfter, weekOf } from '../practice/days';
import { answerFelt, countDrill, noPractice, practiceOn, tickDrill } from '../practice/edit';
import { FELT, type Practice } from '../practice/practice';
import type { ChosenPlan, PlanDrill } from '../store/document/chosenPlan';
import { toDay } from '../words/book/days';
import { REMINDER, SAVE_REMINDERS, sayPractised, sayRepetitions, sayTicked, WIPES } from '../words/player/page';
import { Tally } from './Tally';

const FELT_OPTIONS = FELT.map((value) => ({ value, text: value }));
const DAYS = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'] as const;

interface Props {
  readonly plan: ChosenPlan;
  readonly practice: Practice;
  readonly change: (by: (practice: Practice) => Practice) => void;
}

/** The device's calendar day; another one after midnight, and when the page comes back. */
function useToday(): string {
  const [today, setToday] = useState(() => toDay(Date.now()));
  useEffect(() => {
    const look = (): void => setToday(toDay(Date.now()));
    const midnight = new Date();
    midnight.setHours(24, 0, 1, 0);
    const timer = setTimeout(look, midnight.getTime() - Date.now());
    document.addEventListener('visibilitychange', look);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, [today]);
  return today;
}

/** The drills of a plan: ticked and counted day by day. */
export function Practise({ plan, practice, change }: Props) {
  const today = useToday();
  const week = weekOf(today);
  const practised = week.filter((date) => practice.days.some((day) => day.date === date));
  return (
    <section className="player-practise" aria-labelledby="player-practise">
      <header>
        <h2 id="player-practise">Practise</h2>
        <span>{sayPractised(practised.length)}</span>
      </header>
      <ol className="player-week" aria-label="This week">
        {week.map((date, i) => (
          <li key={date} aria-current={date === today ? 'date' : undefined}>
            <span aria-hidden="true">{practised.includes(date) ? '✓' : ' '}</span>
            <span aria-hidden="true">{DAYS[i]}</span>
            <span className="unseen">{sayTicked(date, practised.includes(date))}</span>
          </li>
        ))}
      </ol>
      {plan.drills.map((drill, i) => (
        <Drill key={drill.name} drill={drill} at={i} today={today} practice={practice} change={change} />
      ))}
      <div className="player-acts">
        <button type="button" className="plain" onClick={() => saveReminders(plan, today)}>
          {SAVE_REMINDERS}
        </button>
        <Wipe practice={practice} change={change} />
      </div>
    </section>
  );
}

function Drill({
  drill,
  at,
  today,
  practice,
  change,
}: Omit<Props, 'plan'> & { drill: PlanDrill; at: number; today: string }) {
  const { done, counts } = practiceOn(practice, today);
  const count = counts[at] ?? 0;
  return (
    <article className="player-drill">
      <label className="player-tick">
        <input
          type="checkbox"
          checked={done[at] ?? false}
          onChange={(event) => {
            const isDone = event.currentTarget.checked;
            change((was) => tickDrill(was, today, at, isDone));
          }}
        />
        <span>{drill.name}</span>
      </label>
      {drill.how && <p>{drill.how}</p>}
      {drill.often && <p className="player-often">{drill.often}</p>}
      <fieldset className="player-count" aria-label={sayRepetitions(drill.name)}>
        <button
          type="button"
          className="plain"
          aria-label="One less"
          onClick={() => change((was) => countDrill(was, today, at, -1))}
        >
          −
        </button>
        <output>
          <Tally count={count} />
          <b>{count}</b>
        </output>
        <button
          type="button"
          className="plain"
          aria-label="One more"
          onClick={() => change((was) => countDrill(was, today, at, 1))}
        >
          +
        </button>
      </fieldset>
      <Choice
        label="Felt it"
        value={practice.felt[at] ?? null}
        options={FELT_OPTIONS}
        onChoose={(felt) => change((was) => answerFelt(was, at, felt))}
      />
    </article>
  );
}

/** Wipes what was ticked; asks once more before it does. */
function Wipe({ practice, change }: Omit<Props, 'plan'>) {
  const [isAsked, setAsked] = useState(false);
  if (!isAsked)
    return (
      <button type="button" className="plain" onClick={() => setAsked(true)}>
        Wipe what I ticked
      </button>
    );
  return (
    <p className="player-wipe">
      <span>{WIPES}</span>
      <button
        type="button"
        className="plain"
        onClick={() => {
          change(() => noPractice(practice.planId, practice.felt.length));
          setAsked(false);
        }}
      >
        Wipe them
      </button>
      <button type="button" className="plain" onClick={() => setAsked(false)}>
        Keep them
      </button>
    </p>
  );
}

/** One reminder a day until the day before the next lesson, or for a week, as a file of the player's own. */
function saveReminders({ id, drills, nextDate }: ChosenPlan, today: string): void {
  const eve = nextDate === null ? '' : dayAfter(nextDate, -1);
  const text = toCalendar({
    uid: `${id}@slantwise`,
    stamp: new Date().toISOString().replace(/[-:]|\.\d+/g, ''),
    from: today,
    until: eve > today ? eve : dayAfter(today, 6),
    title: REMINDER,
    text: drills.map(({ name, often }) => [name, often].filter(Boolean).join(': ')).join('\n'),
  });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/calendar' }));
  link.download = 'slantwise-practice.ics';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
