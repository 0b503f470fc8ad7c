import { useMemo } from 'react';
import { bodyOf, SetupError, type Player } from '../../model/body';
import { CLUB_IDS, CLUBS } from '../../model/club';
import {
  book,
  cleanName,
  cleanNotes,
  deletePlayer,
  deskLink,
  duplicatePlayer,
  editPlayer,
  handOver,
  lessonsOf,
  LIMITS,
  type PlayerRecord,
} from '../../record';
import { EXAMPLE, NO_LESSON } from '../../words/book/book';
import { sayBoth } from '../../words/book/readings';
import { sayDay } from '../../words/book/days';
import { useDesk } from '../../store';
import { Choice } from '../fields/Choice';
import { lengthField } from '../player/lengthFields';
import { NumberField } from '../fields/NumberField';
import { goTo, useBook, useMayWrite } from './navigation';
import { startLesson } from './startLesson';
import { Swings } from './Swings';
import { TextField } from '../fields/TextField';
import { Wipe } from './device/Wipe';

type Fields = Parameters<typeof editPlayer>[2];
const edit = (player: PlayerRecord, fields: Fields, label: string): void =>
  void book.apply(editPlayer(player, book.birth().nowMs, fields, label));

/** A body the model accepts; otherwise the reason, in the model's words. */
function takeBody(player: PlayerRecord, body: Player, label: string): string | undefined {
  try {
    bodyOf(body);
  } catch (error) {
    if (error instanceof SetupError) return error.message;
    throw error;
  }
  edit(player, { body }, label);
  return undefined;
}

function About({ player }: { player: PlayerRecord }) {
  const units = useDesk(({ document }) => document.units);
  const mayWrite = useMayWrite();
  const { unit, decimals, toField, fromField } = lengthField(units);
  const toggle = (id: (typeof CLUB_IDS)[number]): void => {
    const has = player.clubs.includes(id);
    const clubs = CLUB_IDS.filter((one) => (one === id ? !has : player.clubs.includes(one)));
    edit(player, { clubs }, 'Clubs');
  };
  return (
    <details>
      <summary>Name, body, clubs, notes</summary>
      <div className="fields">
        <TextField
          label="Name"
          value={player.name}
          most={LIMITS.name}
          disabled={!mayWrite}
          onType={(typed, first) => {
            const name = cleanName(typed);
            if (name !== '') edit(player, { name }, first ? 'Rename' : '');
          }}
        />
        <NumberField
          label="Height"
          isHeight
          unit={unit}
          decimals={decimals}
          value={toField(player.body.statureM)}
          onTake={(typed) => takeBody(player, { ...player.body, statureM: fromField(typed!) }, 'Height')}
        />
        <Choice
          label="Plays"
          value={player.body.handed}
          options={[
            { value: 'right', text: 'Right' },
            { value: 'left', text: 'Left' },
          ]}
          onChoose={(handed) => takeBody(player, { ...player.body, handed }, 'Hand')}
        />
      </div>
      <fieldset className="lesson-chips">
        <legend className="unseen">Clubs</legend>
        {CLUB_IDS.map((id) => (
          <button
            key={id}
            type="button"
            className="plain"
            aria-pressed={player.clubs.includes(id)}
            onClick={() => toggle(id)}
          >
            {CLUBS[id].name}
          </button>
        ))}
      </fieldset>
      <TextField
        label="Notes"
        value={player.notes}
        most={LIMITS.notes}
        lines={3}
        disabled={!mayWrite}
        onType={(typed, first) => edit(player, { notes: cleanNotes(typed) }, first ? 'Notes' : '')}
      />
    </details>
  );
}

function Lessons({ player }: { player: PlayerRecord }) {
  const records = useBook((state) => state.records);
  const openId = useBook(({ meta }) => meta.openLessonId);
  const units = useDesk(({ document }) => document.units);
  const lessons = useMemo(() => lessonsOf(records, player.id), [records, player.id]);
  if (lessons.length === 0) return <p>{NO_LESSON}.</p>;
  return (
    <ul className="lesson-list" aria-label="Lessons">
      {lessons.map(({ id, date, now, computedCm }) => (
        <li key={id}>
          <button type="button" className="lesson-line" onClick={() => goTo({ page: 'lesson', id })}>
            <span className="lesson-name">
              {sayDay(date)}
              {openId === id && <em> open</em>}
            </span>
            <span className="fine">{sayBoth(now.seen, computedCm, units)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function remove(player: PlayerRecord): void {
  const { records } = book.state.getState();
  if (deskLink.openLesson()?.playerId === player.id) deskLink.close();
  if (book.apply(deletePlayer(records, player))) goTo({ page: 'players' });
}

function duplicate(player: PlayerRecord): void {
  const copy = duplicatePlayer(book.state.getState().records, player, () => book.birth());
  if (book.apply(copy)) goTo({ page: 'player', id: copy.put.find(({ kind }) => kind === 'player')!.id });
}

/** One player: lessons first, everything else below. */
export function PlayerPage({ id }: { id: string }) {
  const player = useBook(({ records }) => records.get(id));
  const mayWrite = useMayWrite();
  if (player?.kind !== 'player') return null;
  return (
    <>
      {player.example && <p className="lesson-note">{EXAMPLE}</p>}
      <div className="lesson-actions">
        {mayWrite && (
          <button type="button" className="plain wide" onClick={() => startLesson(player)}>
            New lesson today
          </button>
        )}
        <button type="button" className="plain" onClick={() => goTo({ page: 'progress', id })}>
          Progress
        </button>
      </div>
      <Lessons player={player} />
      <Swings player={player} />
      <About player={player} />
      <div className="lesson-actions">
        {mayWrite && (
          <>
            <button type="button" className="plain" onClick={() => duplicate(player)}>
              Duplicate
            </button>
            <button
              type="button"
              className="plain"
              aria-pressed={player.archived}
              onClick={() => edit(player, { archived: !player.archived }, player.archived ? 'Unarchive' : 'Archive')}
            >
              {player.archived ? 'Archived' : 'Archive'}
            </button>
          </>
        )}
        <button type="button" className="plain" onClick={() => handOver(id)}>
          Export player
        </button>
        {mayWrite && (
          <button type="button" className="plain" onClick={() => remove(player)}>
            Delete
          </button>
        )}
      </div>
      {mayWrite && <Wipe player={player} />}
    </>
  );
}
