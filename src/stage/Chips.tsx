import { useEffect, useRef, useState } from 'react';
import { setView, useDesk, type ViewId } from '../store';

const CHIPS: readonly (readonly [ViewId, string])[] = [
  ['downTheLine', 'Down the line'],
  ['faceOn', 'Face on'],
  ['overhead', 'Overhead'],
  ['playersEyes', "Player's eyes"],
  ['free', 'Free'],
];

function ViewButtons({ onChosen }: { onChosen?: () => void }) {
  const view = useDesk((state) => state.session.view);
  return CHIPS.map(([id, label]) => (
    <button
      key={id}
      type="button"
      className="stage-chip"
      aria-pressed={view === id}
      onClick={() => {
        setView(id);
        onChosen?.();
      }}
    >
      {label}
    </button>
  ));
}

/** Where to look from: a row below the picture, a column beside it when upright, one button on a phone. */
export function Chips({ layout }: { layout: 'row' | 'column' | 'one' }) {
  const [isOpen, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const isShown = layout === 'one' && isOpen;

  useEffect(() => {
    if (!isShown) return;
    const outside = (event: PointerEvent): void => {
      if (!box.current?.contains(event.target as Node)) setOpen(false);
    };
    const escape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      opener.current?.focus();
    };
    document.addEventListener('pointerdown', outside);
    document.addEventListener('keydown', escape);
    return () => {
      document.removeEventListener('pointerdown', outside);
      document.removeEventListener('keydown', escape);
    };
  }, [isShown]);

  if (layout !== 'one') {
    return (
      <fieldset className={`stage-chips stage-chips-${layout}`} aria-label="View">
        <ViewButtons />
      </fieldset>
    );
  }
  return (
    <div className="stage-chips stage-chips-one" ref={box}>
      <button
        ref={opener}
        type="button"
        className="stage-chip"
        aria-expanded={isOpen}
        aria-controls="stage-views"
        onClick={() => setOpen(!isOpen)}
      >
        View
      </button>
      <fieldset id="stage-views" className="stage-menu" aria-label="View" hidden={!isOpen}>
        <ViewButtons
          onChosen={() => {
            setOpen(false);
            opener.current?.focus();
          }}
        />
      </fieldset>
    </div>
  );
}
