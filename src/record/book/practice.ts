import { readPracticeCode } from '../../practice/code';
import { gainedBy, mergePractice } from '../../practice/merge';
import type { Practice } from '../../practice/practice';
import { PRACTICE_REFUSED, sayFirstPractice, sayGained } from '../../words/book/practice';
import type { Records } from '../file/importPlan';
import { editLesson, type Edit } from './edits';
import { lessonsOf } from './lists';
import { LIMITS, type LessonRecord } from './recordTypes';

/** What a code does to the book, in words; without an edit nothing changes. */
export type TakenPractice =
  { readonly edit: Edit; readonly lessonId: string; readonly said: string } | { readonly problem: string };

/** Reads a practice code and puts it to the lesson in which its plan began. Writes nothing. */
export function takePractice(book: Records, code: string, nowMs: number): TakenPractice {
  const read = readPracticeCode(code);
  if ('problem' in read) return { problem: PRACTICE_REFUSED.unread(read.problem) };
  const { practice } = read;
  const lessons = lessonsWith(book, practice.planId);
  const players = [...new Set(lessons.map(({ playerId }) => playerId))];
  if (players.length > 1) {
    const names = players.map((id) => book.get(id)).map((player) => (player?.kind === 'player' ? player.name : '?'));
    return { problem: PRACTICE_REFUSED.severalPlayers(names) };
  }
  // A plan goes on from lesson to lesson: its practice stays where it was put first.
  const lesson = lessons.find((one) => ofPlan(one, practice.planId)) ?? lessons[0];
  if (!lesson) return { problem: PRACTICE_REFUSED.unknownPlan };
  return putInto(lesson, practice, nowMs);
}

function putInto(lesson: LessonRecord, come: Practice, nowMs: number): TakenPractice {
  const all = lesson.practice ?? [];
  const kept = ofPlan(lesson, come.planId);
  const merged = kept ? mergePractice(kept, come) : come;
  const gained = kept && gainedBy(kept, merged);
  if (kept && !gained) return { problem: PRACTICE_REFUSED.there };
  if (!kept && all.length >= LIMITS.practices) return { problem: PRACTICE_REFUSED.full };
  const practice = kept ? all.map((one) => (one === kept ? merged : one)) : [...all, merged];
  return {
    edit: editLesson(lesson, nowMs, { practice }, 'Practice from the player'),
    lessonId: lesson.id,
    said: gained ? sayGained(gained) : sayFirstPractice(merged.days.length),
  };
}

const ofPlan = (lesson: LessonRecord, planId: string): Practice | undefined =>
  lesson.practice?.find((one) => one.planId === planId);

/** Lessons that have or had a plan, the oldest first. */
function lessonsWith(book: Records, planId: string): readonly LessonRecord[] {
  return [...book.values()]
    .filter((record) => record.kind === 'lesson')
    .filter((lesson) => lesson.now.plan?.id === planId || ofPlan(lesson, planId))
    .toSorted((a, b) => a.date.localeCompare(b.date) || a.createdMs - b.createdMs);
}

/** Practice that belongs to a lesson: what is kept in it, and that of its plan where an earlier lesson keeps it. */
export function practiceOf(book: Records, lesson: LessonRecord): readonly Practice[] {
  const own = lesson.practice ?? [];
  const planId = lesson.now.plan?.id;
  if (planId === undefined || ofPlan(lesson, planId)) return own;
  const earlier = lessonsOf(book, lesson.playerId).find((one) => ofPlan(one, planId));
  return earlier ? [...own, ofPlan(earlier, planId)!] : own;
}

/** Every day on which the player of some lessons practised, once each, rising. */
export const practiceDaysOf = (lessons: readonly LessonRecord[]): readonly string[] =>
  [
    ...new Set(lessons.flatMap(({ practice = [] }) => practice.flatMap(({ days }) => days.map(({ date }) => date)))),
  ].toSorted();
