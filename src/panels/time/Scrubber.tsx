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
  useWritten,
  type PositionId,
} from '../../store';
import { along } from '../dials/DialRule';
import { DOWNSWING_SHARES, railOf, type Rail } from './timeRail';
import { sayTime } from '../../words/swing/time';

const FINE = 1000;
/** One arrow key, s of reference time. */
const NUDGE = 0.005;

/** The rail of the swing on the desk. Ten knots: not worth remembering. */
const currentRail = (): Rail => railOf(current().positions);

/** The rail of the swing with its ten positions and the playhead. The playhead is moved without rendering. */
export function Scrubber() {
  const input = useRef<HTMLInputElement>(null);

  useEffect(() => {
    let said: string | undefined;
    const show = (): void => {
      const field = input.current;
      if (!field) return;
      const { t, playing } = desk.getState().session;
      const now = currentRail().shareAt(t) * FINE;
      if (field.valueAsNumber !== now) field.value = String(now);
      if (playing) return;
      const { positions, swing } = current();
      const words = sayTime(t, positions, swing.tempo);
      if (words !== said) field.setAttribute('aria-valuetext', words);
      said = words;
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

/** Closer than these shares of the rail, the checkpoints' words would run into each other, and those of P6 into P7. */
const CLOSE = 0.105;
const CLOSE_TO_NEXT = 0.07;
/** Closer than this even "P6" and "P7" would touch, and the checkpoint's name stays. */
const OVER_NEXT = 0.035;
const WORDS: Partial<Record<PositionId, string>> = { P5: ' lead arm', P6: ' shaft' };

/** A tick on the page, and where it was put last. */
interface Tick {
  readonly element: HTMLElement;
  share: number;
}

/** The ten positions on the rail. Which there are is rendered; where they stand is written. */
function Ticks() {
  const reached = useDerived(({ positions }) => POSITION_IDS.filter((id) => positions[id] !== null).join(' '));
  const crowd = useDerived(({ positions: { P5, P6 } }) => {
    if (P6 === null) return undefined;
    const { shareAt } = currentRail();
    // A swing that is late may even pass P7.
    const toNext = Math.abs(DOWNSWING_SHARES.to - shareAt(P6));
    if (toNext < CLOSE_TO_NEXT) return toNext < OVER_NEXT ? 'over P7' : 'P7';
    return P5 !== null && shareAt(P6) - shareAt(P5) < CLOSE ? 'P5' : undefined;
  });
  const ticks = useRef<Partial<Record<PositionId, Tick>>>({});
  useWritten(
    () => current().positions,
    (positions) => {
      const { shareAt } = currentRail();
      for (const id of POSITION_IDS) {
        const [t, tick] = [positions[id], ticks.current[id]];
        if (t === null || !tick) continue;
        const share = shareAt(t);
        if (share !== tick.share) tick.element.style.left = along(share);
        tick.share = share;
      }
    },
  );
  return POSITION_IDS.filter((id) => reached.split(' ').includes(id)).map((id) => (
    <span
      key={id}
      ref={(element) => {
        if (element) ticks.current[id] = { element, share: NaN };
        else delete ticks.current[id];
      }}
      className="scrub-position"
      data-position={id}
      data-checkpoint={id in WORDS}
      data-crowd={id === 'P6' ? crowd : undefined}
      aria-hidden="true"
    >
      <i />
      <span>
        {id}
        {WORDS[id] && !crowd && <span className="scrub-word">{WORDS[id]}</span>}
      </span>
    </span>
  ));
}
