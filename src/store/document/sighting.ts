import type { CheckpointId } from '../../reading/checkpoints';

/** What a coach read off a real player at one checkpoint, as the judged reading there, with his own give or take. */
export interface Sighting {
  readonly cm: number;
  readonly plusMinusCm: number;
}
export type Seen = { readonly [id in CheckpointId]: Sighting | null };

export const NOTHING_SEEN: Seen = { leadArmParallel: null, shaftParallel: null };

/** What an eye is good for when nothing else is said (our choice), cm: two standard deviations. */
export const USUAL_GIVE_CM = 3;

/** Farther than any club could be seen from its corridor; a give or take of nothing, or of a whole arm, is a slip. */
export const SEEN_LIMITS = { cm: { min: -60, max: 60 }, plusMinusCm: { min: 0.1, max: 30 } } as const;
