import { useMemo, useState } from 'react';
import type { Document } from '../../store';
import { CHECKPOINT_IDS, type CheckpointId } from '../../reading/checkpointTable';
import { CHECKPOINT_NAMES } from '../../words';
import {
  CAMERA_WORDS,
  MIRROR_CAUTION,
  MIRROR_FINE_PRINT,
  MIRROR_TASK,
  NEVER_THERE,
  sayContour,
  sayHeld,
  sayPose,
} from '../../words/player/mirror';
import { FINDING_SWING } from '../../words/player/page';
import { Tally } from '../Tally';
import { useSubject } from '../useSubject';
import { lookAt, type Lines, type Side, type Sights } from './contour';
import { FitControls, type Standing } from './FitControls';
import { Stage } from './Stage';
import { useCamera } from './useCamera';
import { useHold } from './useHold';
import './mirror.css';

const GOAL = 10;
/** Where head and feet are before the player moves the lines, shares of the stage's height. */
const FIRST_LINES: Lines = { head: 0.25, feet: 0.85 };
/** A chair's back, a few steps away, m: about hip height. */
const FIRST_STANDING: Standing = { distance: 3, height: 0.9 };

const SIDES: readonly { side: Side; text: string }[] = [
  { side: 'faceOn', text: 'Face on' },
  { side: 'downTheLine', text: 'Down the line' },
];

interface Props {
  readonly document: Document;
  readonly onLeave: () => void;
}

/** The device as a mirror: its camera behind the pose that the plan asks for. It judges nothing. */
export default function Mirror({ document: shown, onLeave }: Props) {
  const [checkpoint, setCheckpoint] = useState<CheckpointId>('leadArmParallel');
  const [side, setSide] = useState<Side>('faceOn');
  const [lines, setLines] = useState(FIRST_LINES);
  const [standing, setStanding] = useState(FIRST_STANDING);
  const [wantsFit, setFitting] = useState(false);
  const { state, running, start } = useCamera();
  const isFitting = wantsFit && running !== undefined;
  const [chosenMirrored, setMirrored] = useState<boolean>();
  const isMirrored = chosenMirrored ?? running?.isFront ?? true;
  const { counting, held, toggle, startOver } = useHold();
  const sights = useSights(shown, side, standing);
  const stand = isFitting ? 'address' : checkpoint;
  const pose = sayPose(CHECKPOINT_NAMES[checkpoint].title, side);
  const isMissing = sights !== undefined && sights.stands[stand] === undefined;
  return (
    <main className="mirror" data-fitting={isFitting || undefined}>
      <Stage
        sights={sights}
        stand={stand}
        lines={lines}
        onLines={isFitting ? setLines : undefined}
        stream={running?.stream}
        isMirrored={isMirrored}
        isLeft={shown.player.handed === 'left'}
        board={shown.board}
        label={isFitting ? MIRROR_TASK.fit.contour : sayContour(pose)}
      />
      <header className="mirror-card">
        <h1>{isFitting ? MIRROR_TASK.fit.title : MIRROR_TASK.hold.title}</h1>
        <p>{isFitting ? MIRROR_TASK.fit.how : pose}</p>
        {isMissing && <p>{NEVER_THERE}</p>}
        {!sights && <p>{FINDING_SWING}</p>}
      </header>
      <output className="mirror-count" data-phase={counting?.phase}>
        {counting?.phase === 'ready' && <small>Get ready</small>}
        {counting?.left}
      </output>
      <button type="button" className="plain mirror-leave" onClick={onLeave}>
        Leave
      </button>
      <div className="mirror-controls">
        {state !== 'on' && (
          <div className="mirror-ask">
            <output>{CAMERA_WORDS[state]}</output>
            <button
              type="button"
              className="plain mirror-main"
              aria-disabled={state === 'asking' || undefined}
              onClick={() => {
                if (state === 'asking') return;
                // With a camera the first thing to do is to make the contour one's own size.
                if (state === 'off') setFitting(true);
                void start();
              }}
            >
              {state === 'stopped' || state === 'lost' ? 'Start the camera again' : 'Use the camera'}
            </button>
          </div>
        )}
        {isFitting ? (
          <FitControls
            lines={lines}
            onLines={setLines}
            standing={standing}
            onStanding={setStanding}
            length={shown.units.length}
            onDone={() => setFitting(false)}
          />
        ) : (
          <>
            <fieldset className="mirror-choice" aria-label="Checkpoint">
              {CHECKPOINT_IDS.map((id) => (
                <Choice key={id} isOn={id === checkpoint} onChoose={() => setCheckpoint(id)}>
                  {CHECKPOINT_NAMES[id].title}
                </Choice>
              ))}
            </fieldset>
            <fieldset className="mirror-choice" aria-label="Seen from">
              {SIDES.map((one) => (
                <Choice key={one.side} isOn={one.side === side} onChoose={() => setSide(one.side)}>
                  {one.text}
                </Choice>
              ))}
            </fieldset>
            <div className="mirror-held">
              <button type="button" className="plain mirror-main" onClick={toggle}>
                {counting ? 'Stop' : 'Hold'}
              </button>
              <p>
                <Tally count={held} />
                <b>{held}</b> {sayHeld(held, GOAL)}
              </p>
            </div>
            <div className="mirror-acts">
              <button type="button" className="plain" onClick={startOver}>
                Start over
              </button>
              {running && (
                <button type="button" className="plain" onClick={() => setFitting(true)}>
                  Fit to me
                </button>
              )}
              <button
                type="button"
                className="plain"
                role="switch"
                aria-checked={isMirrored}
                onClick={() => setMirrored(!isMirrored)}
              >
                Mirrored
              </button>
            </div>
          </>
        )}
        <p className="fine mirror-caution">{MIRROR_CAUTION}</p>
        <p className="fine">{MIRROR_FINE_PRINT}</p>
      </div>
    </main>
  );
}

interface ChoiceProps {
  readonly isOn: boolean;
  readonly onChoose: () => void;
  readonly children: string;
}

const Choice = ({ isOn, onChoose, children }: ChoiceProps) => (
  <button type="button" className="plain" aria-pressed={isOn} onClick={onChoose}>
    {children}
  </button>
);

/** What the device sees of the swing that the plan asks for, else of the one that is dialled. */
function useSights(shown: Document, side: Side, { distance, height }: Standing): Sights | undefined {
  const subject = useSubject(shown);
  return useMemo(() => {
    if (!subject) return undefined;
    const { derived, now, after } = subject;
    const { swing, checkpoints } = shown.plan ? after : now;
    const { body, club } = derived;
    return lookAt({ body, club, swing, checkpoints }, { side, distance, height });
  }, [subject, shown.plan, side, distance, height]);
}
