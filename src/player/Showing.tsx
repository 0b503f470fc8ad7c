import { useState, useSyncExternalStore } from 'react';
import type { ExportSnapshot, ShownSwing } from '../export/task/exportSnapshot';
import { Choice } from '../panels/fields/Choice';
import { railOf } from '../panels/time/timeRail';
import { CHECKPOINT_IDS } from '../reading/checkpointTable';
import { CHECKPOINT_NAMES, sayCheckpoint } from '../words';
import { sayTime } from '../words/swing/time';
import type { Clock } from './clock';
import { Twins } from './Twins';
import type { Side } from './twinStage';

const FINE = 1000;
const SPEEDS = [
  { speed: 1, text: '1/1', spoken: 'Real speed' },
  { speed: 0.25, text: '1/4', spoken: 'Quarter speed' },
] as const;
export const FIRST_SPEED = 0.25;

/** Before and after with both verdicts, the time, and the side they are seen from. */
export function Showing({ subject, clock }: { subject: ExportSnapshot; clock: Clock }) {
  const [side, setSide] = useState<Side>('downTheLine');
  return (
    <section className="player-showing" aria-label="Before and after">
      <div className="player-frame">
        <b className="player-take">Before</b>
        <b className="player-take">After</b>
        {/* An img element cannot hold the canvas. */}
        {/* oxlint-disable-next-line jsx-a11y/prefer-tag-over-role */}
        <div className="player-picture" role="img" aria-label={sayPair(subject)}>
          <Twins subject={subject} clock={clock} side={side} />
        </div>
        <Verdicts subject={subject} take={subject.now} label="Before" />
        <Verdicts subject={subject} take={subject.after} label="After" />
      </div>
      <Time subject={subject} clock={clock} />
      <Choice label="Seen from" value={side} options={SIDES} onChoose={setSide} />
    </section>
  );
}

const say = ({ derived, document }: ExportSnapshot, take: ShownSwing) =>
  CHECKPOINT_IDS.map((id) => ({
    id,
    ...sayCheckpoint(id, take.checkpoints[id], derived.bands, document.units),
  }));

const sayPair = (subject: ExportSnapshot): string =>
  [subject.now, subject.after]
    .map((take, i) => [i === 0 ? 'Before.' : 'After.', ...say(subject, take).map(({ sentence }) => sentence)].join(' '))
    .join(' ');

function Verdicts({ subject, take, label }: { subject: ExportSnapshot; take: ShownSwing; label: string }) {
  return (
    <ul className="player-verdicts" aria-label={label}>
      {say(subject, take).map(({ id, verdict, word, number, unit }) => (
        <li key={id} data-verdict={verdict}>
          <i aria-hidden="true" />
          <span>
            <small>{CHECKPOINT_NAMES[id].title}</small>
            <strong>{word}</strong>
            {number !== '' && (
              <b>
                {number} {unit}
              </b>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Time({ subject: { now }, clock }: { subject: ExportSnapshot; clock: Clock }) {
  const { t, playing } = useSyncExternalStore(clock.subscribe, clock.get);
  const [speed, setSpeed] = useState<number>(FIRST_SPEED);
  const rail = railOf(now.positions);
  const marks = [now.positions.P5, now.positions.P6].flatMap((at) => (at === null ? [] : [rail.shareAt(at)]));
  return (
    <div className="player-time">
      <button
        type="button"
        className="play"
        aria-label={playing ? 'Pause' : 'Play'}
        onClick={() => (playing ? clock.pause() : clock.play(speed))}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d={playing ? 'M4 1h4v18H4zM12 1h4v18h-4z' : 'M4 1v18l15-9z'} />
        </svg>
      </button>
      <div className="player-rail">
        {marks.map((share) => (
          <i key={share} style={{ left: `calc(18px + (100% - 36px) * ${share})` }} aria-hidden="true" />
        ))}
        <input
          type="range"
          min={0}
          max={FINE}
          step={1}
          value={Math.round(rail.shareAt(t) * FINE)}
          aria-label="Time in the swing"
          aria-valuetext={sayTime(t, now.positions, now.swing.tempo)}
          onChange={(event) => clock.set(rail.timeAt(event.currentTarget.valueAsNumber / FINE))}
        />
      </div>
      <fieldset className="speeds" aria-label="Speed">
        {SPEEDS.map((one) => (
          <button
            key={one.text}
            type="button"
            aria-pressed={one.speed === speed}
            aria-label={one.spoken}
            onClick={() => {
              setSpeed(one.speed);
              if (playing) clock.play(one.speed);
            }}
          >
            {one.text}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

const SIDES = [
  { value: 'downTheLine', text: 'Down the line' },
  { value: 'faceOn', text: 'Face on' },
] as const;
