import { useEffect, useLayoutEffect, useRef, useState, type ComponentType } from 'react';
import { resetView } from './camera/resetView';
import { canFillScreen, toggleFullScreen } from './fullScreen';
import { holdGhost, setExaggerate, setView, showStudent, useDesk, type ViewId } from '../store';

const VIEWS: readonly (readonly [ViewId, string])[] = [
  ['downTheLine', 'Down the line'],
  ['faceOn', 'Face on'],
  ['overhead', 'Overhead'],
  ['playersEyes', "Player's eyes"],
  ['free', 'Free'],
];

function ViewButtons({ onChosen }: { onChosen?: () => void }) {
  const view = useDesk((state) => state.session.view);
  return VIEWS.map(([id, label]) => (
    <button
      key={id}
      type="button"
      className="stage-item"
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

/** What is shown beside the swing itself: a swing kept for comparison, the deviation doubled. */
function ShowButtons() {
  const isKept = useDesk(({ session }) => session.ghost !== null);
  const isDoubled = useDesk(({ session }) => session.exaggerate);
  return (
    <>
      <button type="button" className="stage-item" aria-pressed={isKept} onClick={() => holdGhost(!isKept)}>
        Keep as comparison
      </button>
      <button
        type="button"
        className="stage-item"
        role="switch"
        aria-checked={isDoubled}
        onClick={() => setExaggerate(!isDoubled)}
      >
        Exaggerate
      </button>
    </>
  );
}

/** Room between the menu and the screen's edges, and between it and its button, px. */
const GAP = 8;
const BELOW = 4;

/** Puts a menu below its button, or as high as the screen asks for: the picture may be lower than the menu. */
function placeBelow(menu: HTMLElement, { bottom, right }: DOMRect): void {
  const { offsetWidth: width, offsetHeight: height } = menu;
  menu.style.left = `${Math.max(GAP, Math.min(right, innerWidth - GAP) - width)}px`;
  menu.style.top = `${Math.max(GAP, Math.min(bottom + BELOW, innerHeight - GAP - height))}px`;
}

/** Where to look from and what to show besides: a list at the picture's left edge; behind two buttons where it is small. */
export function ViewList({ isSmall }: { isSmall: boolean }) {
  if (!isSmall) {
    return (
      <>
        <div className="stage-edge">
          <div className="stage-lists">
            <fieldset className="stage-list stage-choice" aria-label="View">
              <legend>View from</legend>
              <ViewButtons />
            </fieldset>
            <fieldset className="stage-list" aria-label="Show also">
              <legend>Show also</legend>
              <ShowButtons />
            </fieldset>
          </div>
        </div>
        <div className="stage-corner">
          <StudentButton />
          <PictureButtons />
        </div>
      </>
    );
  }
  return (
    <div className="stage-menus">
      <Menu word="View" id="stage-views" label="View" isChoice content={ViewButtons} />
      <Menu word="Show" id="stage-shows" label="Show also" content={ShowMenu} />
    </div>
  );
}

const ShowMenu = ({ onChosen }: Chosen) => (
  <>
    <ShowButtons />
    <PictureButtons onChosen={onChosen} />
    <StudentButton onChosen={onChosen} />
  </>
);

/** The whole swing again after turning and pinching; the picture alone on the whole screen, where the browser can. */
function PictureButtons({ onChosen }: { onChosen?: () => void }) {
  return (
    <>
      <button
        type="button"
        className="plain stage-extra"
        onClick={() => {
          resetView();
          onChosen?.();
        }}
      >
        Whole swing
      </button>
      {canFillScreen() && (
        <button
          type="button"
          className="plain stage-extra"
          onClick={({ currentTarget }) => {
            void toggleFullScreen(currentTarget.closest<HTMLElement>('.stage')!);
            onChosen?.();
          }}
        >
          Full screen
        </button>
      )}
    </>
  );
}

/** Fills the screen with the picture. */
function StudentButton({ onChosen }: { onChosen?: () => void }) {
  return (
    <button
      type="button"
      className="plain stage-student"
      onClick={() => {
        onChosen?.();
        showStudent(true);
      }}
    >
      Show the student
    </button>
  );
}

/** What stands in a menu says when something was chosen that closes it. */
interface Chosen {
  readonly onChosen: () => void;
}
interface MenuProps {
  readonly word: string;
  readonly id: string;
  readonly label: string;
  /** One of several things is chosen in it. */
  readonly isChoice?: boolean;
  readonly content: ComponentType<Chosen>;
}

function Menu({ word, id, label, isChoice = false, content: Content }: MenuProps) {
  const [isOpen, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const menu = useRef<HTMLFieldSetElement>(null);

  useLayoutEffect(() => {
    if (isOpen) placeBelow(menu.current!, opener.current!.getBoundingClientRect());
  }, [isOpen]);

  useEffect(() => {
    if (!isOpen) return;
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
    // On the way down: what takes hold of a pin on the picture lets nothing up.
    document.addEventListener('pointerdown', outside, { signal, capture: true });
    document.addEventListener('keydown', escape, { signal });
    window.addEventListener('resize', shut, { signal });
    window.addEventListener('scroll', shut, { signal });
    return () => off.abort();
  }, [isOpen]);

  const close = (): void => {
    setOpen(false);
    opener.current?.focus();
  };
  return (
    <div ref={box}>
      <button
        ref={opener}
        type="button"
        className="plain stage-opener"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        {word}
      </button>
      <fieldset
        ref={menu}
        id={id}
        className={isChoice ? 'stage-menu stage-choice' : 'stage-menu'}
        aria-label={label}
        hidden={!isOpen}
      >
        <Content onChosen={close} />
      </fieldset>
    </div>
  );
}
