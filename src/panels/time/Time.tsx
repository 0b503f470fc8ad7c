import { pause, play, setSpeed, SPEEDS, step, useDesk, type Speed } from '../../store';
import { Scrubber } from './Scrubber';

const SPEED_WORDS: Record<Speed, { readonly text: string; readonly spoken: string }> = {
  1: { text: '1/1', spoken: 'Real speed' },
  0.25: { text: '1/4', spoken: 'Quarter speed' },
  0.1: { text: '1/10', spoken: 'Tenth speed' },
};

/** Play, step from position to position, the scrubber, and how fast the clock runs. */
export function Time() {
  return (
    <section className="time" aria-label="Time">
      <div className="time-buttons">
        <Play />
        <button type="button" className="plain step" aria-label="To the position before" onClick={() => step(-1)}>
          ‹
        </button>
        <button type="button" className="plain step" aria-label="To the next position" onClick={() => step(1)}>
          ›
        </button>
      </div>
      <Scrubber />
      <Speeds />
    </section>
  );
}

function Play() {
  const playing = useDesk(({ session }) => session.playing);
  return (
    <button type="button" className="play" aria-label={playing ? 'Pause' : 'Play'} onClick={playing ? pause : play}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d={playing ? 'M4 1h4v18H4zM12 1h4v18h-4z' : 'M4 1v18l15-9z'} />
      </svg>
    </button>
  );
}

function Speeds() {
  const chosen = useDesk(({ session }) => session.speed);
  return (
    <fieldset className="speeds" aria-label="Speed">
      {SPEEDS.map((speed) => (
        <button
          key={speed}
          type="button"
          aria-pressed={speed === chosen}
          aria-label={SPEED_WORDS[speed].spoken}
          onClick={() => setSpeed(speed)}
        >
          {SPEED_WORDS[speed].text}
        </button>
      ))}
    </fieldset>
  );
}
