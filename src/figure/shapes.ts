import type { Loft } from './loft';

/**
 * The lay figure's turned parts. Half-widths across (x) and deep (z) in fractions of stature.
 * Drawn by eye after artists' figures; lengths come from the player's own segments.
 */
export const SHAPES = {
  pelvis: {
    stations: [
      { t: 0, x: 0.062, z: 0.046, n: 2.3 },
      { t: 0.3, x: 0.088, z: 0.06, n: 2.5 },
      { t: 0.62, x: 0.09, z: 0.062, n: 2.5 },
      { t: 1, x: 0.074, z: 0.05, n: 2.4 },
    ],
    startCap: 0.045,
    endCap: 0.03,
    startPower: 2.2,
    endPower: 2.4,
    steps: 20,
    segments: 32,
  },
  ribcage: {
    stations: [
      { t: 0, x: 0.058, z: 0.044, n: 2.2 },
      { t: 0.22, x: 0.074, z: 0.057, oz: 0.002, n: 2.3 },
      { t: 0.52, x: 0.089, z: 0.068, oz: 0.006, n: 2.4 },
      { t: 0.8, x: 0.099, z: 0.06, oz: 0.003, n: 2.4 },
      { t: 1, x: 0.084, z: 0.043, oz: -0.004, n: 2.2 },
    ],
    startCap: 0.028,
    endCap: 0.04,
    startPower: 2.3,
    steps: 24,
    segments: 36,
  },
  yoke: {
    stations: [
      { t: 0, x: 0.038, z: 0.044 },
      { t: 0.55, x: 0.036, z: 0.039 },
      { t: 1, x: 0.029, z: 0.03 },
    ],
    startCap: 0.03,
    endCap: 0.016,
    steps: 14,
    segments: 22,
  },
  neck: {
    stations: [
      { t: 0, x: 0.036, z: 0.036 },
      { t: 0.45, x: 0.0285, z: 0.0285 },
      { t: 1, x: 0.031, z: 0.031 },
    ],
    startCap: 0.01,
    endCap: 0.01,
    steps: 12,
    segments: 24,
  },
  headEgg: {
    stations: [
      { t: 0, x: 0.026, z: 0.03, oz: 0.012 },
      { t: 0.22, x: 0.036, z: 0.044, oz: 0.006 },
      { t: 0.55, x: 0.0435, z: 0.053, oz: -0.002 },
      { t: 0.8, x: 0.0445, z: 0.053, oz: -0.004 },
      { t: 1, x: 0.04, z: 0.046, oz: -0.004 },
    ],
    startCap: 0.022,
    endCap: 0.062,
    startPower: 2.1,
    steps: 26,
    segments: 36,
  },
  upperArm: {
    stations: [
      { t: 0, x: 0.034, z: 0.036 },
      { t: 0.2, x: 0.0335, z: 0.0355 },
      { t: 0.55, x: 0.0265, z: 0.029 },
      { t: 1, x: 0.0205, z: 0.022 },
    ],
    startCap: 0.036,
    endCap: 0.014,
    startPower: 2.15,
    steps: 18,
    segments: 24,
  },
  forearm: {
    stations: [
      { t: 0, x: 0.021, z: 0.022 },
      { t: 0.25, x: 0.0245, z: 0.025 },
      { t: 0.65, x: 0.0185, z: 0.019 },
      { t: 1, x: 0.0145, z: 0.015 },
    ],
    startCap: 0.014,
    endCap: 0.01,
    steps: 16,
    segments: 22,
  },
  palm: {
    stations: [
      { t: 0, x: 0.0135, z: 0.0165 },
      { t: 0.5, x: 0.0165, z: 0.0235, n: 2.3 },
      { t: 1, x: 0.0165, z: 0.025, n: 2.4 },
    ],
    startCap: 0.012,
    endCap: 0.012,
    steps: 12,
    segments: 20,
  },
  fist: {
    stations: [
      { t: 0, x: 0.0175, z: 0.0195, n: 2.3 },
      { t: 0.5, x: 0.0195, z: 0.0215, n: 2.5 },
      { t: 1, x: 0.0175, z: 0.0195, n: 2.3 },
    ],
    startCap: 0.01,
    endCap: 0.01,
    steps: 32,
    segments: 24,
  },
  thumb: {
    stations: [
      { t: 0, x: 0.0088, z: 0.0088 },
      { t: 0.6, x: 0.0078, z: 0.0074 },
      { t: 1, x: 0.0074, z: 0.0068 },
    ],
    startCap: 0.0085,
    endCap: 0.0075,
    steps: 10,
    segments: 12,
  },
  thigh: {
    stations: [
      { t: 0, x: 0.044, z: 0.05 },
      { t: 0.2, x: 0.0475, z: 0.053 },
      { t: 0.6, x: 0.0395, z: 0.044 },
      { t: 1, x: 0.029, z: 0.032 },
    ],
    startCap: 0.034,
    endCap: 0.018,
    startPower: 2.2,
    steps: 20,
    segments: 28,
  },
  shank: {
    stations: [
      { t: 0, x: 0.028, z: 0.029 },
      { t: 0.25, x: 0.0325, z: 0.035, oz: -0.008 },
      { t: 0.65, x: 0.0235, z: 0.025, oz: -0.003 },
      { t: 1, x: 0.0185, z: 0.02 },
    ],
    startCap: 0.018,
    endCap: 0.012,
    steps: 20,
    segments: 26,
  },
  foot: {
    stations: [
      { t: 0, x: 0.0215, z: 0.0205, oz: 0.0205, n: 2.4 },
      { t: 0.18, x: 0.0245, z: 0.0235, oz: 0.0235, n: 2.4 },
      { t: 0.42, x: 0.0228, z: 0.021, oz: 0.021, n: 2.4 },
      { t: 0.7, x: 0.0312, z: 0.0142, oz: 0.0142, n: 2.7 },
      { t: 0.88, x: 0.0292, z: 0.0125, oz: 0.0125, n: 2.7 },
      { t: 1, x: 0.024, z: 0.0112, oz: 0.0112, n: 2.5 },
    ],
    startCap: 0.021,
    endCap: 0.03,
    startPower: 2.2,
    endPower: 2.2,
    steps: 20,
    segments: 26,
  },
} as const satisfies Record<string, Loft>;

/** Radii of the ball joints (walnut), fractions of stature. */
export const BALLS = {
  shoulder: 0.0272,
  elbow: 0.0205,
  wrist: 0.014,
  hip: 0.047,
  knee: 0.0285,
  ankle: 0.0195,
} as const;
/** Half-axes of the waist ball, fractions of stature. */
export const WAIST = { x: 0.06, y: 0.045, z: 0.046 } as const;
