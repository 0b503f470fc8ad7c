/**
 * Segment lengths as fractions of stature.
 * Source: Drillis & Contini (1966), as tabulated in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1.
 */
export const SEGMENT_FRACTIONS = {
  trunk: 0.288,
  shoulderHalf: 0.129,
  hipHalf: 0.0955,
  upperArm: 0.186,
  forearm: 0.146,
  grip: 0.054,
  thigh: 0.245,
  shank: 0.246,
  ankle: 0.039,
  foot: 0.152,
} as const;

export type SegmentId = keyof typeof SEGMENT_FRACTIONS;

/** Measured lengths in metres that replace the table's. */
export type MeasuredSegments = { readonly [id in SegmentId]?: number };

/** Lengths of one player, metres. `grip` is wrist to grip centre, half the hand. */
export type Body = { readonly stature: number } & { readonly [id in SegmentId]: number };

type Handed = 'right' | 'left';

/** A player: stature in metres, hand, and any measured segment lengths. */
export interface Player {
  readonly statureM: number;
  readonly handed: Handed;
  readonly segmentsM?: MeasuredSegments;
}

export const STATURE_LIMITS_M = { min: 1.4, max: 2.1 } as const;
/** A measured segment may differ from the table's by this factor; more is taken for a typing error. */
export const SEGMENT_FACTOR_LIMITS = { min: 0.7, max: 1.3 } as const;

/** A set-up that cannot be: says what, where, what was expected and what to do. */
export class SetupError extends Error {
  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
    this.name = 'SetupError';
  }
}

const SEGMENT_IDS = Object.keys(SEGMENT_FRACTIONS) as SegmentId[];

/**
 * Segment lengths of a player, metres. Throws `SetupError` for a stature or a measured length outside the limits.
 */
export function bodyOf(player: Player): Body {
  const { statureM, segmentsM } = player;
  const { min, max } = STATURE_LIMITS_M;
  if (!(statureM >= min && statureM <= max)) {
    throw new SetupError(
      'statureM',
      `Stature ${statureM} m is outside what the model knows. Enter ${min} to ${max} m.`,
    );
  }
  const lengths = {} as Record<SegmentId, number>;
  for (const id of SEGMENT_IDS) {
    const usual = SEGMENT_FRACTIONS[id] * statureM;
    const measured = segmentsM?.[id];
    if (measured !== undefined) checkSegment(id, measured, usual);
    lengths[id] = measured ?? usual;
  }
  return { stature: statureM, ...lengths };
}

function checkSegment(id: SegmentId, measured: number, usual: number): void {
  const low = usual * SEGMENT_FACTOR_LIMITS.min;
  const high = usual * SEGMENT_FACTOR_LIMITS.max;
  if (measured >= low && measured <= high) return;
  throw new SetupError(
    id,
    `Measured ${id} ${measured} m does not fit the stature. Enter ${low.toFixed(3)} to ${high.toFixed(3)} m, or leave it empty.`,
  );
}
