import type { CheckpointId } from '../reading/checkpoints';
import { judge, type Band, type Verdict } from '../reading/verdicts';
import type { FilmMarks, FrameMarks, Pixel } from './marks';
import { MARK_SD } from './marks';
import type { FilmReading } from './readings';

/** Why no word is given, most telling first. `close`: the give or take reaches across an edge of the band. */
type NoWord = 'poor-fit' | 'slow-film' | 'single-frame' | 'single-picture' | 'close';

/** A reading with what may be said of it, m. */
export interface JudgedReading {
  readonly value: number;
  readonly plusMinus: number;
  /** Undefined: too close to call, or not to be called on this film. */
  readonly verdict?: Exclude<Verdict, 'missing'>;
  readonly because?: NoWord;
}

/**
 * Give or take over a standard deviation: two of them, and an eighth more. With a worse player, 1 % of lens distortion and a rolling
 * shutter together, two alone held 86 to 91 of 100.
 */
const GIVE_OR_TAKE = 2 * 1.125;
/** Held in the hand, the camera drifts between the frames (our estimate). */
const HAND_HELD = 1.5;
/** Below this many frames a second the frames at shaft parallel lie too far apart for a word. */
const SLOWEST_FPS = 50;
/** Least give or take of a single picture at shaft parallel, m. */
const SINGLE_FRAME = 0.07;
/** Cost per freedom above which marks and model do not fit: twice what noise alone leaves. */
const POOR_FIT = 2;

/** A reading held against its band, with a word only where it is clear of the edges by its give or take. */
export function judgeFilm(
  id: CheckpointId,
  { value, sd }: FilmReading,
  band: Band,
  marks: FilmMarks,
  costPerFreedom: number,
): JudgedReading {
  const isSingle = id === 'shaftParallel' && (marks.shaftParallel?.length ?? 0) < 2;
  const own = GIVE_OR_TAKE * sd * (marks.isHandHeld ? HAND_HELD : 1);
  const plusMinus = isSingle ? Math.max(SINGLE_FRAME, own) : own;
  const no = (because: NoWord): JudgedReading => ({ value, plusMinus, because });
  if (costPerFreedom > POOR_FIT) return no('poor-fit');
  if (isSingle) return no(marks.arePictures ? 'single-picture' : 'single-frame');
  if (id === 'shaftParallel' && marks.fps !== undefined && marks.fps < SLOWEST_FPS) return no('slow-film');
  const verdict = judge(value, band) as Exclude<Verdict, 'missing'>;
  const isClear = judge(value - plusMinus, band) === verdict && judge(value + plusMinus, band) === verdict;
  return isClear ? { value, plusMinus, verdict } : no('close');
}

/** Farthest a point that stands still may seem to move between two frames, in standard deviations of both marks. */
const STILL_SPREADS = 4;

/** What stands still and was marked again at a checkpoint: how far it moved, px. */
export interface MovedCamera {
  readonly at: 'leadArmParallel' | 'shaftParallel';
  readonly mark: 'ball' | 'leadToe' | 'stick';
  readonly px: number;
}

/** Whether the camera moved after address: the ball, the lead toe or the stick is no longer where it was. */
export function findMovedCamera({ address, leadArmParallel, shaftParallel = [] }: FilmMarks): MovedCamera | undefined {
  const frames = [
    ...(leadArmParallel ? [['leadArmParallel', leadArmParallel] as const] : []),
    ...shaftParallel.map((frame) => ['shaftParallel', frame] as const),
  ];
  for (const [at, frame] of frames) {
    const pairs: readonly (readonly [MovedCamera['mark'], Pixel | undefined, Pixel | undefined])[] = [
      ['ball', address.ball, frame.ball],
      ['leadToe', address.leadToe, frame.leadToe],
      ['stick', frame.stickEnd && nearestOf(address.stick, frame.stickEnd), frame.stickEnd],
    ];
    for (const [mark, before, now] of pairs) {
      if (!before || !now) continue;
      const px = Math.hypot(now[0] - before[0], now[1] - before[1]);
      const spread = Math.hypot(before[2] ?? MARK_SD.tapped, now[2] ?? MARK_SD.tapped);
      if (px > STILL_SPREADS * spread) return { at, mark, px };
    }
  }
  return undefined;
}

/** Whether a film that was held in the hand shows, by something that stands still, that the camera did not move at this checkpoint. */
export const isProvenStill = ({ address }: FilmMarks, frame: FrameMarks): boolean =>
  Boolean((address.ball && frame.ball) || (address.leadToe && frame.leadToe) || (address.stick && frame.stickEnd));

/** The end of a stick that a mark means. */
const nearestOf = (stick: readonly [Pixel, Pixel] | undefined, [u, v]: Pixel): Pixel | undefined =>
  stick?.toSorted((a, b) => Math.hypot(a[0] - u, a[1] - v) - Math.hypot(b[0] - u, b[1] - v))[0];
