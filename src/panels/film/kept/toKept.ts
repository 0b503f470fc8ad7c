import type { FoundCamera } from '../../../film/answerFilm';
import { PLACE_IDS } from '../../../film/sheet/markNames';
import type { Pinhole } from '../../../film/pinhole';
import { toDeg } from '../../../math/angle';
import { CHECKPOINT_IDS } from '../../../reading/checkpointTable';
import type { KeptCamera, KeptFilm } from '../../../record';
import { asKept } from '../../../store/document/sighting';
import type { SentAnswer } from '../../../video/film.worker';
import type { VideoInfo } from '../../../video/video';
import { NOTHING } from '../filmStore';
import { EMPTY_SHEET, type FilmNotes, type MarkedFrame, type Sheet } from '../filmMarks';

/** To a hundredth of a pixel, a tenth of a millimetre, a thousandth of a degree: finer than any mark. */
const round = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;
const point = ([u, v]: readonly number[]): readonly [number, number] => [round(u, 2), round(v, 2)];

const toKeptCamera = ({ eye, yaw, pitch, roll, focal }: Pinhole): KeptCamera => ({
  eyeM: [round(eye[0], 4), round(eye[1], 4), round(eye[2], 4)],
  yawDeg: round(toDeg(yaw), 3),
  pitchDeg: round(toDeg(pitch), 3),
  rollDeg: round(toDeg(roll), 3),
  focalPx: round(focal, 1),
});

/** A film as a lesson keeps it: what was marked, and what it told. `clubM`: length of the club, m. */
export function toKeptFilm(
  { kind, w, h, frames }: VideoInfo,
  sheet: Sheet,
  notes: FilmNotes,
  answer: SentAnswer & { readonly camera: FoundCamera },
  clubM: number,
): KeptFilm {
  const { fps, isHandHeld, isSleeved, isTripodKept, impact, heightM, distanceM, sidewaysM } = notes;
  const marked = PLACE_IDS.flatMap((place) => {
    const one = sheet[place];
    if (!one) return [];
    const points = Object.entries(one.points).map(([id, { at, how }]) => [id, { at: point(at), how }] as const);
    const line = one.line && ([point(one.line[0]), point(one.line[1])] as const);
    return [[place, { frame: one.frame, points: Object.fromEntries(points), ...(line && { line }) }] as const];
  });
  const readings = CHECKPOINT_IDS.flatMap((id) => {
    const reading = answer[id];
    if (!reading) return [];
    const { cm, plusMinusCm } = asKept({ cm: 100 * reading.value, plusMinusCm: 100 * reading.plusMinus, from: 'film' });
    return [[id, { cm, plusMinusCm, verdict: reading.verdict ?? null }] as const];
  });
  return {
    kind,
    w,
    h,
    frames,
    clubM: round(clubM, 4),
    notes: {
      ...(fps !== undefined && { fps }),
      isHandHeld,
      isSleeved,
      ...(isTripodKept && { isTripodKept }),
      ...(impact !== undefined && { impact }),
      ...(heightM !== undefined && { heightM }),
      ...(distanceM !== undefined && { distanceM }),
      ...(sidewaysM !== undefined && { sidewaysM }),
    },
    sheet: Object.fromEntries(marked),
    camera: { ...toKeptCamera(answer.camera), sd: toKeptCamera(answer.camera.sd) },
    readings: Object.fromEntries(readings),
  };
}

/** The marks of a kept film, to be worked on again. */
export const toSheet = ({ sheet }: Pick<KeptFilm, 'sheet'>): Sheet => ({
  ...EMPTY_SHEET,
  ...(sheet as { readonly [place in keyof Sheet]?: MarkedFrame }),
});
/** What was said of it. */
export const toNotes = ({ notes }: KeptFilm): FilmNotes => ({
  ...NOTHING.notes,
  ...notes,
});
