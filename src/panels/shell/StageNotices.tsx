import { useRef } from 'react';
import '../ball/ball.css';
import {
  current,
  dialValue,
  dismissNotice,
  EDGE_DIALS,
  putText,
  releaseBench,
  useDerived,
  useDesk,
  useOverdue,
  useWritten,
  type Derived,
  type Document,
} from '../../store';
import {
  COMPUTED,
  EXAGGERATED,
  LAST_FOUND,
  sayFace,
  sayFaceEnds,
  sayNoShot,
  sayPastUsual,
  sayPath,
  sayShape,
  sayWhyWithheld,
} from '../../words';
import { BENCH_POSE } from '../../words/swing/status';
import { lowered } from '../../words/numbers/capital';
import { dialWords, spokenLike } from '../../words/swing/edgeDials';
import { useWrittenText } from '../fields/useWrittenText';
import { GuessNotice } from '../why/Guess';
import { TrialNotice } from '../why/WhyNotices';

/** The first dial past its usual range, in a sentence: one hint at a time. */
function cautionOf({ movements, units }: Document): string | undefined {
  for (const { id } of EDGE_DIALS) {
    if ((id === 'pelvisRate' || id === 'pelvisDelay') && !movements.pelvis) continue;
    const value = dialValue(movements, id);
    const past = sayPastUsual(spokenLike(id), value, units);
    if (past === undefined) continue;
    return `${dialWords(id, value, units).label}: ${lowered(past)}`;
  }
  return undefined;
}

/** What the swing brings to the ball and what the ball does, always in sight. Written: it changes at every step of a slider. */
function Essentials() {
  const isDelivered = useDerived(({ delivery }) => !('missing' in delivery));
  const exaggerated = useDesk(({ session }) => session.exaggerate);
  const path = useWrittenText<HTMLElement>(({ delivery }) =>
    'missing' in delivery ? '' : sayPath(delivery.path).text,
  );
  const face = useWrittenText<HTMLElement>(({ delivery }) =>
    'missing' in delivery ? '' : `${sayFace(delivery.face).text}${sayFaceEnds(delivery) && ','}`,
  );
  const faceBand = useWrittenText<HTMLElement>(({ delivery }) => ('missing' in delivery ? '' : sayFaceEnds(delivery)));
  const ball = useRef<HTMLElement>(null);
  useWritten(
    () => sayBall(current()),
    (said) => ball.current && writeBall(ball.current, said),
  );
  return (
    <p className="path-readout">
      {isDelivered && (
        <>
          <span>Path</span> <b ref={path} />
          <br />
          <span>Face</span> <b ref={face} />
          <i ref={faceBand} />
        </>
      )}
      <em ref={ball} />
      <small>
        {COMPUTED}
        {exaggerated && <>, {EXAGGERATED}</>}
      </small>
    </p>
  );
}

/** What becomes of the ball: its flight by name, and what follows the name; or why none flies. */
function sayBall({ shot, player }: Derived): string {
  if ('missing' in shot) return sayNoShot(shot);
  const { name, how } = sayShape(shot, player.handed);
  return `${name}${AFTER_NAME}: ${how}.`;
}

const AFTER_NAME = '\n';

/** What follows the name is left out where there is little room. */
function writeBall(ball: HTMLElement, said: string): void {
  const [name, after] = said.split(AFTER_NAME);
  const before = ball.lastElementChild;
  if (before && after !== undefined) {
    (ball.firstChild as Text).data = name;
    putText(before, after);
    return;
  }
  ball.textContent = name;
  if (after === undefined) return;
  const how = document.createElement('span');
  how.className = 'is-how';
  how.textContent = after;
  ball.append(how);
}

/** In place of all that: why there is no swing for what was asked, and whose the figure is. */
function Withheld() {
  const why = useDerived(sayWhyWithheld);
  return (
    <p className="slip slip-withheld">
      {why} {LAST_FOUND}
    </p>
  );
}

/** What there is to say of what was just done or tried, until it is read. */
export function Notice() {
  const notice = useDesk((state) => state.notice);
  if (notice === null) return null;
  return (
    <div className="slip" role="alert">
      <p>{notice}</p>
      <button type="button" className="text-button" onClick={dismissNotice}>
        OK
      </button>
    </div>
  );
}

/** Slips of paper pinned on the stage: what holds for the whole picture right now. */
export function StageNotices() {
  useOverdue();
  const isWithheld = useDerived((derived) => derived.isWithheld);
  const isInDrawer = useDesk(({ session }) => session.drawer !== null && session.drawer !== 'joints');
  const warning = useRef<HTMLParagraphElement>(null);
  useWritten(
    ({ document }) => cautionOf(document),
    (text = '') => {
      if (!warning.current) return;
      warning.current.textContent = text;
      warning.current.className = text === '' ? '' : 'slip slip-caution';
      warning.current.hidden = text === '';
    },
  );
  const bench = useDesk(({ session }) => session.bench !== null);
  const exaggerated = useDesk(({ session }) => session.exaggerate);
  return (
    <div className="slips">
      {isWithheld ? <Withheld /> : <Essentials />}
      <TrialNotice />
      <GuessNotice />
      {!isInDrawer && <Notice />}
      {bench && (
        <div className="slip">
          <p>{BENCH_POSE}</p>
          <button type="button" className="text-button" onClick={releaseBench}>
            Back to swing
          </button>
        </div>
      )}
      {exaggerated && <p className="slip slip-mark">{EXAGGERATED}</p>}
      <p ref={warning} />
    </div>
  );
}
