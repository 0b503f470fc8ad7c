import { boolean, check, exactOptional, integer, literal, nullable, pipe, type GenericSchema } from 'valibot';
import { eachOf, fields, listUpTo, numberIn, oneOf } from '../../checking/schemas';
import { MARK_NAMES, PLACE_IDS } from '../../film/sheet/markNames';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { KeptFilm } from './keptFilm';
import { LIMITS } from '../book/recordTypes';

const side = pipe(numberIn(1, 100_000), integer('Whole pixels only.'));
/** A list of just so many: a tuple, in what the first payload holds anyway. */
const exactly = <S extends GenericSchema>(count: number, of: S) =>
  pipe(
    listUpTo(of, count),
    check((list) => list.length === count, 'Too few.'),
  );
const px = numberIn(-100_000, 100_000);
const point = exactly(2, px);
const mark = fields({ at: point, how: oneOf(['tapped', 'typed']) });
const typedM = exactOptional(numberIn(-100, 100));
const metres = numberIn(-1000, 1000);
const degrees = numberIn(-360, 360);
const camera = {
  eyeM: exactly(3, metres),
  yawDeg: degrees,
  pitchDeg: degrees,
  rollDeg: degrees,
  focalPx: numberIn(0, 1e9),
};
const reading = fields({
  cm: numberIn(-1000, 1000),
  plusMinusCm: numberIn(0, 1000),
  verdict: nullable(oneOf(['steep', 'onPlane', 'shallow'])),
});

const film = fields({
  kind: oneOf(['video', 'picture']),
  w: side,
  h: side,
  frames: pipe(numberIn(1, 1e6), integer('Whole frames only.')),
  clubM: numberIn(0.1, 3),
  notes: fields({
    fps: exactOptional(numberIn(1, 100_000)),
    isHandHeld: boolean(),
    isSleeved: boolean(),
    isTripodKept: exactOptional(literal(true)),
    impact: exactOptional(pipe(numberIn(0, 1e6), integer('Whole frames only.'))),
    heightM: typedM,
    distanceM: typedM,
    sidewaysM: typedM,
  }),
  sheet: fields(
    eachOf(PLACE_IDS, (place) =>
      exactOptional(
        fields({
          frame: pipe(numberIn(0, 1e6), integer('Whole frames only.')),
          points: fields(eachOf(MARK_NAMES[place], () => exactOptional(mark))),
          line: exactOptional(exactly(2, point)),
        }),
      ),
    ),
  ),
  camera: fields({ ...camera, sd: fields(camera) }),
  readings: fields(eachOf(CHECKPOINT_IDS, () => exactOptional(reading))),
});

/** What a lesson keeps of a film, read field by field. */
export const filmSchema = film as unknown as GenericSchema<unknown, KeptFilm>;

const BASE64 = /^[A-Za-z0-9+/]+={0,2}$/;
/** Whether a text is a JPEG in base64, by its first bytes and its size. */
export const isJpeg = (text: string): boolean =>
  text.length <= Math.ceil(LIMITS.stillBytes / 3) * 4 && text.startsWith('/9j/') && BASE64.test(text);
