import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { K } from '../../model/keys';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import type { ShownSwing } from '../task/exportSnapshot';

export type Arrangement = 'one' | 'sideBySide' | 'oneAfterOther' | 'ghosted';
export type CameraId = 'free' | 'downTheLine' | 'faceOn' | 'overhead' | 'orbit';

/** What a clip shows. */
export interface Film {
  readonly arrangement: Arrangement;
  /** Camera of the swing at its own speed; null leaves the shot out. */
  readonly wholeSwing: CameraId | null;
  /** Camera of the slow downswing that stops at the checkpoints; null leaves slow motion and stops out. */
  readonly slowMotion: CameraId | null;
  readonly titleCard: boolean;
  readonly endCard: boolean;
  /** Nothing fades, grows or glides: every change is a cut. For those who get sick of moving pictures. */
  readonly cuts: boolean;
}

/**
 * What a shot shows: a card; swings at their own speed; swings on the way to a checkpoint; standing still there with the drawing on the
 * body; what the second swing does otherwise; the first becoming the second; what to feel.
 */
type ShotKind = 'title' | 'whole' | 'slow' | 'stop' | 'change' | 'morph' | 'feel' | 'end';

/** One shot: a card, or swings seen by one camera. Each swing stands, goes evenly from one time to another (reference s), and stands again. */
export interface Shot {
  readonly kind: ShotKind;
  readonly camera: CameraId;
  /** Which takes are in the picture, in the order in which they stand side by side. */
  readonly takes: readonly number[];
  /** Take that is drawn over the first as a second body. */
  readonly second: number | null;
  /** The checkpoint it is about. */
  readonly checkpoint: CheckpointId | null;
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** How long it stands, goes and stands again, s. */
  readonly legs: readonly [number, number, number];
  readonly seconds: number;
  /** Which run of a film that shows one swing after the other: 1 or 2. */
  readonly run: 1 | 2 | null;
}

export interface Storyboard {
  readonly shots: readonly Shot[];
  readonly seconds: number;
  readonly cuts: boolean;
}

/** What one frame shows. */
export interface Moment {
  readonly shot: Shot;
  /** How far the shot has gone, 0 to 1. */
  readonly share: number;
  /** Reference time of each take in the picture, s. */
  readonly times: readonly number[];
  /** How much of the drawing on the body is there, 0 to 1 each: its line, its pattern, its number. */
  readonly line: number;
  readonly hatch: number;
  readonly number: number;
  /** How far the second body has faded in, 0 to 1, and how far the first has become the second. */
  readonly fade: number;
  readonly mix: number;
  /** How far the camera has come to the checkpoint, 0 to 1, eased. */
  readonly travel: number;
}

/** How long everything lasts, s. */
const LASTS = {
  title: 2.2,
  still: 0.4,
  finish: 0.75,
  stop: 2.6,
  /** A stop at a checkpoint whose drawing is known by then. */
  again: 1.7,
  change: 2.6,
  morph: 1.2,
  held: 1.4,
  feel: 3,
  end: 3.4,
} as const;
/** How the drawing comes up at a stop: s each, one after the other. */
const REVEAL = { line: 0.3, hatch: 0.3, number: 0.2 } as const;
const FADE_S = 0.4;
/** Slow motion: the clip takes this many times as long as the player. */
export const SLOW = 10;

/** What else a clip is made of, besides its swings. */
export interface Content {
  readonly hasFeel: boolean;
}

/** The shots of a film of one or two takes, and how long they last. */
export function drawStoryboard(film: Film, takes: readonly ShownSwing[], { hasFeel }: Content): Storyboard {
  const shots: Shot[] = [];
  const add = (shot: Partial<Shot> & Pick<Shot, 'kind' | 'legs'>): void => {
    const at = { camera: 'free', takes: [0], second: null, checkpoint: null, from: [], to: [], run: null } as const;
    shots.push({ ...at, ...shot, seconds: shot.legs.reduce((sum, leg) => sum + leg, 0) });
  };
  const isPair = takes.length > 1 && film.arrangement !== 'one';
  const both = film.arrangement === 'ghosted' && isPair;
  if (film.titleCard) {
    const t = takes[0].swing.curves.times[K.address];
    add({ kind: 'title', legs: [LASTS.title, 0, 0], from: [t], to: [t] });
  }
  for (const [i, set] of runsOf(film, isPair).entries()) {
    const run = film.arrangement === 'oneAfterOther' && isPair ? ((i + 1) as 1 | 2) : null;
    const shown = { takes: set, run };
    // Where nothing else compares the two, the second body goes along.
    if (film.wholeSwing)
      add({
        kind: 'whole',
        ...shown,
        ...wholeOf(
          set.map((k) => takes[k]),
          film.wholeSwing,
        ),
        second: both && !film.slowMotion ? 1 : null,
      });
    if (film.slowMotion) addStops(set, film.slowMotion, shown, LASTS.stop);
  }
  if (both && film.slowMotion) addChange(film.slowMotion);
  if (hasFeel && isPair) {
    const last = takes.length - 1;
    const { from, to, seconds } = ownSpeed([takes[last]]);
    const still = Math.max(0, (LASTS.feel - seconds) / 2);
    add({ kind: 'feel', takes: [last], from, to, legs: [still, seconds, still] });
  }
  if (film.endCard) add({ kind: 'end', takes: [], legs: [LASTS.end, 0, 0] });
  return { shots, seconds: shots.reduce((sum, { seconds }) => sum + seconds, 0), cuts: film.cuts };

  /** Takes side by side reach their own checkpoints together. */
  function addStops(set: readonly number[], camera: CameraId, shown: Partial<Shot>, stop: number): void {
    let from: readonly number[] = set.map(() => 0);
    for (const id of CHECKPOINT_IDS) {
      const to = timesAt(set, id);
      if (!to) continue;
      addStop(camera, shown, id, from, to, stop);
      from = to;
    }
  }

  function addStop(
    camera: CameraId,
    shown: Partial<Shot>,
    id: CheckpointId,
    from: readonly number[],
    to: readonly number[],
    stop: number,
  ): void {
    const { tempo } = takes[(shown.takes ?? [0])[0]].swing;
    const goes = Math.abs(to[0] - from[0]) * tempo * SLOW;
    add({ kind: 'slow', camera, ...shown, checkpoint: id, from, to, legs: [0, goes, 0] });
    add({ kind: 'stop', camera: 'downTheLine', ...shown, checkpoint: id, from: to, to, legs: [stop, 0, 0] });
  }

  /** Where both come to a checkpoint: the second body, the first becoming the second, and the second going on. */
  function addChange(camera: CameraId): void {
    const [id, next] = CHECKPOINT_IDS.filter((one) => timesAt([0, 1], one));
    if (!id) return;
    const [now, after] = timesAt([0, 1], id)!;
    const at = { camera: 'downTheLine', checkpoint: id, second: 1 } as const;
    add({ kind: 'change', ...at, from: [now], to: [now], legs: [LASTS.change, 0, 0] });
    const goes = film.cuts ? 0 : LASTS.morph;
    add({ kind: 'morph', ...at, from: [now], to: [now], legs: [0, goes, LASTS.held] });
    if (next) addStop(camera, { takes: [1], second: 0 }, next, [after], timesAt([1], next)!, LASTS.again);
  }

  function timesAt(set: readonly number[], id: CheckpointId): readonly number[] | undefined {
    const reached = set.map((i) => takes[i].checkpoints[id]);
    return reached.every(isReached) ? reached.map(({ t }) => t) : undefined;
  }
}

function runsOf({ arrangement }: Film, isPair: boolean): readonly (readonly number[])[] {
  if (!isPair || arrangement === 'ghosted') return [[0]];
  return arrangement === 'sideBySide' ? [[0, 1]] : [[0], [1]];
}

/** From address to the finish, s of the player's own time. */
function ownSpeed(takes: readonly ShownSwing[]): { from: number[]; to: number[]; seconds: number } {
  const from = takes.map(({ swing }) => swing.curves.times[K.address]);
  const to = takes.map(({ swing }) => swing.curves.times[K.finish]);
  return { from, to, seconds: (to[0] - from[0]) * takes[0].swing.tempo };
}

function wholeOf(takes: readonly ShownSwing[], camera: CameraId): Pick<Shot, 'camera' | 'from' | 'to' | 'legs'> {
  const { from, to, seconds } = ownSpeed(takes);
  return { camera, from, to, legs: [LASTS.still, seconds, LASTS.finish] };
}

/** Frames of a storyboard: frame `i` is the instant `i / fps`. */
export const frameCount = ({ seconds }: Storyboard, fps: number): number => Math.max(1, Math.round(seconds * fps));

/** What is to be seen `seconds` after the start. */
export function momentAt({ shots, cuts }: Storyboard, seconds: number): Moment {
  let left = Math.max(0, seconds);
  for (const [i, shot] of shots.entries()) {
    // A frame that falls on a cut belongs to the shot that begins there, whatever rounding made of the sum.
    if (left > shot.seconds - 1e-9 && i < shots.length - 1) {
      left -= shot.seconds;
      continue;
    }
    return momentIn(shot, Math.min(Math.max(0, left), shot.seconds), cuts);
  }
  throw new Error('A storyboard needs at least one shot.');
}

const part = (gone: number, of: number): number => (of > 0 ? Math.min(1, Math.max(0, gone / of)) : 1);
const ease = (share: number): number => share * share * (3 - 2 * share);

function momentIn(shot: Shot, gone: number, cuts: boolean): Moment {
  const { kind, from, to, legs, seconds } = shot;
  const goes = gone < legs[0] ? 0 : part(gone - legs[0], legs[1]);
  const times = from.map((start, k) => start + (to[k] - start) * goes);
  const whole = cuts ? 1 : undefined;
  const isNew = kind === 'stop' && shot.second === null;
  return {
    shot,
    share: seconds > 0 ? gone / seconds : 1,
    times,
    line: isNew ? (whole ?? part(gone, REVEAL.line)) : 1,
    hatch: isNew ? (whole ?? part(gone - REVEAL.line, REVEAL.hatch)) : 1,
    number: isNew ? (whole ?? part(gone - REVEAL.line - REVEAL.hatch, REVEAL.number)) : 1,
    fade: kind === 'change' || (kind === 'stop' && !isNew) ? (whole ?? part(gone, FADE_S)) : 1,
    mix: kind === 'morph' ? ease(goes) : 0,
    travel: kind === 'slow' ? (cuts ? 0 : ease(goes)) : 1,
  };
}

/** Whether two moments give the same picture: the same shot, at the same times, with as much of the drawing there. */
export const looksAlike = (a: Moment, b: Moment): boolean =>
  a.shot === b.shot &&
  (a.shot.camera !== 'orbit' || a.share === b.share || a.times.length === 0) &&
  a.line === b.line &&
  a.hatch === b.hatch &&
  a.number === b.number &&
  a.fade === b.fade &&
  a.mix === b.mix &&
  a.travel === b.travel &&
  a.times.every((t, i) => t === b.times[i]);

/** How far into a shot it shows what it is about, s: a whole swing in the downswing, everything else once it stands. */
const tellingAt = ({ kind, seconds, legs }: Shot): number =>
  kind === 'whole' || kind === 'feel' ? legs[0] + legs[1] * 0.62 : seconds * 0.9;

/** An instant of each shot that shows what it is about, s. What only leads to a checkpoint is left out. */
export function keyMoments({ shots }: Storyboard): readonly number[] {
  const moments: number[] = [];
  let start = 0;
  for (const shot of shots) {
    if (shot.kind !== 'slow') moments.push(start + tellingAt(shot));
    start += shot.seconds;
  }
  return moments;
}
