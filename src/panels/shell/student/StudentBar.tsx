import { useEffect, useRef } from 'react';
import { showStudent } from '../../../store';
import { sayStatus } from '../../../words';
import { useWrittenText } from '../../fields/useWrittenText';
import './student.css';

/** Keeps the screen awake where the browser can, for as long as the page is in sight. A refusal changes nothing. */
function useAwake(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let isOver = false;
    const hold = (): void => {
      if (!('wakeLock' in navigator) || document.hidden) return;
      navigator.wakeLock.request('screen').then(
        (got) => {
          if (isOver) void got.release();
          else lock = got;
        },
        () => undefined,
      );
    };
    hold();
    // A page that was hidden has lost it.
    document.addEventListener('visibilitychange', hold);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', hold);
      void lock?.release();
    };
  }, []);
}

/** What the student sees in place of the bar: the sentence of the open drawer or of the swing, in large type, and the way back. */
export function StudentBar({ onSlot }: { onSlot: (slot: HTMLElement | null) => void }) {
  useAwake();
  const back = useRef<HTMLButtonElement>(null);
  const sentence = useWrittenText<HTMLParagraphElement>(sayStatus);
  useEffect(() => {
    back.current?.focus();
    const leave = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') showStudent(false);
    };
    document.addEventListener('keydown', leave);
    return () => document.removeEventListener('keydown', leave);
  }, []);
  return (
    <header className="bar student-bar">
      <div className="student-slot" ref={onSlot} />
      <p className="student-sentence" ref={sentence} />
      <button ref={back} type="button" className="plain" onClick={() => showStudent(false)}>
        Back to the desk
      </button>
    </header>
  );
}
