/** Units a coach may choose for what is shown. Inside, everything stays in metres, seconds and radians. */
export type LengthUnit = 'cm' | 'in';
export type SpeedUnit = 'm/s' | 'km/h' | 'mph';
export interface Units {
  readonly length: LengthUnit;
  readonly speed: SpeedUnit;
}

/**
 * A unit of length on screen: its size in metres, the decimals of a finer number, the grain of a usual one, in the unit
 * itself, and how it is written and said.
 */
export const LENGTHS = {
  cm: {
    metres: 0.01,
    decimals: 0,
    grain: 1,
    symbol: 'cm',
    sentence: ['cm', 'cm'],
    spoken: ['centimetre', 'centimetres'],
  },
  // "8 in in front" reads badly, so sentences write the word out. Quarters, as on a tape.
  in: {
    metres: 0.0254,
    decimals: 1,
    grain: 0.25,
    symbol: 'in',
    sentence: ['inch', 'inches'],
    spoken: ['inch', 'inches'],
  },
} as const satisfies Record<LengthUnit, unknown>;

/** A unit of speed on screen: its size in metres per second and how it is written and said. */
export const SPEEDS = {
  'm/s': { metresPerSecond: 1, spoken: 'metres per second' },
  'km/h': { metresPerSecond: 1 / 3.6, spoken: 'kilometres per hour' },
  mph: { metresPerSecond: 0.44704, spoken: 'miles per hour' },
} as const satisfies Record<SpeedUnit, unknown>;

/** Where a number comes from. Every number on screen carries one of these. */
export type Origin = 'measured by you' | 'computed by the model' | 'rule of thumb';

export const MEASURED: Origin = 'measured by you';
export const COMPUTED: Origin = 'computed by the model';
export const RULE_OF_THUMB: Origin = 'rule of thumb';
