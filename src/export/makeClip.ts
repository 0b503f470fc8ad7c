import type { CheckpointId } from '../reading/checkpoints';
import { ClipPainter } from './clipPainter';
import { layOut } from './clipLayout';
import { codeOf } from './code';
import { toMarked } from './embedded';
import { FilmSet } from './filmSet';
import {
  KIND_WORDS,
  KINDS,
  pixelSize,
  rateOf,
  sizeFor,
  type FrameRate,
  type Kind,
  type PixelSize,
  type Shape,
  type Size,
} from './formats';
import { toAddress } from './link';
import { breathe, createEstimate, fileName, Stopped, type Companion, type Made } from './making';
import { loadFonts } from './pen';
import type { PlatePixels } from './plateCard';
import { drawPlate } from './plateImage';
import { toPixels } from './raster';
import {
  drawStoryboard,
  frameCount,
  looksAlike,
  momentAt,
  type Film,
  type Moment,
  type Storyboard,
} from './storyboard';
import { sayChanges, type Subject, type Take } from './takes';
import { findKind, openWriter, type WriterOf } from './writers';

/** What to make, and of what kind; without a kind the best that this device can write. */
export interface ClipWish extends Film {
  readonly shape: Shape;
  readonly size: Size;
  readonly fps: FrameRate;
  readonly kind: Kind | null;
  /** Of the player; empty: left out. */
  readonly name: string;
}

/** A clip before it is written: its frames, one after the other. Frame `i` shows the instant `i / fps`, whatever the clock says. */
export interface Reel {
  readonly storyboard: Storyboard;
  readonly fps: number;
  readonly count: number;
  readonly canvas: HTMLCanvasElement;
  paint(frame: number): void;
  dispose(): void;
}

const IDS: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];

export const takesOf = ({ now, after }: Subject, { arrangement }: Film): readonly Take[] =>
  arrangement === 'sideBySide' || arrangement === 'oneAfterOther' ? [now, after] : [now];

/** Sets everything up for filming. */
export async function openReel(
  subject: Subject,
  wish: ClipWish,
  size: PixelSize,
  fps: number,
  who: string,
): Promise<Reel> {
  const takes = takesOf(subject, wish);
  const storyboard = drawStoryboard(wish, takes);
  await loadFonts();
  const plates = wish.slowMotion ? await platesOf(subject, takes, wish, size) : [];
  const ghost = wish.arrangement === 'ghosted' ? subject.after : undefined;
  const set = new FilmSet(subject, takes, ghost);
  const { document } = subject;
  const painter = new ClipPainter({
    subject,
    takes,
    ghost,
    set,
    size,
    plates,
    squares: codeOf(toAddress(document, location.href)),
    who,
    name: wish.name,
    changes: wish.arrangement === 'one' ? [] : sayChanges(subject),
  });
  let stands: Moment | undefined;
  return {
    storyboard,
    fps,
    count: frameCount(storyboard, fps),
    canvas: painter.canvas,
    paint: (frame) => {
      const moment = momentAt(storyboard, frame / fps);
      // While nothing moves the canvas holds the next frame already.
      if (!stands || !looksAlike(moment, stands)) painter.paint(moment);
      stands = moment;
    },
    dispose: () => set.dispose(),
  };
}

async function platesOf(
  subject: Subject,
  takes: readonly Take[],
  { arrangement }: Film,
  size: PixelSize,
): Promise<Readonly<Record<CheckpointId, PlatePixels>>[]> {
  const { cells } = layOut(size, arrangement === 'sideBySide' ? takes.length : 1, true);
  const room = cells[0].plate!;
  const scale = Math.min(room.width / 320, room.height / 292);
  const width = Math.max(160, Math.round(320 * scale));
  const draw = async (take: Take, id: CheckpointId): Promise<[CheckpointId, PlatePixels]> => {
    const plate = drawPlate(subject, take, id, subject.document.board);
    const height = Math.round((width * 292) / 320);
    return [id, { ...plate, pixels: plate.svg === undefined ? undefined : await toPixels(plate.svg, width, height) }];
  };
  return Promise.all(
    takes.map(async (take) => {
      const drawn = await Promise.all(IDS.map((id) => draw(take, id)));
      return Object.fromEntries(drawn) as Record<CheckpointId, PlatePixels>;
    }),
  );
}

/** Makes a clip, frame by frame. Throws `Stopped` when it was stopped; nothing half-written is left behind. */
export async function makeClip(subject: Subject, wish: ClipWish, who: string, companion: Companion): Promise<Made> {
  const { signal, tell } = companion;
  const stopAtOnce = (): void => {
    if (signal.aborted) throw new Stopped();
  };
  tell({ doing: 'Getting ready', share: 0, secondsLeft: undefined });
  await breathe();
  const full = pixelSize(wish.shape, wish.size);
  const planned = wish.kind ? sizeFor(wish.kind, full) : full;
  let reel = await openReel(subject, wish, planned, wish.kind ? rateOf(wish.kind, wish.fps) : wish.fps, who);
  try {
    stopAtOnce();
    reel.paint(0);
    const of = (kind: Kind): WriterOf => ({
      kind,
      canvas: reel.canvas,
      size: sizeFor(kind, full),
      fps: rateOf(kind, wish.fps),
      title: 'Slantwise',
      mark: toMarked(subject.document),
    });
    const kind = await findKind(wish.kind ? [wish.kind] : KINDS, of);
    stopAtOnce();
    if (!kind)
      throw new Error(`This device cannot write ${KIND_WORDS[wish.kind ?? 'gif'].label}. Choose another format.`);
    if (kind === 'gif' && wish.kind === null) {
      reel.dispose();
      reel = await openReel(subject, wish, sizeFor(kind, full), rateOf(kind, wish.fps), who);
    }
    const blob = await film(reel, of(kind), companion, stopAtOnce);
    const { width, height } = sizeFor(kind, full);
    const { label, extension } = KIND_WORDS[kind];
    const seconds = (reel.count / reel.fps).toFixed(1);
    return {
      name: `${fileName('clip', wish.arrangement, wish.shape.replace(':', 'x'))}.${extension}`,
      format: `${label}, ${width} × ${height}, ${reel.fps} frames a second, ${seconds} s`,
      blob,
    };
  } finally {
    reel.dispose();
  }
}

async function film(reel: Reel, of: WriterOf, { tell }: Companion, stopAtOnce: () => void): Promise<Blob> {
  const { label } = KIND_WORDS[of.kind];
  const left = createEstimate(() => performance.now());
  const writer = await openWriter(of);
  try {
    for (let i = 0; i < reel.count; i++) {
      reel.paint(i);
      await writer.add();
      const share = (i + 1) / reel.count;
      tell({ doing: `Making ${label}: frame ${i + 1} of ${reel.count}`, share, secondsLeft: left(share) });
      await breathe();
      stopAtOnce();
    }
    return await writer.finish();
  } catch (error) {
    await writer.cancel().catch(() => {});
    throw error;
  }
}
