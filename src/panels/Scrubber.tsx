import { useEffect, useRef, type KeyboardEvent } from 'react';
import {
  current,
  desk,
  POSITION_IDS,
  setPlayhead,
  step,
  subscribe,
  swingSpan,
  useDerived,
  type Positions,
} from '../store';
import { along } from './DialRule';
import { DOWNSWING_SHARES, railOf, type Rail } from './timeRail';
import { sayTime } from './timeWords';

const FINE = 1000;
/** One arrow key, s of reference time. */
const NUDGE = 0.005;

/** One rail per swing; asked for often, built seldom. */
let known: { positions: Positions; rail: Rail } | undefined;
function currentRail(): Rail {
  const { positions } = current();
  if (known?.positions !== positions) known = { positions, rail: railOf(positions) };
  return known.rail;
}

/** The rail of the swing with its ten positions and the playhead. The playhead is moved without rendering. */
export function Scrubber() {
  const input = useRef<HTMLInputElement>(null);

  useEffect(() => {
    const show = (): void => {
      const field = input.current;
      if (!field) return;
      const { t, playing } = desk.getState().session;
      field.value = String(currentRail().shareAt(t) * FINE);
      if (playing) return;
      const { positions, swing } = current();
      field.setAttribute('aria-valuetext', sayTime(t, positions, swing.tempo));
    };
    show();
    return subscribe(show);
  }, []);

  const nudge = (event: KeyboardEvent): void => {
    const { t } = desk.getState().session;
    const { from, to } = swingSpan();
    const moves: Record<string, () => void> = {
      ArrowLeft: () => setPlayhead(t - NUDGE),
      ArrowDown: () => setPlayhead(t - NUDGE),
      ArrowRight: () => setPlayhead(t + NUDGE),
      ArrowUp: () => setPlayhead(t + NUDGE),
      PageDown: () => step(-1),
      PageUp: () => step(1),
      Home: () => setPlayhead(from),
      End: () => setPlayhead(to),
    };
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    move();
  };

  return (
    <div className="scrub">
      <i className="scrub-rail" aria-hidden="true" />
      <i
        className="scrub-down"
        aria-hidden="true"
        style={{
          left: along(DOWNSWING_SHARES.from),
          width: `calc((100% - 36px) * ${DOWNSWING_SHARES.to - DOWNSWING_SHARES.from})`,
        }}
      />
      <Ticks />
      <input
        ref={input}
        type="range"
        min={0}
        max={FINE}
        step="any"
        aria-label="Time in the swing"
        onKeyDown={nudge}
        onChange={(event) => setPlayhead(currentRail().timeAt(event.currentTarget.valueAsNumber / FINE))}
      />
    </div>
  );
}

/** Closer than this share of the rail, the checkpoints' words would run into each other. */
const CLOSE = 0.105;
const WORDS: Partial<Record<(typeof POSITION_IDS)[number], string>> = { P5: ' lead arm', P6: ' shaft' };

function Ticks() {
  const positions = useDerived(({ positions: found }) => found);
  const rail = currentRail();
  const { P5, P6 } = positions;
  const close = P5 !== null && P6 !== null && rail.shareAt(P6) - rail.shareAt(P5) < CLOSE;
  return POSITION_IDS.map((id) => {
    const t = positions[id];
    if (t === null) return null;
    const left = along(rail.shareAt(t));
    return (
      <span key={id} className="scrub-position" data-checkpoint={id in WORDS} style={{ left }} aria-hidden="true">
        <i />
        <span>
          {id}
          {WORDS[id] && !close && <span className="scrub-word">{WORDS[id]}</span>}
        </span>
      </span>
    );
  });
}
