import type { CheckpointId } from '../../reading/checkpoints';

/** How a mark came about. A mark from a film has its camera reckoned in already; every other was read by eye. */
export const SEEN_FROM = ['eye', 'typed', 'plate', 'film'] as const;

/** What a coach read off a real player at one checkpoint, as the judged reading there, with his own margin. */
export interface Sighting {
  readonly cm: number;
  readonly plusMinusCm: number;
  /** `plate`: pulled on a plate. Marks from before this was kept count as read by eye. */
  readonly from: (typeof SEEN_FROM)[number];
}
export type Seen = { readonly [id in CheckpointId]: Sighting | null };

export const NOTHING_SEEN: Seen = { leadArmParallel: null, shaftParallel: null };

/** What an eye is good for when nothing else is said (our choice), cm: two standard deviations. */
export const USUAL_GIVE_CM = 3;

/** Farther than any club could be seen from its corridor; a margin of nothing, or of a whole arm, is a slip. */
export const SEEN_LIMITS = { cm: { min: -60, max: 60 }, plusMinusCm: { min: 0.1, max: 30 } } as const;

const within = (value: number, { min, max }: { readonly min: number; readonly max: number }): number =>
  Number(Math.min(max, Math.max(min, value)).toFixed(2)) + 0;

/** A mark as it is kept: inside the limits, to a tenth of a millimetre. */
export const asKept = ({ cm, plusMinusCm, from }: Sighting): Sighting => ({
  cm: within(cm, SEEN_LIMITS.cm),
  plusMinusCm: within(plusMinusCm, SEEN_LIMITS.plusMinusCm),
  from,
});
