import { redo, setDrawer, undo, useDesk, type DrawerId } from '../store';
import { Mark } from './Mark';
import { SITUATIONS_ID } from './Situations';

/** The drawers in the order of their tabs. */
export const DRAWERS: readonly { readonly id: DrawerId; readonly title: string; readonly tab: string }[] = [
  { id: 'setUp', title: 'Set-up', tab: 'Set-up' },
  { id: 'ball', title: 'The ball', tab: 'Ball' },
  { id: 'joints', title: 'Joints bench', tab: 'Joints' },
  { id: 'lessons', title: 'Lesson book', tab: 'Lesson book' },
  { id: 'clip', title: 'Show it', tab: 'Clip' },
  { id: 'about', title: 'About this model', tab: 'About' },
];

/** Name, undo and redo, and the index tabs of the drawers. */
export function Bar() {
  return (
    <header className="bar">
      <h1 className="mark">
        <Mark />
        <span className="mark-name">Slantwise</span>
      </h1>
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
  return (
    <nav className="tabs" aria-label="Drawers">
      {DRAWERS.map(({ id, tab }) => (
        <button
          key={id}
          type="button"
          id={`tab-${id}`}
          aria-expanded={open === id}
          aria-controls="drawer"
          onClick={() => setDrawer(id)}
        >
          {tab}
        </button>
      ))}
    </nav>
  );
}
