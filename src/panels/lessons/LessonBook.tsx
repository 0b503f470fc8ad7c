import { useEffect, useRef } from 'react';
import { book, deskLink, standingOf } from '../../record';
import { sayBook } from '../../words/book/book';
import { sayDay } from '../../words/book/days';
import { Backup } from './device/Backup';
import { Device } from './device/Device';
import { LessonPage } from './LessonPage';
import { goTo, useBook, useNavigation, type Place } from './navigation';
import { PlayerPage } from './PlayerPage';
import { Players } from './Players';
import { TakePractice } from './practice/TakePractice';
import { Progress } from './progress/Progress';
import { useNow } from './useNow';
import { OPENING_BOOK, OTHER_TAB } from '../../words/book/device';
import './lessons.css';

/** A page whose record has gone (deleted, or by another tab) gives way to the list. */
function useStanding(): Place {
  const place = useNavigation((state) => state.place);
  const there = useBook(({ records }) => !('id' in place) || records.has(place.id));
  return there ? place : { page: 'players' };
}

interface Crumb {
  readonly text: string;
  readonly place: Place;
}

/** The way back: players, the player, the lesson. */
function useCrumbs(place: Place): Crumb[] {
  const record = useBook(({ records }) => ('id' in place ? records.get(place.id) : undefined));
  const playerId = record?.kind === 'player' ? record.id : record?.playerId;
  const player = useBook(({ records }) => (playerId === undefined ? undefined : records.get(playerId)));
  const crumbs: Crumb[] = [{ text: 'Players', place: { page: 'players' } }];
  if (player?.kind === 'player') crumbs.push({ text: player.name, place: { page: 'player', id: player.id } });
  if (place.page === 'lesson' && record?.kind === 'lesson') crumbs.push({ text: sayDay(record.date), place });
  if (place.page === 'progress') crumbs.push({ text: 'Progress', place });
  if (place.page === 'backup') crumbs.push({ text: 'Backup and hand-over', place });
  if (place.page === 'practice') crumbs.push({ text: 'Practice from the player', place });
  if (place.page === 'device') crumbs.push({ text: 'What leaves this device', place });
  return crumbs;
}

function Crumbs({ crumbs }: { crumbs: readonly Crumb[] }) {
  const here = useRef<HTMLElement>(null);
  const text = crumbs.at(-1)!.text;
  const first = useRef(true);
  useEffect(() => {
    // The drawer's own heading has the focus when the book opens; from then on the page that was turned to.
    if (!first.current) here.current?.focus();
    first.current = false;
  }, [text]);
  return (
    <nav className="crumbs" aria-label="Where you are in the lesson book">
      {crumbs.map((crumb, at) =>
        at < crumbs.length - 1 ? (
          <span key={crumb.text}>
            <button type="button" className="text-button" onClick={() => goTo(crumb.place)}>
              {crumb.text}
            </button>
            <span aria-hidden="true">›</span>
          </span>
        ) : (
          <span key={crumb.text} className="crumb-here" aria-current="page" tabIndex={-1} ref={here}>
            {crumb.text}
          </span>
        ),
      )}
    </nav>
  );
}

/** What the last change was, and the way back from it. */
function TakeBack() {
  const label = useBook(({ undo, mode }) => (mode === 'reading' ? undefined : undo.at(-1)?.label));
  if (label === undefined) return null;
  return (
    <button aria-label={`Undo: ${label}`} type="button" className="text-button take-back" onClick={() => book.undo()}>
      Undo<span className="take-back-what">: {label}</span>
    </button>
  );
}

/** The line under the desk, for screens where it has no room. */
function Standing() {
  const now = useNow();
  const text = useBook((state) => {
    const nowMs = Math.max(now, state.savedMs ?? 0);
    return sayBook(standingOf(state, nowMs), nowMs).text;
  });
  return text === '' ? null : <p className="fine lesson-standing">{text}</p>;
}

/** Another tab writes: this one reads, and may ask. */
function Reading() {
  const mode = useBook((state) => state.mode);
  if (mode === 'opening') return <p>{OPENING_BOOK}</p>;
  if (mode !== 'reading') return null;
  return (
    <div className="lesson-note">
      <p>{OTHER_TAB}</p>
      <button type="button" className="plain" onClick={() => void deskLink.takeOver()}>
        Write here
      </button>
    </div>
  );
}

function Said() {
  const said = useNavigation((state) => state.said);
  return <output className={said === null ? 'unseen' : 'lesson-note'}>{said}</output>;
}

/** The lesson book: one page at a time. */
export default function LessonBook() {
  const place = useStanding();
  const crumbs = useCrumbs(place);
  return (
    <div className="lessons">
      <div className="lesson-head">
        {crumbs.length > 1 && <Crumbs crumbs={crumbs} />}
        <TakeBack />
      </div>
      <Reading />
      <Said />
      {place.page === 'players' && <Players />}
      {place.page === 'players' && <Standing />}
      {place.page === 'backup' && <Backup />}
      {place.page === 'device' && <Device />}
      {place.page === 'practice' && <TakePractice />}
      {place.page === 'player' && <PlayerPage key={place.id} id={place.id} />}
      {place.page === 'lesson' && <LessonPage key={place.id} id={place.id} />}
      {place.page === 'progress' && <Progress key={place.id} id={place.id} />}
    </div>
  );
}
