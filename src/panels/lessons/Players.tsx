import { useMemo, useState, type FormEvent } from 'react';
import { bodyOf, SetupError, type Player } from '../../model/body';
import { CLUB_IDS, CLUBS, type ClubId } from '../../model/club';
import {
  addPlayer,
  book,
  deletePlayer,
  EXAMPLE_ID,
  LIMITS,
  listPlayers,
  type Listed,
  type PlayerRecord,
} from '../../record';
import { sayDay } from '../../words/book/days';
import { NO_LESSON, sayNobody, sayUnread } from '../../words/book/book';
import { MY_CLUB, setDrawer, useDesk } from '../../store';
import { Choice } from '../fields/Choice';
import { NumberField } from '../fields/NumberField';
import { Select } from '../fields/Select';
import { lengthField } from '../player/lengthFields';
import { startLesson } from './startLesson';
import { goTo, navigation, useBook, useMayWrite, useNavigation } from './navigation';

/** Adds a player; undefined while another tab writes. */
function add(name: string, body: Player, clubId: ClubId | null): PlayerRecord | undefined {
  const edit = addPlayer(book.state.getState().records, book.birth(), name, body, clubId);
  const [made] = edit.put;
  return book.apply(edit) && made.kind === 'player' ? made : undefined;
}

/** A body the model accepts; otherwise the reason, in the model's words. */
function whyNoBody(body: Player): string | undefined {
  try {
    bodyOf(body);
    return undefined;
  } catch (error) {
    if (error instanceof SetupError) return error.message;
    throw error;
  }
}

/** A new player in one go: nickname, height, hand and club, taken from the desk as long as nothing is typed; then the first lesson. */
function AddPlayer() {
  const onDesk = useDesk(({ document }) => document.player);
  const clubOnDesk = useDesk(({ document }) => document.club.id);
  const units = useDesk(({ document }) => document.units);
  const [name, setName] = useState('');
  const [typed, setTyped] = useState<Partial<Pick<Player, 'statureM' | 'handed'>>>({});
  const [chosen, setChosen] = useState<ClubId>();
  const { unit, decimals, toField, fromField } = lengthField(units);
  const isOther = typed.statureM !== undefined || typed.handed !== undefined;
  // Segments that were measured are those of the player on the desk.
  const size: Player = { statureM: onDesk.statureM, handed: onDesk.handed };
  const body: Player = isOther ? { ...size, ...typed } : onDesk;
  const clubId = chosen ?? (clubOnDesk === MY_CLUB ? null : clubOnDesk);
  const isEmpty = name.trim() === '';
  const addOnly = (): void => {
    const player = isEmpty ? undefined : add(name, body, clubId);
    if (player) goTo({ page: 'player', id: player.id });
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const player = isEmpty ? undefined : add(name, body, clubId);
    if (player && startLesson(player)) setDrawer('seen');
  };
  return (
    <form className="lesson-new" onSubmit={submit}>
      <label className="field">
        <span>New player, a nickname will do</span>
        <input
          type="text"
          value={name}
          maxLength={LIMITS.name}
          autoComplete="off"
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <div className="lesson-new-body">
        <NumberField
          label="Height"
          unit={unit}
          decimals={decimals}
          value={toField(body.statureM)}
          onTake={(height) => {
            const next = { ...typed, statureM: fromField(height!) };
            const problem = whyNoBody({ ...size, ...next });
            if (problem === undefined) setTyped(next);
            return problem;
          }}
        />
        <Choice
          label="Plays"
          value={body.handed}
          options={[
            { value: 'right', text: 'Right' },
            { value: 'left', text: 'Left' },
          ]}
          onChoose={(handed) => setTyped({ ...typed, handed })}
        />
        <Select
          label="Club"
          value={clubId ?? MY_CLUB}
          options={[
            ...CLUB_IDS.map((id) => [id, CLUBS[id].name] as const),
            ...(clubId === null ? [[MY_CLUB, 'My club'] as const] : []),
          ]}
          onChoose={(id) => setChosen(id === MY_CLUB ? undefined : id)}
        />
      </div>
      <div className="lesson-actions">
        <button type="submit" className="plain wide" aria-disabled={isEmpty}>
          Start a lesson
        </button>
        <button type="button" className="plain" aria-disabled={isEmpty} onClick={addOnly}>
          Add
        </button>
      </div>
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
          {lastDate === null ? NO_LESSON : `${count}, last ${sayDay(lastDate)}`}
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
      {lines.length === 0 && <p>{sayNobody(search)}</p>}
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
        {mayWrite && (
          <button type="button" className="plain" onClick={() => goTo({ page: 'practice' })}>
            Practice from the player
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
