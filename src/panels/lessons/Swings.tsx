import { useMemo, useState, type FormEvent } from 'react';
import {
  asSeenHere,
  book,
  cleanName,
  computeCm,
  computeIfFound,
  deleteRecord,
  keepSwing,
  recomputeSwing,
  LIMITS,
  renameSwing,
  swingsOf,
  type PlayerRecord,
  type SwingRecord,
} from '../../record';
import { COMPUTED_EARLIER, sayNewModel } from '../../words/book/newModel';
import { sayBoth } from '../../words/book/readings';
import { change, desk, put, useDesk } from '../../store';
import { useBook, useMayWrite } from './navigation';

/** Lays a kept swing on the desk: one undo step. What an earlier model computed is computed anew, and said. */
function lay(swing: SwingRecord): void {
  const { name, now, computedCm, computedBy } = swing;
  change(`Lay out ${name}`, (here) => asSeenHere(now, here));
  const today = computedBy === undefined ? undefined : computeIfFound(now);
  if (!today) return;
  put({ notice: sayNewModel('swing', computedCm, today, desk.getState().document.units) });
  book.apply(recomputeSwing(swing, book.birth().nowMs, today));
}

function Keep({ player }: { player: PlayerRecord }) {
  const [name, setName] = useState('');
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    if (name.trim() === '') return;
    const { document } = desk.getState();
    book.apply(keepSwing(book.birth(), player.id, name, document, computeCm(document)));
    setName('');
  };
  return (
    <form className="lesson-add" onSubmit={keep}>
      <label>
        <span>Keep the swing on the desk as</span>
        <input
          type="text"
          value={name}
          maxLength={LIMITS.name}
          autoComplete="off"
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <button type="submit" className="plain" aria-disabled={name.trim() === ''}>
        Keep
      </button>
    </form>
  );
}

/** The field that has just opened takes the keys. */
const focus = (field: HTMLInputElement | null): void => field?.focus();

/** One kept swing; its name is changed in place. */
function Line({ swing }: { swing: SwingRecord }) {
  const units = useDesk(({ document }) => document.units);
  const mayWrite = useMayWrite();
  const [draft, setDraft] = useState<string>();
  const rename = (event: FormEvent): void => {
    event.preventDefault();
    const name = cleanName(draft ?? '');
    if (name !== '' && name !== swing.name) book.apply(renameSwing(swing, book.birth().nowMs, name));
    setDraft(undefined);
  };
  if (draft !== undefined)
    return (
      <li>
        <form className="lesson-add" onSubmit={rename}>
          <label>
            <span>New name for {swing.name}</span>
            <input
              type="text"
              value={draft}
              maxLength={LIMITS.name}
              autoComplete="off"
              ref={focus}
              onChange={(event) => setDraft(event.currentTarget.value)}
            />
          </label>
          <button type="submit" className="plain">
            Keep
          </button>
        </form>
      </li>
    );
  return (
    <li className="lesson-swing">
      <span>
        <span className="lesson-name">{swing.name}</span>
        <span className="fine">
          {sayBoth(null, swing.computedCm, units)}, {swing.computedBy === undefined ? 'computed' : COMPUTED_EARLIER}
        </span>
      </span>
      <button type="button" className="plain" aria-label={`Lay out ${swing.name}`} onClick={() => lay(swing)}>
        Lay out
      </button>
      {mayWrite && (
        <>
          <button
            type="button"
            className="plain"
            aria-label={`Rename ${swing.name}`}
            onClick={() => setDraft(swing.name)}
          >
            Rename
          </button>
          <button
            type="button"
            className="plain"
            aria-label={`Delete ${swing.name}`}
            onClick={() => book.apply(deleteRecord(swing, `Delete ${swing.name}`))}
          >
            Delete
          </button>
        </>
      )}
    </li>
  );
}

/** Swings worth keeping, of one player. */
export function Swings({ player }: { player: PlayerRecord }) {
  const records = useBook((state) => state.records);
  const mayWrite = useMayWrite();
  const swings = useMemo(() => swingsOf(records, player.id), [records, player.id]);
  return (
    <details>
      <summary>Saved swings{swings.length > 0 && ` (${swings.length})`}</summary>
      <ul className="lesson-list" aria-label="Saved swings">
        {swings.map((swing) => (
          <Line key={swing.id} swing={swing} />
        ))}
      </ul>
      {mayWrite && <Keep player={player} />}
    </details>
  );
}
