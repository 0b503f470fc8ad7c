/** How often the player felt what a drill is for. */
export const FELT = ['not yet', 'sometimes', 'most times'] as const;
export type Felt = (typeof FELT)[number];

/** One day of practice. Lists follow the plan's drills, at most three. */
export interface PracticeDay {
  /** Calendar day on the player's device, "2026-12-02". */
  readonly date: string;
  /** Drills that were ticked. */
  readonly done: readonly boolean[];
  /** Repetitions counted, 0 to `MOST_REPETITIONS`. */
  readonly counts: readonly number[];
}

/** What a player did of one plan. It stays on his device until he sends it. */
export interface Practice {
  /** The plan's id: random, says nothing about whose it is. */
  readonly planId: string;
  /** Rising by date, no date twice. A day on which nothing was done has no entry. */
  readonly days: readonly PracticeDay[];
  /** One answer for each drill; null: not answered. */
  readonly felt: readonly (Felt | null)[];
  /** One line to the coach. */
  readonly words: string;
}

export const MOST_REPETITIONS = 999;
export const PRACTICE_LIMITS = { days: 120, words: 200 } as const;
