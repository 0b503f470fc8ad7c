/** Still, dry air: kg/m^3 and, for the kinematic viscosity, m^2/s. */
export interface Air {
  readonly density: number;
  readonly viscosity: number;
}

/** Air at sea level, as the trajectory formulas were checked with. */
export const SEA_LEVEL: Air = { density: 1.225, viscosity: 1.48e-5 };

/** The formula below holds in the troposphere; golf is played from a little under sea level to about 4 km. */
export const ALTITUDE_LIMITS = { altitudeM: { min: -500, max: 11000 } } as const;

const TEMPERATURE_0 = 288.15;
const LAPSE = 0.0065;
const GAS = 287.05287;
const GRAVITY_0 = 9.80665;
const SUTHERLAND = 110.4;

/**
 * Air of the International Standard Atmosphere at `altitudeM` above sea level (geopotential m): thinner with height.
 * Density by the lapse rate of 6.5 K/km, viscosity by Sutherland's law, both relative to `SEA_LEVEL`. Wants an
 * altitude within `ALTITUDE_LIMITS`. Source: ISO 2533:1975 / U.S. Standard Atmosphere 1976.
 */
export function airAt(altitudeM: number): Air {
  const warmth = 1 - (LAPSE * altitudeM) / TEMPERATURE_0;
  const thinning = warmth ** (GRAVITY_0 / (GAS * LAPSE) - 1);
  const stickiness = (warmth ** 1.5 * (TEMPERATURE_0 + SUTHERLAND)) / (TEMPERATURE_0 * warmth + SUTHERLAND);
  return { density: SEA_LEVEL.density * thinning, viscosity: (SEA_LEVEL.viscosity * stickiness) / thinning };
}
