import { FACE_RETURNED_LIMITS, setBall, useDesk } from '../../store';
import { toFaceReturned } from '../../store/document/convert';
import { FACE_RETURN_ASSUMED, sayFaceReturned } from '../../words/swing/faceReturn';
import { holdKey, holdPointer } from '../dials/gesture';
import { FACE_STAYS } from '../../words/setUp/setUp';

/** One step of the slider: a twentieth of the way. */
const STEP = 0.05;

/** Where between the two ends of its band the face is drawn. Without a document's own value it is the model's. */
export function SetUpFace() {
  const ball = useDesk(({ document }) => document.ball);
  const share = toFaceReturned(ball);
  const words = sayFaceReturned(share);
  const { min, max } = FACE_RETURNED_LIMITS;
  return (
    <section aria-labelledby="set-up-face">
      <h3 id="set-up-face">Face at the ball</h3>
      <div className="field field-slider">
        <label htmlFor="face-returned">Face comes back</label>
        <input
          id="face-returned"
          type="range"
          min={min}
          max={max}
          step={STEP}
          value={share}
          aria-valuetext={words.replace('%', 'percent')}
          onPointerDown={holdPointer}
          onKeyDown={holdKey}
          onChange={(event) => setBall({ ...ball, faceReturned: Number(event.currentTarget.valueAsNumber.toFixed(2)) })}
        />
        <output htmlFor="face-returned">{words}</output>
      </div>
      <p className="fine">{FACE_RETURN_ASSUMED}</p>
      {ball.rule === 'nothing adapts' && <p className="fine">{FACE_STAYS}</p>}
    </section>
  );
}
