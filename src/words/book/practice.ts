import type { Gained } from '../../practice/merge';

/** "1 day", "3 days". */
export const sayDays = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

/** What a practice brought that was not there before. */
export function sayGained({ newDays, fullerDays, newAnswers, newWords }: Gained): string {
  const parts = [
    newDays > 0 && `${sayDays(newDays)} more`,
    fullerDays > 0 && `more on ${sayDays(fullerDays)}`,
    newAnswers && 'new answers',
    newWords && 'new words',
  ].filter((part) => part !== false);
  return `Practice from the player: ${parts.join(', ')}. Undo takes it back.`;
}

/** A practice that is the first of its plan. */
export const sayFirstPractice = (days: number): string =>
  `Practice from the player: ${sayDays(days)}. Undo takes it back.`;

/** Why a practice was not taken. */
export const PRACTICE_REFUSED = {
  unread: (problem: string): string => `The practice could not be read: ${problem}. Nothing was changed.`,
  unknownPlan: 'No lesson in this book has the plan of this practice. Nothing was changed.',
  severalPlayers: (names: readonly string[]): string =>
    `${names.join(' and ')} have the same plan. Clear it in one of them first. Nothing was changed.`,
  there: 'This practice is in the lesson already. Nothing was changed.',
  full: 'This lesson holds the practice of six plans already. Nothing was changed.',
} as const;
