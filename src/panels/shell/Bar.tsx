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
  /** Several drawers behind one tab: this one is a part of that one's, under this name. */
  readonly part?: { readonly of: DrawerId; readonly name: string };
  /** In the sheet of further drawers. */
  readonly isMore?: true;
}

/** The drawers in the order of a lesson, which is that of their tabs. */
export const DRAWERS: readonly DrawerTab[] = [
  { id: 'setUp', title: 'Player and club', tab: 'Player & club', short: 'Player' },
  { id: 'seen', title: 'What I saw', tab: 'What I saw', short: 'Seen' },
  { id: 'ledger', title: 'Why', tab: 'Why', part: { of: 'ledger', name: 'Share of each' } },
  { id: 'map', title: 'Why', tab: 'Room for error', part: { of: 'ledger', name: 'Room for error' } },
  { id: 'compare', title: 'Why', tab: 'Two swings', part: { of: 'ledger', name: 'Two swings' } },
  { id: 'family', title: 'Why', tab: 'Same picture', part: { of: 'ledger', name: 'Same picture' } },
  { id: 'plan', title: 'What to change', tab: 'What to change', short: 'Change' },
  { id: 'ball', title: 'Ball flight', tab: 'Ball flight', short: 'Ball' },
  { id: 'clip', title: 'Show and send', tab: 'Show & send', short: 'Send' },
  { id: 'lessons', title: 'Lesson book', tab: 'Lesson book', short: 'Book' },
  {
    id: 'rule',
    title: 'Rules of the trade',
    tab: 'Rules of the trade',
    part: { of: 'rule', name: 'Does it hold?' },
    isMore: true,
  },
  { id: 'gains', title: 'Rules of the trade', tab: 'Who gains most', part: { of: 'rule', name: 'Who gains most' } },
  { id: 'joints', title: 'Pose the body', tab: 'Pose the body', isMore: true },
  { id: 'about', title: 'About this model', tab: 'About this model', isMore: true },
];

/** The drawer whose tab stands for this one. */
export const tabOf = (id: DrawerId): DrawerId => DRAWERS.find((drawer) => drawer.id === id)?.part?.of ?? id;

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
      <button type="button" className="more text-button" popoverTarget={SITUATIONS_ID} aria-label="Typical swings">
        <span className="tab-long">Typical swings</span>
        <span className="tab-short">Swings</span>
      </button>
      <button type="button" className="more text-button" id="bar-more" popoverTarget={MORE_ID}>
        More
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
  const tabs = DRAWERS.filter(({ id, isMore }) => !isMore && tabOf(id) === id);
  return (
    <nav className="tabs" aria-label="Drawers">
      {tabs.map(({ id, tab, short }) => {
        const isOpen = open !== null && tabOf(open) === id;
        return (
          <button
            key={id}
            type="button"
            id={`tab-${id}`}
            aria-expanded={isOpen}
            aria-controls="drawer"
            aria-label={tab}
            onClick={() => setDrawer(isOpen ? open : id)}
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
        );
      })}
      <MoreButton id="tab-more" />
    </nav>
  );
}

/** Opens the sheet of further drawers: beside the tabs, on a phone in the bar. */
function MoreButton({ id }: { id: string }) {
  const isFurther = useDesk(({ session }) => DRAWERS.some((drawer) => drawer.id === session.drawer && drawer.isMore));
  return (
    <button type="button" id={id} popoverTarget={MORE_ID} data-chosen={isFurther || undefined}>
      More
    </button>
  );
}
