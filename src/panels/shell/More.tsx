import { useRef } from 'react';
import { setDrawer, useDesk } from '../../store';
import { setGuessFirst } from '../../store/desk/guess';
import { DRAWERS } from './Bar';
import { MORE_ID } from './moreId';
import './more.css';

/** Drawers without a tab of their own, and the switch that lets the player guess first. */
export function More() {
  const sheet = useRef<HTMLDialogElement>(null);
  const open = useDesk(({ session }) => session.drawer);
  const isGuessing = useDesk(({ session }) => session.guess !== null);
  return (
    <dialog ref={sheet} id={MORE_ID} className="more-sheet" popover="auto" aria-label="More">
      {DRAWERS.filter(({ isMore }) => isMore).map(({ id, tab }) => (
        <button
          key={id}
          type="button"
          className="plain"
          id={`tab-${id}`}
          aria-expanded={open === id}
          onClick={() => {
            sheet.current?.hidePopover();
            setDrawer(id);
          }}
        >
          {tab}
        </button>
      ))}
      <button
        type="button"
        className="plain"
        role="switch"
        aria-checked={isGuessing}
        onClick={() => {
          setGuessFirst(!isGuessing);
          sheet.current?.hidePopover();
        }}
      >
        Guess first
      </button>
    </dialog>
  );
}
