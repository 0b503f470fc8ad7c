import { useEffect, useRef, useState } from 'react';
import { beginGesture, endGesture, useWritten, type DeskState } from '../../store';

/** A held button waits, then repeats, ms. */
const WAIT_MS = 420;
const REPEAT_MS = 90;

/** Steps at once, then again and again until released. The whole hold is one undo step. */
function createRepeat() {
  let timer: number | undefined;
  let gesture: ReturnType<typeof beginGesture> | undefined;
  const release = (): void => {
    if (timer === undefined) return;
    clearTimeout(timer);
    timer = undefined;
    window.removeEventListener('blur', release);
    endGesture(gesture);
  };
  const press = (step: () => void): void => {
    release();
    gesture = beginGesture();
    const repeat = (): void => {
      step();
      timer = window.setTimeout(repeat, REPEAT_MS);
    };
    step();
    timer = window.setTimeout(repeat, WAIT_MS);
    window.addEventListener('blur', release);
  };
  return { press, release };
}

interface Props {
  readonly sign: '−' | '+';
  readonly label: string;
  /** Whether there is no further step this way. */
  readonly atEnd: (state: DeskState) => boolean;
  /** Must read what it steps from anew: a held button calls it many times. */
  readonly onStep: () => void;
}

/** One step of a dial; held, it repeats. */
export function StepButton({ sign, label, atEnd, onStep }: Props) {
  const [{ press, release }] = useState(createRepeat);
  useEffect(() => release, [release]);
  const button = useRef<HTMLButtonElement>(null);
  useWritten(atEnd, (isAtEnd) => button.current?.setAttribute('aria-disabled', String(isAtEnd)));
  return (
    <button
      ref={button}
      type="button"
      className="pm plain"
      aria-label={label}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        press(onStep);
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onLostPointerCapture={release}
      onContextMenu={(event) => event.preventDefault()}
      onClick={(event) => {
        // A pointer has stepped already; what is left are Enter, Space and assistive technology.
        if (event.detail === 0) onStep();
      }}
    >
      {sign}
    </button>
  );
}
