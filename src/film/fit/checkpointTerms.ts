import { AT, createPose } from '../../model/chain';
import { LANDMARK_SD, MARK_SD, type BodyMarks, type FilmMarks, type FrameMarks, type Pixel } from '../marks';
import { toImage } from '../pinhole';
import type { Expected, Player } from './player';
import type { TermList } from './termList';
import { FREE_JOINTS, GUESSED_FPS, PICKED_ARM_SD, SECOND_JOINTS, TIME_SD, U } from './unknowns';

/** Times of the marked frames, s of the reference: lead arm parallel, the first and the next frame of shaft parallel. */
export interface FrameTimes {
  arm(x: Float64Array): number;
  shaft(x: Float64Array): number;
  next(x: Float64Array): number;
}

/** Where a mark of the body stands in a pose; the middle of the hips is the pelvis, the root of the neck the middle of the shoulders. */
const BODY: readonly (readonly [keyof BodyMarks, number, 'joint' | 'trunk'])[] = [
  ['trailShoulder', AT.trailShoulder, 'joint'],
  ['trailElbow', AT.trailElbow, 'joint'],
  ['leadShoulder', AT.leadShoulder, 'joint'],
  ['leadElbow', AT.leadElbow, 'joint'],
  ['midHip', AT.pelvis, 'trunk'],
  ['neck', AT.midShoulder, 'trunk'],
];
const SLEEVED: ReadonlySet<string> = new Set(['trailShoulder', 'trailElbow']);

/** When the marked frames were taken. Without a frame rate the two at shaft parallel are an unknown time apart. */
export function createFrameTimes({ armTime, shaftTime }: Expected, { shaftParallel = [], fps }: FilmMarks): FrameTimes {
  const [first, second] = shaftParallel;
  const step = second ? (second.frame - first.frame) / (fps ?? GUESSED_FPS) : 0;
  const spread = fps === undefined ? TIME_SD.unknown : TIME_SD.known;
  const shaft = (x: Float64Array): number => shaftTime + TIME_SD.checkpoint * x[U.shaftTime];
  return {
    arm: (x) => armTime + TIME_SD.checkpoint * x[U.armTime],
    shaft,
    next: (x) => shaft(x) + step * Math.exp(spread * x[U.frameTime]),
  };
}

/**
 * Adds what the frames at the checkpoints ask. A frame's first term puts the player into its pose, the others look at that. Returns the
 * unknowns that they answer to.
 */
export function addCheckpointTerms(
  list: TermList,
  sight: Float64Array,
  player: Player,
  expected: Expected,
  marks: FilmMarks,
): readonly number[] {
  const { size, leadArmParallel: arm, shaftParallel = [] } = marks;
  const used: number[] = [];
  const pose = createPose();
  const times = createFrameTimes(expected, marks);
  const see = (at: number): void => toImage(sight, size, pose[at], pose[at + 1], pose[at + 2], list.image);
  const body = (frame: FrameMarks): void => {
    for (const [name, at, kind] of BODY) {
      const mark = frame[name];
      const cover = frame.isSleeved && SLEEVED.has(name) ? 'sleeved' : kind;
      if (mark) list.point(name, mark, LANDMARK_SD[cover], () => see(at));
    }
  };
  if (arm || shaftParallel.length > 0) used.push(...FREE_JOINTS.map((_, i) => U.joints + i));
  if (arm) {
    used.push(U.armTime);
    list.add('frame', 1, (x, out, at) => {
      player.pose('arm', times.arm(x), pose);
      out[at] = (Math.asin(pose[AT.armDirection + 1]) - expected.armAngle) / PICKED_ARM_SD;
    });
    addShaftTerms(list, arm, see);
    body(arm);
  }
  if (shaftParallel.length > 0) used.push(U.shaftTime, ...FREE_JOINTS.map((_, i) => SECOND_JOINTS + i));
  if (shaftParallel.length > 1) used.push(U.frameTime);
  shaftParallel.slice(0, 2).forEach((frame, k) => {
    list.point('hands', frame.hands, LANDMARK_SD.hands, (x) => {
      player.pose('shaft', k === 0 ? times.shaft(x) : times.next(x), pose);
      see(AT.leadGrip);
    });
    list.point('clubHead', frame.clubHead, LANDMARK_SD.hands, () => see(AT.head), MARK_SD.moving);
    body(frame);
  });
  return used;
}

/** The shaft seen from the side: a line that is sure, and along it hands and head that are less so. */
function addShaftTerms(list: TermList, { shaft, hands, clubHead }: FrameMarks, see: (at: number) => void): void {
  const { image } = list;
  /** How far a mark lies across the shaft and, from `share` of it on, along it, px. */
  const off = ([u, v]: Pixel, share: number, isAlong: boolean): number => {
    see(AT.leadGrip);
    const [handsU, handsV] = image;
    see(AT.head);
    const du = image[0] - handsU;
    const dv = image[1] - handsV;
    const reach = Math.hypot(du, dv);
    return isAlong
      ? ((u - handsU) * du + (v - handsV) * dv) / reach - share * reach
      : ((u - handsU) * dv - (v - handsV) * du) / reach;
  };
  for (const mark of shaft ?? [hands, clubHead]) {
    const sd = mark[2] ?? (shaft ? MARK_SD.refined : MARK_SD.tapped);
    list.add('shaft', 1, (_, out, at) => (out[at] = off(mark, 0, false) / sd));
  }
  const along = (name: string, mark: Pixel, share: number, usual: number): void => {
    const sd = list.sdOf(mark, LANDMARK_SD.hands, usual);
    list.add(name, 1, (_, out, at) => (out[at] = off(mark, share, true) / sd));
  };
  along('hands', hands, 0, MARK_SD.tapped);
  along('clubHead', clubHead, 1, MARK_SD.moving);
}
