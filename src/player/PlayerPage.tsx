import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import type { ExportSnapshot } from '../export/task/exportSnapshot';
import { loadingChunk } from '../panels';
import { Mark } from '../panels/shell/Mark';
import { desk, toMovements, type Document } from '../store';
import type { ChosenPlan } from '../store/document/chosenPlan';
import { writeWords } from '../practice/edit';
import { changesBetween } from '../store/plan/draftPlan';
import { CAUTIONS, NOTHING_TO_CHANGE } from '../words';
import { sayDay } from '../words/book/days';
import { CHILDREN, FINDING_SWING, LAST_WORDS, sayFor } from '../words/player/page';
import { sayWho } from '../words/showing/who';
import { sayPlanChanges, sayTask } from '../words/why/planText';
import { createClock } from './clock';
import { Practise } from './Practise';
import { usePractice } from './practiceStore';
import { FIRST_SPEED, Showing } from './Showing';
import { useSubject } from './useSubject';
import './player.css';

/** Fetched once the page stands: it draws a code. */
const SendBack = lazy(loadingChunk(async () => ({ default: (await import('./SendBack')).SendBack })));

/** Fetched at the tap. */
const Mirror = lazy(loadingChunk(() => import('./mirror/Mirror')));

export interface PlannedDocument extends Document {
  readonly plan: ChosenPlan;
}
interface Props {
  readonly document: PlannedDocument;
  readonly onOpenDesk: () => void;
}

/** What a link with a plan opens: the player's own page. */
export default function PlayerPage({ document: shown, onOpenDesk }: Props) {
  const { plan } = shown;
  const subject = useSubject(shown);
  const { practice, change, problem } = usePractice(plan.id, plan.drills.length);
  useBoard(shown.board);
  const [isAtMirror, setAtMirror] = useState(false);
  const changes = changesBetween(plan.from, plan.movements);
  const lines = sayPlanChanges(changes, shown.units);
  if (isAtMirror) {
    return (
      <Suspense>
        <Mirror document={shown} onLeave={() => setAtMirror(false)} />
      </Suspense>
    );
  }
  return (
    <div className="player">
      <header className="player-head">
        <Mark />
        <p>{sayFor(plan.names)}</p>
        <span>{sayWho(shown)}</span>
      </header>
      <main>
        <div className="player-task">
          <h1>{sayTask(changes, toMovements(plan.from))}</h1>
          <ul>
            {(lines.length > 0 ? lines : [NOTHING_TO_CHANGE]).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
        {subject ? <Moving subject={subject} /> : <p className="player-wait">{FINDING_SWING}</p>}
        <div className="player-words">
          {plan.feel && (
            <section>
              <h2>Feel</h2>
              <p className="player-feel">{plan.feel}</p>
            </section>
          )}
          {plan.words && (
            <section>
              <h2>From your coach</h2>
              <p>{plan.words}</p>
            </section>
          )}
          {plan.nextDate && (
            <p className="player-next">
              Next lesson: <b>{sayDay(plan.nextDate)}</b>
            </p>
          )}
          {plan.drills.length > 0 && <Practise plan={plan} practice={practice} change={change} />}
          {plan.drills.length > 0 && (
            <Suspense>
              <SendBack practice={practice} onWords={(words) => change((was) => writeWords(was, words))} />
            </Suspense>
          )}
          {problem && <output className="player-problem">{problem}</output>}
          <section className="player-mind">
            <h2>Mind</h2>
            <p>{[...new Set([...plan.cautions, ...CAUTIONS])].join(' ')}</p>
            <p>{CHILDREN}</p>
          </section>
          <button type="button" className="plain player-desk" onClick={() => setAtMirror(true)}>
            Practise at the mirror
          </button>
          <button type="button" className="plain player-desk" onClick={onOpenDesk}>
            Open the desk
          </button>
          <p className="fine">{LAST_WORDS}</p>
        </div>
      </main>
    </div>
  );
}

/** One clock for the swing that is shown; plays once when it opens, unless movement is not wanted. */
function Moving({ subject }: { subject: ExportSnapshot }) {
  const clock = useMemo(() => createClock(subject.now.positions, subject.now.swing.tempo), [subject]);
  useEffect(() => {
    if (!matchMedia('(prefers-reduced-motion: reduce)').matches) clock.play(FIRST_SPEED);
    const hide = (): void => clock.pause();
    document.addEventListener('visibilitychange', hide);
    return () => {
      document.removeEventListener('visibilitychange', hide);
      clock.pause();
    };
  }, [clock]);
  return <Showing subject={subject} clock={clock} />;
}

/** The page takes the board of the document, and gives the desk's back. */
function useBoard(board: Document['board']): void {
  useEffect(() => {
    const { dataset } = document.documentElement;
    dataset['board'] = board;
    return () => {
      dataset['board'] = desk.getState().document.board;
    };
  }, [board]);
}
