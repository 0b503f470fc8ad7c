import { exactOptional, minLength, pipe, strictTuple, type InferOutput } from 'valibot';
import { fields, listUpTo, numberIn, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { answerFilm, type FilmAnswer, type NoFilm } from '../../film/answerFilm';
import type { JudgedReading } from '../../film/judgeFilm';
import { mirrorMarks, type FilmMarks, type FrameMarks, type TypedCamera } from '../../film/marks';
import { findMissingForCamera, findMissingInFrame, type MissingMark } from '../../film/sheet/missing';
import { CHECKPOINTS, type CheckpointId } from '../../reading/checkpointTable';
import { verdictWords } from '../../reading/verdicts';
import { clubSchema, playerSchema, toEdgeMovements } from '../golfer';
import { armAngleSchema, bandsSchema, toArmAngle, toBands } from '../judging';
import { LineError } from '../lineError';
import { groundOf } from '../references';
import { toCm } from '../../edge/units';

/** Marks may lie beside the picture: a stick that runs out of it. */
const px = numberIn(-100_000, 100_000);
const pixel = strictTuple([px, px], 'Expected [x, y] in pixels.');
const pair = strictTuple([pixel, pixel], 'Expected two points: [[x, y], [x, y]].');
const sdPx = exactOptional(numberIn(0.1, 1000));
const wide = exactOptional(numberIn(-100, 100));

const frameSchema = fields({
  frame: numberIn(0, 1e9),
  hands: pixel,
  clubHead: pixel,
  shaft: exactOptional(pair),
  trailShoulder: exactOptional(pixel),
  trailElbow: exactOptional(pixel),
  leadShoulder: exactOptional(pixel),
  leadElbow: exactOptional(pixel),
  midHip: exactOptional(pixel),
  neck: exactOptional(pixel),
  ball: exactOptional(pixel),
  leadToe: exactOptional(pixel),
  sdPx,
});

/** Where the camera stood, from the hands at address; positive sideways: right as seen from behind it. */
const cameraSchema = fields({
  heightM: wide,
  distanceM: wide,
  sidewaysM: wide,
  plusMinusM: exactOptional(numberIn(0.001, 100)),
});

/** Marks on a film, in pixels from the top left of the picture; `sdPx` beside a group says how closely it was made. */
export const filmFields = {
  player: playerSchema,
  club: clubSchema,
  pixels: fields({ w: numberIn(16, 100_000), h: numberIn(16, 100_000) }),
  fps: exactOptional(numberIn(1, 100_000)),
  address: fields({
    clubHead: exactOptional(pixel),
    gripEnd: exactOptional(pixel),
    stick: exactOptional(pair),
    trailToe: exactOptional(pixel),
    leadToe: exactOptional(pixel),
    horizon: exactOptional(pair),
    target: exactOptional(pixel),
    ball: exactOptional(pixel),
    upright: exactOptional(pair),
    sdPx,
  }),
  camera: exactOptional(cameraSchema),
  leadArmParallel: exactOptional(frameSchema),
  shaftParallel: exactOptional(pipe(listUpTo(frameSchema, 2), minLength(1, 'Expected one or two frames.'))),
  bands: exactOptional(bandsSchema),
  checkpointArmDeg: exactOptional(armAngleSchema),
};

/** The camera, the readings with their give or take, and what would look like this, in the frame of the right-handed player. */
export function runFilm(line: FieldsOf<typeof filmFields>): object {
  const given = toMarks(line);
  const marks = line.player.handed === 'left' ? mirrorMarks(given) : given;
  const answer = answerFilm({
    swing: groundOf(line.player, line.club).swing,
    marks,
    bands: toBands(line.bands),
    armAngle: toArmAngle(line.checkpointArmDeg),
  });
  if ('missing' in answer) throw refusal(answer);
  return {
    camera: toEdgeCamera(answer),
    ...toEdgeReading('leadArmParallel', answer.leadArmParallel),
    ...toEdgeReading('shaftParallel', answer.shaftParallel),
    explanations: answer.explanations.map(({ uses, movements, misfit, share }) => ({
      uses,
      movements: toEdgeMovements(movements),
      misfit,
      share,
    })),
  };
}

function toMarks(line: FieldsOf<typeof filmFields>): FilmMarks {
  const { address, leadArmParallel, shaftParallel } = line;
  const camera = line.camera && toCamera(line.camera);
  const [missing] = [
    ...findMissingForCamera(address, camera),
    ...(leadArmParallel ? findMissingInFrame('leadArmParallel', leadArmParallel) : []),
  ];
  if (missing) throw missingMark(missing);
  return {
    size: line.pixels,
    ...(line.fps !== undefined && { fps: line.fps }),
    address: withSd(address) as FilmMarks['address'],
    ...(camera && { camera }),
    ...(leadArmParallel && { leadArmParallel: withSd(leadArmParallel) as FrameMarks }),
    ...(shaftParallel && { shaftParallel: shaftParallel.map(withSd) }),
  };
}

/** A group of marks with its own deviation on each of its points. */
function withSd<T extends { readonly sdPx?: number }>(group: T): Omit<T, 'sdPx'> {
  const { sdPx: sd, ...rest } = group;
  if (sd === undefined) return rest;
  const point = (value: unknown): unknown =>
    Array.isArray(value) ? (typeof value[0] === 'number' ? [...(value as number[]), sd] : value.map(point)) : value;
  return Object.fromEntries(Object.entries(rest).map(([name, value]) => [name, point(value)])) as Omit<T, 'sdPx'>;
}

/** Default give or take of a typed place, m, and of a typed distance, as a share of it: two standard deviations. */
const TYPED = { place: 0.2, distance: 0.2 } as const;

function toCamera({ heightM, distanceM, sidewaysM, plusMinusM }: InferOutput<typeof cameraSchema>): TypedCamera {
  const typed = (value: number | undefined, usual: number) =>
    value === undefined ? undefined : { value, sd: (plusMinusM ?? usual) / 2 };
  const height = typed(heightM, TYPED.place);
  const distance = typed(distanceM, TYPED.distance * (distanceM ?? 0));
  const sideways = typed(sidewaysM, TYPED.place);
  return { ...(height && { height }), ...(distance && { distance }), ...(sideways && { sideways }) };
}

function toEdgeCamera({ camera, costPerFreedom }: FilmAnswer): object {
  return {
    eyeM: [...camera.eye],
    yawDeg: toDeg(camera.yaw),
    pitchDeg: toDeg(camera.pitch),
    rollDeg: toDeg(camera.roll),
    focalPx: camera.focal,
    costPerFreedom,
  };
}

function toEdgeReading(id: CheckpointId, reading: JudgedReading | undefined): object {
  if (!reading) return {};
  const { value, plusMinus, verdict, because } = reading;
  return {
    [id]: {
      [CHECKPOINTS[id].judgedCm]: toCm(value),
      plusMinusCm: toCm(plusMinus),
      says: verdict ? verdictWords(id, verdict) : 'too close to call',
      ...(because && because !== 'close' && { because }),
    },
  };
}

const NEEDED: Readonly<Record<MissingMark['what'], string>> = {
  clubHead: 'Mark the club head.',
  gripEnd: 'Mark the end of the grip.',
  direction: 'Mark a stick along the target line, the target, or both toes.',
  level: 'Mark the horizon or both toes, or give camera.heightM.',
  hands: 'Mark the hands.',
  trailShoulder: 'Mark the trail shoulder.',
  trailElbow: 'Mark the trail elbow.',
  second: 'Mark the next frame too.',
};

function missingMark({ at, what }: MissingMark): LineError {
  const field = what === 'direction' ? 'stick' : what === 'level' ? 'horizon' : what;
  return new LineError(`${at}.${field}`, `Missing: the film cannot be read without it. ${NEEDED[what]}`);
}

function refusal(answer: NoFilm): LineError {
  if (answer.missing === 'camera-moved') {
    const { at, mark, px: moved } = answer.moved;
    return new LineError(`${at}.${mark}`, `The camera moved: this point is ${Math.round(moved)} px from where it was.`);
  }
  return new LineError('', 'These marks fit no player and no camera. Check them.');
}
