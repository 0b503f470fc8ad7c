import { useEffect, useLayoutEffect, useRef, useState } from 'react';
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

/** Room between the menu, its button and the screen's edges, px. */
const GAP = 8;

/** Puts a menu below its button, or as high as the screen asks for: the picture may be lower than the menu. */
function placeBelow(menu: HTMLElement, { bottom, right }: DOMRect): void {
  const { offsetWidth: width, offsetHeight: height } = menu;
  menu.style.left = `${Math.max(GAP, Math.min(right, innerWidth - GAP) - width)}px`;
  menu.style.top = `${Math.max(GAP, Math.min(bottom + GAP, innerHeight - GAP - height))}px`;
}

/** Where to look from: a row below the picture, a column beside it when upright, one button on a phone. */
export function Chips({ layout }: { layout: 'row' | 'column' | 'one' }) {
  const [isOpen, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const menu = useRef<HTMLFieldSetElement>(null);
  const isShown = layout === 'one' && isOpen;

  useLayoutEffect(() => {
    if (isShown) placeBelow(menu.current!, opener.current!.getBoundingClientRect());
  }, [isShown]);

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
    const shut = (): void => setOpen(false);
    const off = new AbortController();
    const { signal } = off;
    document.addEventListener('pointerdown', outside, { signal });
    document.addEventListener('keydown', escape, { signal });
    window.addEventListener('resize', shut, { signal });
    window.addEventListener('scroll', shut, { signal });
    return () => off.abort();
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
      <fieldset ref={menu} id="stage-views" className="stage-menu" aria-label="View" hidden={!isOpen}>
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
