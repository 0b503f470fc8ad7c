import type { KeptFilm } from '../../src/record/film/keptFilm';

/** A film as a lesson keeps it, made up. */
export const FILM: KeptFilm = {
  kind: 'video',
  w: 1080,
  h: 1920,
  frames: 2400,
  clubM: 0.94,
  notes: { fps: 240, isHandHeld: false, isSleeved: true, heightM: 1.1 },
  sheet: {
    address: { frame: 12, points: { clubHead: { at: [700.5, 1500], how: 'tapped' } } },
    arm: {
      frame: 812,
      points: { hands: { at: [500, 900], how: 'tapped' }, clubHead: { at: [300, 200], how: 'typed' } },
      line: [
        [490, 880],
        [310, 220],
      ],
    },
  },
  camera: {
    eyeM: [-4.1, 1.2, 0.3],
    yawDeg: 2,
    pitchDeg: -3,
    rollDeg: 0.4,
    focalPx: 2000,
    sd: { eyeM: [0.3, 0.05, 0.1], yawDeg: 0.4, pitchDeg: 0.3, rollDeg: 0.2, focalPx: 120 },
  },
  readings: { leadArmParallel: { cm: 7.2, plusMinusCm: 4, verdict: 'steep' } },
};
/** The first bytes of a JPEG (ITU-T T.81, B.1.1.3: start of image), in base64. */
export const JPEG = `/9j/${'A'.repeat(400)}`;
