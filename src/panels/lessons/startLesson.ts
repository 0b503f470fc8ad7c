import { addLesson, book, computeCm, deskLink, lessonsOf, type LessonRecord, type PlayerRecord } from '../../record';
import { desk, type Document } from '../../store';
import { LESSON_SAVED } from '../../words/book/book';
import { toDay } from '../../words/book/days';
import { goTo } from './navigation';

/** The desk of the last lesson, its target computed by today's model: what is carried over is not marked as an earlier one's. */
function ofToday({ computedBy, now }: LessonRecord): Document {
  if (computedBy === undefined || now.plan === null) return now;
  return { ...now, plan: { ...now.plan, targetCm: computeCm({ ...now, movements: now.plan.movements }) } };
}

/** The desk that a player's first lesson starts with: what lies there, for this player, with his first club; of another's plan nothing. */
function firstDesk(player: PlayerRecord): Document {
  const { document } = desk.getState();
  const [club] = player.clubs;
  const isOwn = club === undefined || document.club.id === club;
  return {
    ...document,
    player: player.body,
    plan: null,
    ...(isOwn ? {} : { club: { id: club, my: document.club.my } }),
  };
}

/** Starts a lesson where the player's last one ended, or with what is on the desk. Answers whether it could. */
export function startLesson(player: PlayerRecord): boolean {
  const [last] = lessonsOf(book.state.getState().records, player.id);
  const now = last ? ofToday(last) : firstDesk(player);
  const birth = book.birth();
  const lesson = addLesson(birth, player.id, toDay(birth.nowMs), now, computeCm(now));
  if (!book.apply(lesson)) return false;
  const [made] = lesson.put;
  if (made.kind === 'lesson') deskLink.open(made);
  goTo({ page: 'lesson', id: birth.id });
  return true;
}

/** The lesson is done: it is in the book, and the desk is what it was before. */
export function finishLesson({ playerId }: LessonRecord): void {
  deskLink.close();
  goTo({ page: 'player', id: playerId }, LESSON_SAVED);
}
