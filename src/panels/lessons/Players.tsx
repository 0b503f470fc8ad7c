import { useMemo, useState, type FormEvent } from 'react';
import { addPlayer, book, deletePlayer, EXAMPLE_ID, LIMITS, listPlayers, type Listed } from '../../record';
import { sayDay } from '../../words/book/days';
import { sayUnread } from '../../words/book/book';
import { desk, MY_CLUB } from '../../store';
import { Choice } from '../fields/Choice';
import { goTo, navigation, useBook, useMayWrite, useNavigation } from './navigation';

/** Takes the body and the club from the desk: they are what the coach has just set up. */
function add(name: string): void {
  const { player, club } = desk.getState().document;
  const clubId = club.id === MY_CLUB ? null : club.id;
  const birth = book.birth();
  if (book.apply(addPlayer(book.state.getState().records, birth, name, player, clubId))) {
    goTo({ page: 'player', id: birth.id });
  }
}

function AddPlayer() {
  const [name, setName] = useState('');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (name.trim() !== '') add(name);
  };
  return (
    <form className="lesson-add" onSubmit={submit}>
      <label>
        <span>New player, a nickname will do</span>
        <input
          type="text"
          value={name}
          maxLength={LIMITS.name}
          autoComplete="off"
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <button type="submit" className="plain" aria-disabled={name.trim() === ''}>
        Add
      </button>
    </form>
  );
}

function Line({ player, lessons, lastDate }: Listed) {
  const count = lessons === 1 ? '1 lesson' : `${lessons} lessons`;
  return (
    <li>
      <button type="button" className="lesson-line" onClick={() => goTo({ page: 'player', id: player.id })}>
        <span className="lesson-name">{player.name}</span>
        <span className="fine">
          {lastDate === null ? 'No lesson yet' : `${count}, last ${sayDay(lastDate)}`}
          {player.archived && ' · archived'}
        </span>
      </button>
    </li>
  );
}

function removeExample(): void {
  const { records } = book.state.getState();
  const player = records.get(EXAMPLE_ID);
  if (player?.kind === 'player') book.apply(deletePlayer(records, player));
}

/** So many records can be looked over without a search. */
const FEW = 12;

function Find() {
  const search = useNavigation((state) => state.search);
  const sortBy = useNavigation((state) => state.sortBy);
  return (
    <div className="lesson-find">
      <label className="field">
        <span>Search names, notes and drills</span>
        <input
          type="search"
          value={search}
          autoComplete="off"
          onChange={(event) => navigation.setState({ search: event.currentTarget.value })}
        />
      </label>
      <Choice
        label="Sort by"
        value={sortBy}
        options={[
          { value: 'name', text: 'Name' },
          { value: 'lastLesson', text: 'Last lesson' },
        ]}
        onChoose={(chosen) => navigation.setState({ sortBy: chosen })}
      />
    </div>
  );
}

/** Everybody in the book. */
export function Players() {
  const records = useBook((state) => state.records);
  const unread = useBook(sayUnread);
  const mayWrite = useMayWrite();
  const search = useNavigation((state) => state.search);
  const sortBy = useNavigation((state) => state.sortBy);
  const withArchived = useNavigation((state) => state.withArchived);
  const lines = useMemo(
    () => listPlayers(records, search, sortBy, withArchived),
    [records, search, sortBy, withArchived],
  );
  return (
    <>
      {mayWrite && <AddPlayer />}
      {(records.size > FEW || search !== '') && <Find />}
      <ul className="lesson-list" aria-label="Players">
        {lines.map((line) => (
          <Line key={line.player.id} {...line} />
        ))}
      </ul>
      {lines.length === 0 && <p>{search === '' ? 'Nobody in the book yet.' : `Nobody found for "${search}".`}</p>}
      <div className="lesson-actions">
        <button
          type="button"
          className="plain"
          aria-pressed={withArchived}
          onClick={() => navigation.setState({ withArchived: !withArchived })}
        >
          Show archived
        </button>
        {mayWrite && records.has(EXAMPLE_ID) && (
          <button type="button" className="plain" onClick={removeExample}>
            Remove the example
          </button>
        )}
        <button type="button" className="plain" onClick={() => goTo({ page: 'backup' })}>
          Backup and hand-over
        </button>
        <button type="button" className="plain" onClick={() => goTo({ page: 'device' })}>
          What leaves this device
        </button>
      </div>
      {unread !== undefined && <p className="fine">{unread}</p>}
    </>
  );
}
