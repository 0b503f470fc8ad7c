import type { ReactNode } from 'react';
import { DELIVERY_RULES } from '../../reading/delivery/delivery';
import { setBall, setWholeFlight, useDerived, useDesk } from '../../store';
import {
  EXTRAPOLATED,
  RULE_WORDS,
  sayEveryNumber,
  sayMiss,
  sayNoShot,
  sayShape,
  sayShortcomings,
  sayStrikeAndFlight,
  type DeliveryWords,
} from '../../words';
import { toFaceReturned } from '../../store/document/convert';
import { FACE_RETURN_ASSUMED, sayFaceDrawn, sayReturnTakes } from '../../words/swing/faceReturn';
import { ballRows } from './ballRows';
import { BallDay } from './BallDay';
import { Choice } from '../fields/Choice';
import { ForStudent } from '../shell/student/ForStudent';
import './ball.css';

/** The shot in the trade's word and in a sentence, or why there is none. */
function Lead() {
  const shot = useDerived((derived) => derived.shot);
  const handed = useDerived(({ player }) => player.handed);
  if ('missing' in shot) {
    return (
      <ForStudent>
        <p className="ball-lead">
          <span>{sayNoShot(shot)}</span>
        </p>
      </ForStudent>
    );
  }
  const { name, how } = sayShape(shot, handed);
  return (
    <ForStudent>
      <p className="ball-lead">
        <strong>{name}</strong> <span>{how}.</span>
      </p>
    </ForStudent>
  );
}

/** What the arms are taken to do, said in so many words. */
function Rule() {
  const ball = useDesk(({ document }) => document.ball);
  const { label, means } = RULE_WORDS[ball.rule];
  return (
    <section aria-labelledby="ball-rule" className="ball-rule">
      <h3 id="ball-rule">From shaft parallel to the ball</h3>
      <Choice
        label="The arms"
        value={ball.rule}
        options={DELIVERY_RULES.map((value) => ({ value, text: RULE_WORDS[value].label }))}
        onChoose={(rule) => setBall({ ...ball, rule })}
      />
      <p>
        <b>{label}.</b> {means}
      </p>
      <FaceReturn />
      <Shortcomings />
    </section>
  );
}

/** Where the face is drawn, that this is an assumption, and what bringing it back to square takes. */
function FaceReturn() {
  const share = useDesk(({ document }) => toFaceReturned(document.ball));
  const delivery = useDerived((derived) => derived.delivery);
  if ('missing' in delivery || !delivery.returnTakes) return null;
  return (
    <>
      <p>
        {sayFaceDrawn(share)} {FACE_RETURN_ASSUMED}
      </p>
      <p>{sayReturnTakes(delivery.returnTakes).join(' ')}</p>
    </>
  );
}

/** A delivery that does not reach the ball as asked says so, in words and centimetres. */
function Shortcomings() {
  const delivery = useDerived((derived) => derived.delivery);
  const units = useDesk(({ document }) => document.units);
  if ('missing' in delivery) return <p className="ball-short">{sayNoShot(delivery)}</p>;
  return (
    <>
      {sayShortcomings(delivery, units).map((sentence) => (
        <p key={sentence} className="ball-short">
          {sentence}
        </p>
      ))}
      {delivery.status !== 'held' && <Rows title="How far the head is off" rows={sayMiss(delivery, units)} />}
    </>
  );
}

/** Readings in a list: what, how much, which way. */
function Rows({ title, rows }: { title: string; rows: readonly DeliveryWords[] }) {
  return (
    <section className="ball-rows" aria-label={title}>
      <h3>{title}</h3>
      <dl>
        {rows.map(({ label, text, spoken }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <span aria-hidden="true">{text}</span>
              <span className="unseen">{spoken.slice(label.length).trim()}</span>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** What the club does, where the ball starts, where it goes from there. */
function ThreeSentences() {
  const delivery = useDerived((derived) => derived.delivery);
  const shot = useDerived((derived) => derived.shot);
  const handed = useDerived(({ player }) => player.handed);
  const units = useDesk(({ document }) => document.units);
  if ('missing' in delivery || 'missing' in shot) return null;
  return (
    <ul className="ball-three">
      {sayStrikeAndFlight(delivery, shot, handed, units).map(({ label, text }) => (
        <li key={label}>{text}</li>
      ))}
    </ul>
  );
}

function Numbers() {
  const delivery = useDerived((derived) => derived.delivery);
  const shot = useDerived((derived) => derived.shot);
  const handed = useDerived(({ player }) => player.handed);
  const units = useDesk(({ document }) => document.units);
  const exaggerated = useDerived((derived) => derived.exaggerated);
  if ('missing' in delivery) return null;
  const flown = 'missing' in shot ? undefined : shot;
  return (
    <details className="ball-numbers">
      <summary>All numbers</summary>
      <p className="fine">{sayEveryNumber(exaggerated)}</p>
      {ballRows(delivery, flown, handed, units).map((group) => (
        <Rows key={group.title} {...group} />
      ))}
      {flown?.flight.extrapolated && <p className="fine">{EXTRAPOLATED}</p>}
    </details>
  );
}

/** Puts the flight on the stage. */
function WholeFlight() {
  const isDrawn = useDesk(({ session }) => session.wholeFlight);
  return (
    <button
      type="button"
      className="plain"
      role="switch"
      aria-checked={isDrawn}
      onClick={() => setWholeFlight(!isDrawn)}
    >
      Draw the flight on the stage
    </button>
  );
}

/** What reaches the ball and what the ball does: both drawings, the numbers, the assumption, and the day. */
export const Ball = ({ drawings }: { drawings: ReactNode }) => (
  <div className="ball">
    <Lead />
    <ThreeSentences />
    <div className="ball-drawings">{drawings}</div>
    <WholeFlight />
    <Rule />
    <Numbers />
    <BallDay />
  </div>
);
