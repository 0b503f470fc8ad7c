import type { AirFit } from '../../src/flight/coefficients';

/**
 * Drag and lift of a ball in the rules body's indoor test range: means of six shots at each of seven conditions. Source: the
 * worked example of US patent 6,186,002 (USGA, 2001), seen quoted, mark B. Reynolds number, spin ratio, drag, lift.
 */
export const TEST_RANGE: readonly (readonly [reynolds: number, spinRatio: number, drag: number, lift: number])[] = [
  [8.1e4, 0.097, 0.223, 0.146],
  [8.1e4, 0.218, 0.305, 0.278],
  [1.23e5, 0.153, 0.256, 0.214],
  [1.25e5, 0.088, 0.226, 0.146],
  [1.61e5, 0.09, 0.234, 0.151],
  [2e5, 0.092, 0.241, 0.153],
  [1.98e5, 0.044, 0.231, 0.115],
];

/** How far a fit is from the test range, root mean square over its seven conditions: drag and lift. */
export function missOf({ dragAt, liftAt }: AirFit): { readonly drag: number; readonly lift: number } {
  const rms = (miss: (row: (typeof TEST_RANGE)[number]) => number): number =>
    Math.sqrt(TEST_RANGE.reduce((sum, row) => sum + miss(row) ** 2, 0) / TEST_RANGE.length);
  return { drag: rms(([re, s, cd]) => dragAt(s, re) - cd), lift: rms(([re, s, , cl]) => liftAt(s, re) - cl) };
}
