import { useEffect } from 'react';
import { redo, setDrawer, undo, useDesk, type DrawerId } from '../../store';
import { LessonMark } from '../lessons/LessonMark';
import { Mark } from './Mark';
import { MORE_ID } from './moreId';
import { SITUATIONS_ID } from '../dials/Situations';

interface DrawerTab {
  readonly id: DrawerId;
  readonly title: string;
  readonly tab: string;
  /** Where there is little room. */
  readonly short?: string;
  /** In the sheet of further drawers: everywhere, or where there is no room for another tab. */
  readonly isMore?: 'always' | 'on a phone';
}

/** The drawers in the order of their tabs. */
export const DRAWERS: readonly DrawerTab[] = [
  { id: 'setUp', title: 'Set-up', tab: 'Set-up' },
  { id: 'ledger', title: 'Ledger', tab: 'Ledger' },
  { id: 'map', title: 'Corridor map', tab: 'Corridor map', short: 'Map' },
  { id: 'plan', title: 'Change plan', tab: 'Change plan', short: 'Plan' },
  { id: 'ball', title: 'The ball', tab: 'Ball', isMore: 'on a phone' },
  { id: 'lessons', title: 'Lesson book', tab: 'Lesson book', short: 'Lessons' },
  { id: 'clip', title: 'Show it', tab: 'Clip', isMore: 'on a phone' },
  { id: 'seen', title: 'This is what I saw', tab: 'This is what I saw', isMore: 'always' },
  { id: 'compare', title: 'Compare', tab: 'Compare two swings', isMore: 'always' },
  { id: 'joints', title: 'Joints bench', tab: 'Joints bench', isMore: 'always' },
  { id: 'about', title: 'About this model', tab: 'About this model', isMore: 'always' },
];

/** Undo and redo by the usual keys, where nothing is being typed. */
function turnByKey(event: KeyboardEvent): void {
  const { ctrlKey, metaKey, altKey, shiftKey, target } = event;
  // There the keys undo letters.
  const isTyping = (target as Element).matches(':read-write');
  if (!(ctrlKey || metaKey) || altKey || isTyping) return;
  const key = event.key.toLowerCase();
  if (key === 'z' && !shiftKey) undo();
  else if (key === 'z' || (key === 'y' && ctrlKey)) redo();
  else return;
  event.preventDefault();
}

/** Name, undo and redo, and the index tabs of the drawers. */
export function Bar() {
  useEffect(() => {
    document.addEventListener('keydown', turnByKey);
    return () => document.removeEventListener('keydown', turnByKey);
  }, []);
  return (
    <header className="bar">
      <h1 className="mark">
        <Mark />
        <span className="mark-name">Slantwise</span>
      </h1>
      <LessonMark />
      <div className="undo">
        <Turn word="Undo" act={undo} label={useDesk(({ history }) => history.past.at(-1)?.label)} />
        <Turn word="Redo" act={redo} label={useDesk(({ history }) => history.future[0]?.label)} />
      </div>
      <button type="button" className="more text-button" popoverTarget={SITUATIONS_ID}>
        Situations
      </button>
      <Tabs />
    </header>
  );
}

function Turn({ word, act, label }: { word: string; act: () => unknown; label: string | undefined }) {
  return (
    <button
      type="button"
      className="turn"
      aria-disabled={label === undefined}
      aria-label={label === undefined ? word : `${word}: ${label}`}
      title={label}
      onClick={() => act()}
    >
      {word}
    </button>
  );
}

function Tabs() {
  const open = useDesk(({ session }) => session.drawer);
  const isFurther = DRAWERS.some(({ id, isMore }) => id === open && isMore === 'always');
  return (
    <nav className="tabs" aria-label="Drawers">
      {DRAWERS.filter(({ isMore }) => isMore !== 'always').map(({ id, tab, short, isMore }) => (
        <button
          key={id}
          type="button"
          id={`tab-${id}`}
          aria-expanded={open === id}
          aria-controls="drawer"
          aria-label={tab}
          data-more={isMore}
          onClick={() => setDrawer(id)}
        >
          {short === undefined ? (
            tab
          ) : (
            <>
              <span className="tab-long">{tab}</span>
              <span className="tab-short">{short}</span>
            </>
          )}
        </button>
      ))}
      <button type="button" id="tab-more" popoverTarget={MORE_ID} data-chosen={isFurther || undefined}>
        More
      </button>
    </nav>
  );
}
