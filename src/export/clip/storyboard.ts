import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { K } from '../../model/keys';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import type { ShownSwing } from '../task/exportSnapshot';
import { impactOf } from '../../reading/swing';

export type Arrangement = 'one' | 'sideBySide' | 'oneAfterOther' | 'ghosted';
export type CameraId = 'downTheLine' | 'faceOn' | 'overhead' | 'orbit';

/** What a clip shows. */
export interface Film {
  readonly arrangement: Arrangement;
  /** Camera of the swing at its own speed; null leaves the shot out. */
  readonly wholeSwing: CameraId | null;
  /** Camera of the slow downswing that stops at the checkpoints; null leaves the shot out. */
  readonly slowMotion: CameraId | null;
  readonly titleCard: boolean;
  readonly endCard: boolean;
}

/** Part of a shot: each swing goes evenly from one of its times to another (reference s), or stands still where both are the same. */
interface Leg {
  readonly seconds: number;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly plate: CheckpointId | null;
  readonly isFrozen: boolean;
}

/** One shot: a card, or swings seen by one camera. */
interface Shot {
  readonly kind: 'title' | 'whole' | 'slow' | 'end';
  readonly camera: CameraId;
  /** Which takes are in the picture, in the order in which they stand side by side. */
  readonly takes: readonly number[];
  readonly legs: readonly Leg[];
  readonly seconds: number;
}

export interface Storyboard {
  readonly shots: readonly Shot[];
  readonly seconds: number;
}

/** What one frame shows. */
export interface Moment {
  readonly shot: Shot;
  /** How far the shot has gone, 0 to 1. */
  readonly share: number;
  /** Reference time of each take in the picture, s. */
  readonly times: readonly number[];
  /** The plate drawn in: the last checkpoint that was passed. */
  readonly plate: CheckpointId | null;
  /** Whether the picture stands still at that checkpoint. */
  readonly isFrozen: boolean;
}

const CARD_S = 2;
const FREEZE_S = 1.6;
/** Slow motion: the clip takes this many times as long as the player. */
export const SLOW = 10;
/** How far past impact slow motion goes, share of the way to the exit. */
const PAST_IMPACT = 0.5;

/** The shots of a film of one or two takes, and how long they last, s. */
export function drawStoryboard(film: Film, takes: readonly ShownSwing[]): Storyboard {
  const isPair = takes.length > 1;
  const together = takes.map((_, i) => i);
  const sets =
    film.arrangement === 'oneAfterOther'
      ? together.map((i) => [i])
      : film.arrangement === 'sideBySide'
        ? [together]
        : [[0]];
  const shots: Shot[] = [];
  const add = (kind: Shot['kind'], camera: CameraId, shown: readonly number[], legs: readonly Leg[]): void => {
    shots.push({ kind, camera, takes: shown, legs, seconds: legs.reduce((sum, leg) => sum + leg.seconds, 0) });
  };
  const card: Leg = { seconds: CARD_S, from: [], to: [], plate: null, isFrozen: true };
  if (film.titleCard) add('title', 'downTheLine', [], [card]);
  for (const set of isPair ? sets : [[0]]) {
    const swings = set.map((i) => takes[i]);
    if (film.wholeSwing) add('whole', film.wholeSwing, set, [wholeLeg(swings)]);
    if (film.slowMotion) add('slow', film.slowMotion, set, slowLegs(swings));
  }
  if (film.endCard) add('end', 'downTheLine', [], [{ ...card, seconds: CARD_S * 1.5 }]);
  return { shots, seconds: shots.reduce((sum, { seconds }) => sum + seconds, 0) };
}

function wholeLeg(takes: readonly ShownSwing[]): Leg {
  const from = takes.map(({ swing }) => swing.curves.times[K.address]);
  const to = takes.map(({ swing }) => swing.curves.times[K.finish]);
  return { seconds: (to[0] - from[0]) * takes[0].swing.tempo, from, to, plate: null, isFrozen: false };
}

/** From the top through both checkpoints to just past impact; takes side by side reach their own checkpoints together. */
function slowLegs(takes: readonly ShownSwing[]): Leg[] {
  const legs: Leg[] = [];
  let from = takes.map(() => 0);
  let plate: CheckpointId | null = null;
  const go = (to: readonly number[]): void => {
    const seconds = (to[0] - from[0]) * takes[0].swing.tempo * SLOW;
    legs.push({ seconds, from, to, plate, isFrozen: false });
    from = [...to];
  };
  for (const id of CHECKPOINT_IDS) {
    const reached = takes.map(({ checkpoints }) => checkpoints[id]);
    if (!reached.every(isReached)) continue;
    go(reached.map(({ t }) => t));
    plate = id;
    legs.push({ seconds: FREEZE_S, from, to: from, plate, isFrozen: true });
  }
  go(
    takes.map(({ swing }) => {
      const impact = impactOf(swing);
      return impact + PAST_IMPACT * (swing.curves.times[K.exit] - impact);
    }),
  );
  return legs;
}

/** Frames of a storyboard: frame `i` is the instant `i / fps`. */
export const frameCount = ({ seconds }: Storyboard, fps: number): number => Math.max(1, Math.round(seconds * fps));

/** What is to be seen `seconds` after the start. */
export function momentAt({ shots }: Storyboard, seconds: number): Moment {
  let left = Math.max(0, seconds);
  for (const [i, shot] of shots.entries()) {
    if (left >= shot.seconds && i < shots.length - 1) {
      left -= shot.seconds;
      continue;
    }
    return momentIn(shot, Math.min(left, shot.seconds));
  }
  throw new Error('A storyboard needs at least one shot.');
}

function momentIn(shot: Shot, seconds: number): Moment {
  let left = seconds;
  for (const [i, { seconds: length, from, to, plate, isFrozen }] of shot.legs.entries()) {
    if (left >= length && i < shot.legs.length - 1) {
      left -= length;
      continue;
    }
    const share = length > 0 ? Math.min(1, left / length) : 1;
    const times = from.map((start, k) => start + (to[k] - start) * share);
    return { shot, share: seconds / shot.seconds, times, plate, isFrozen };
  }
  throw new Error('A shot needs at least one leg.');
}

/** Whether two moments give the same picture: the same shot at the same times, from a camera that stands still. */
export const looksAlike = (a: Moment, b: Moment): boolean =>
  a.shot === b.shot &&
  (a.shot.camera !== 'orbit' || a.share === b.share || a.times.length === 0) &&
  a.plate === b.plate &&
  a.isFrozen === b.isFrozen &&
  a.times.every((t, i) => t === b.times[i]);

/** An instant of each shot that shows what it is about, s: the middle of a card or a whole swing, the end of each stop. */
export function keyMoments({ shots }: Storyboard): readonly number[] {
  const moments: number[] = [];
  let start = 0;
  for (const { kind, legs, seconds } of shots) {
    let at = start;
    for (const leg of legs) {
      at += leg.seconds;
      if (kind === 'slow' && leg.isFrozen) moments.push(at - leg.seconds / 2);
    }
    if (kind !== 'slow' || moments.length === 0) moments.push(start + seconds * 0.6);
    start += seconds;
  }
  return moments;
}
