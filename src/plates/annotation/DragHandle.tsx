import { useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { HandlePlace } from './handleGeometry';

interface Props {
  /** Takes over the touch area: where it stands and what it says is written to it as the plate is drawn. */
  readonly hold: (element: HTMLElement | null) => void;
  /** Where the ring stands now. */
  readonly grip: () => HandlePlace | undefined;
  readonly label: string;
  /** The ring moved and is not let go yet; nothing when it goes back to where the model has it. */
  readonly onMove: (value: number | undefined) => void;
  /** The coach let go: this is what they saw, m. */
  readonly onSight: (value: number) => void;
}

/** A step and a large step of the keys, m. */
const STEP = 0.001;
const LARGE_STEP = 0.01;
/** Farther than any club could be seen from its corridor, m. */
const FARTHEST = 0.6;
const fit = (value: number): number => Math.round(Math.max(-FARTHEST, Math.min(FARTHEST, value)) / STEP) * STEP;

const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: STEP,
  ArrowRight: STEP,
  ArrowDown: -STEP,
  ArrowLeft: -STEP,
  PageUp: LARGE_STEP,
  PageDown: -LARGE_STEP,
};

/**
 * The ring on the line: "this is what I saw". A slider in one direction, dragged or stepped (1 mm, with Shift or Page keys 1 cm). Enter
 * or letting go tells what was seen, Escape takes it back. A drag that the system ends stays at its last value.
 */
export function DragHandle({ hold, grip, label, onMove, onSight }: Props) {
  const drag = useRef<{ pointer: number; x: number; y: number; from: number; last: number } | undefined>(undefined);
  const stepped = useRef<number | undefined>(undefined);

  const start = (event: PointerEvent<HTMLElement>): void => {
    const value = grip()?.value;
    if (event.button !== 0 || drag.current || value === undefined) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { pointer: event.pointerId, x: event.clientX, y: event.clientY, from: value, last: value };
  };
  const move = (event: PointerEvent<HTMLElement>): void => {
    const held = drag.current;
    const perMetre = grip()?.perMetre;
    if (held?.pointer !== event.pointerId || !perMetre) return;
    const size = perMetre.x * perMetre.x + perMetre.y * perMetre.y;
    const gone = (event.clientX - held.x) * perMetre.x + (event.clientY - held.y) * perMetre.y;
    const next = fit(held.from + gone / size);
    if (!Number.isFinite(next)) return;
    held.last = next;
    onMove(next);
  };
  const end = (event: PointerEvent<HTMLElement>): void => {
    const held = drag.current;
    if (held?.pointer !== event.pointerId) return;
    drag.current = undefined;
    if (held.last === held.from) onMove(undefined);
    else onSight(held.last);
  };
  const takeBack = (): void => {
    drag.current = undefined;
    stepped.current = undefined;
    onMove(undefined);
  };
  const press = (event: KeyboardEvent<HTMLElement>): void => {
    const step = STEPS[event.key];
    const value = grip()?.value;
    if (step !== undefined && value !== undefined) {
      const large = event.shiftKey && Math.abs(step) === STEP ? LARGE_STEP / STEP : 1;
      stepped.current = fit((stepped.current ?? value) + step * large);
      onMove(stepped.current);
    } else if (event.key === 'Enter' && stepped.current !== undefined) {
      const seen = stepped.current;
      stepped.current = undefined;
      onSight(seen);
    } else if (event.key === 'Escape' && (stepped.current !== undefined || drag.current)) {
      takeBack();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      className="plate-sight-handle"
      ref={hold}
      // A native range slides level only; this ring is pulled square to a shaft at any angle.
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
      role="slider"
      tabIndex={0}
      aria-label={label}
      // Written, with its words, as the plate is drawn.
      aria-valuenow={0}
      aria-valuemin={-FARTHEST * 1000}
      aria-valuemax={FARTHEST * 1000}
      onPointerDown={start}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
      onKeyDown={press}
      onBlur={() => stepped.current !== undefined && takeBack()}
      onClick={(event) => event.stopPropagation()}
    />
  );
}
