import { findKind, openWriter, type Writer, type WriterOf } from '../../../export/clip/writers';
import { fileName, KIND_WORDS, KINDS } from '../../../export';
import { saveFile } from '../../../record';
import { MADE } from '../../../words/film/over';
import { outlineAt } from './outlines';
import { filmStore, type FilmState } from '../filmStore';
import { checkpointAt, createOverPicture } from './overPicture';

const { getState: state, setState: set } = filmStore;

/** Frames a second of a clip, how long it stands still at a checkpoint, s, and how long a frame of a slow film is shown, s. */
const CLIP_FPS = 25;
const HOLD = 1.5;
const SLOW_FILM = { below: 100, shown: 0.12 };
/** Most frames of the film in a clip: beyond, something is wrong with the marks. */
const MOST = 600;
/** How often a frame is asked for again that another one overtook. */
const TRIES = 20;

/** The film's own picture of a frame, where it is to be in what is made. */
async function pictureOf({ video }: FilmState, frame: number, isBurntIn: boolean): Promise<ImageBitmap | undefined> {
  for (let k = 0; isBurntIn && k < TRIES; k++) {
    const picture = await video!.frame(frame);
    if (picture) return picture;
  }
  if (isBurntIn) throw new Error('The frame did not come.');
  return undefined;
}

/** Saves what is on screen as a PNG; the film's own picture is in it only if `isBurntIn`. No name is in the file, nor in its name. */
export function makeStill(isBurntIn: boolean): Promise<void> {
  return run('still', async (film) => {
    const over = createOverPicture(film);
    const picture = await pictureOf(film, film.frame, isBurntIn);
    over.draw(film.frame, film.outline, picture);
    picture?.close();
    const blob = await new Promise<Blob | null>((resolve) => over.canvas.toBlob(resolve, 'image/png'));
    if (!blob) throw new RangeError('There is no room for a picture of this size.');
    saveFile(`${fileName('over film')}.png`, blob, blob.type);
  });
}

/** The frames in which the figure is drawn, around both checkpoints. */
async function findRange(film: FilmState): Promise<readonly number[]> {
  const { sheet, notes, chosen, video } = film;
  const [arm, shaft] = [sheet.arm?.frame, sheet.shaft?.frame];
  if (arm === undefined || shaft === undefined) return [];
  const last = notes.impact ?? 2 * shaft - arm;
  const frames: number[] = [];
  for (let at = Math.max(0, 2 * arm - shaft); at <= Math.min(video!.info.frames - 1, last); at++) {
    if (frames.length < MOST && (await outlineAt(chosen, at))) frames.push(at);
  }
  return frames;
}

/** Saves the swing between the checkpoints as a clip, slowed, with a stop at either. */
export function makeClip(isBurntIn: boolean): Promise<void> {
  return run('clip', async (film) => {
    const frames = await findRange(film);
    if (frames.length === 0) throw new Error('Nothing is marked to draw.');
    const over = createOverPicture(film);
    const of = (kind: WriterOf['kind']): WriterOf => ({
      kind,
      canvas: over.canvas,
      size: over,
      fps: CLIP_FPS,
      title: 'Slantwise',
      mark: '',
    });
    const kind = await findKind(KINDS, of);
    if (kind === undefined) throw new Error('This browser encodes no film.');
    const fps = film.notes.fps ?? Infinity;
    const shown = fps < SLOW_FILM.below ? Math.round(SLOW_FILM.shown * CLIP_FPS) : 1;
    let writer: Writer | undefined;
    try {
      writer = await openWriter(of(kind));
      for (const [k, frame] of frames.entries()) {
        if (state().making?.isStopped || state().video !== film.video) throw new Stopped();
        const picture = await pictureOf(film, frame, isBurntIn);
        over.draw(frame, await outlineAt(film.chosen, frame), picture);
        picture?.close();
        await writer.add(checkpointAt(film, frame) ? Math.round(HOLD * CLIP_FPS) : shown);
        set(({ making }) => ({ making: making && { ...making, share: (k + 1) / frames.length } }));
      }
      const blob = await writer.finish();
      writer = undefined;
      saveFile(`${fileName('over film')}.${KIND_WORDS[kind].extension}`, blob, blob.type);
    } finally {
      await writer?.cancel().catch(() => {});
    }
  });
}

/** The coach stopped it, or closed the film. */
class Stopped extends Error {}

/** Stops the clip that is being made. */
export const stopMaking = (): void => set(({ making }) => ({ making: making && { ...making, isStopped: true } }));

async function run(what: 'still' | 'clip', work: (film: FilmState) => Promise<void>): Promise<void> {
  const film = state();
  if (film.making || !film.video) return;
  set({ making: { what, share: 0 }, made: undefined });
  let made: string = MADE[what];
  try {
    await work(film);
  } catch (error) {
    made = error instanceof Stopped ? MADE.stopped : MADE.failed;
  }
  if (state().video === film.video) set({ making: undefined, made });
}
