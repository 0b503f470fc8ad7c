/** Why a strike or a flight has no numbers. */
type NoFlight =
  | 'bad-input' // a number is missing, not finite or out of its range: `field` says which
  | 'no-contact' // the face moves away from the ball, or along it
  | 'never-rises' // the ball starts along or into the ground
  | 'never-lands'; // still in the air after the longest time the model follows it

/** The answer where there is none: the reason, the field at fault where there is one, and what to do in words. */
export interface Refused {
  readonly missing: NoFlight;
  readonly field?: string;
  readonly message: string;
}

/** Whether an answer is a refusal. */
export const isRefused = (answer: object): answer is Refused => 'missing' in answer;

/** Bounds of one input field at an edge. `above` excludes the bound, `min` and `max` include it. */
export interface Bounds {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
}

/**
 * The first of `fields` that is not a finite number within its bounds, as a refusal that says what is legal;
 * `undefined` when all are sound.
 */
export function findBadField<T extends object>(
  given: T,
  fields: Partial<Record<keyof T & string, Bounds>>,
): Refused | undefined {
  for (const field of Object.keys(fields) as (keyof T & string)[]) {
    const value: unknown = given[field];
    const { min = -Infinity, above = -Infinity, max = Infinity } = fields[field] as Bounds;
    if (typeof value === 'number' && Number.isFinite(value) && value >= min && value > above && value <= max) continue;
    return badInput(field, `${field}: ${String(value)} is not usable. Enter a number ${legal({ min, above, max })}.`);
  }
  return undefined;
}

/** A refusal over one input field. The message says what is legal and what to enter. */
export const badInput = (field: string, message: string): Refused => ({ missing: 'bad-input', field, message });

function legal({ min, above, max }: Required<Bounds>): string {
  const low = above > -Infinity ? `above ${above}` : min > -Infinity ? `from ${min}` : '';
  const high = max < Infinity ? `up to ${max}` : '';
  return [low, high].filter(Boolean).join(' ') || 'that is finite';
}
