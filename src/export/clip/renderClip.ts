import { ClipPainter } from '../painting/clipPainter';
import type { ClipJob } from './clipJob';
import { ClipStage } from './clipStage';
import { KIND_WORDS, KINDS, pixelSize, rateOf, sizeFor, type Kind, type PixelSize } from './formats';
import { breathe, createEstimate, type Progress } from '../task/exportTask';
import { loadFonts, toPng, type Canvas } from '../picture/canvasPen';
import {
  drawStoryboard,
  frameCount,
  keyMoments,
  looksAlike,
  momentAt,
  type Moment,
  type Storyboard,
} from './storyboard';
import { findKind, openWriter, type WriterOf } from './writers';

/** A clip before it is encoded, frame by frame. Frame `i` shows the instant `i / fps`, independent of the clock. */
export interface Reel {
  readonly storyboard: Storyboard;
  readonly fps: number;
  readonly count: number;
  readonly canvas: Canvas;
  readonly paint: (frame: number) => void;
  readonly dispose: () => void;
}

/** Sets up scene and storyboard, on the page or in a worker. */
export async function openReel(job: ClipJob, size: PixelSize, fps: number): Promise<Reel> {
  await loadFonts();
  const storyboard = drawStoryboard(job.wish, job.takes, { hasFeel: job.feel !== '' });
  const set = new ClipStage(job.staging, job.takes);
  const painter = new ClipPainter(job, set, size);
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

/** A finished clip. */
export interface RenderedClip {
  readonly blob: Blob;
  readonly kind: Kind;
  readonly size: PixelSize;
  readonly fps: number;
  readonly seconds: number;
}

/** Callbacks of long work: `tell` gets the progress, `pass` throws to stop it. */
export interface Along {
  readonly tell: (progress: Progress) => void;
  readonly pass: () => void;
}

/** Renders and encodes a clip, frame by frame. If it throws, no partial file is left behind. */
export async function renderClip(job: ClipJob, along: Along): Promise<RenderedClip> {
  const { wish, mark } = job;
  const full = pixelSize(wish.shape, wish.size);
  const open = (kind: Kind): Promise<Reel> => openReel(job, sizeFor(kind, full), rateOf(kind, wish.fps));
  let reel = await open(wish.kind ?? 'mp4');
  try {
    reel.paint(0);
    const of = (kind: Kind): WriterOf => {
      const own = { size: sizeFor(kind, full), fps: rateOf(kind, wish.fps) };
      return { kind, canvas: reel.canvas, ...own, title: 'Slantwise', mark };
    };
    const kind = await findKind(wish.kind ? [wish.kind] : KINDS, of);
    along.pass();
    if (!kind) throw new Error(`This device cannot write ${KIND_WORDS[wish.kind!].label}. Choose another format.`);
    if (kind === 'gif' && wish.kind === null) {
      reel.dispose();
      reel = await open(kind);
    }
    const blob = await writeReel(reel, of(kind), along);
    return { blob, kind, size: sizeFor(kind, full), fps: reel.fps, seconds: reel.count / reel.fps };
  } finally {
    reel.dispose();
  }
}

/** Time between two progress reports, ms: more of them would only keep the page busy. */
const REPORT_MS = 120;

async function writeReel(reel: Reel, of: WriterOf, { tell, pass }: Along): Promise<Blob> {
  const { label } = KIND_WORDS[of.kind];
  const now = (): number => performance.now();
  const left = createEstimate(now);
  let told = -Infinity;
  const writer = await openWriter(of);
  try {
    for (let i = 0; i < reel.count; i++) {
      reel.paint(i);
      await writer.add();
      if (now() - told > REPORT_MS || i === reel.count - 1) {
        told = now();
        const share = (i + 1) / reel.count;
        tell({ doing: `Making ${label}: frame ${i + 1} of ${reel.count}`, share, secondsLeft: left(share) });
      }
      await breathe();
      pass();
    }
    return await writer.finish();
  } catch (error) {
    await writer.cancel().catch(() => {});
    throw error;
  }
}

/** One frame of each shot and each stop, for the storyboard. */
export interface Board {
  readonly seconds: number;
  readonly frames: readonly BoardFrame[];
  /** Evenly over the clip, to be gone through. */
  readonly strip: readonly BoardFrame[];
}
interface BoardFrame {
  readonly seconds: number;
  readonly picture: Blob;
}

/** From one picture of the strip to the next, s. */
const STRIP_S = 0.5;

/** Draws the storyboard of a clip, `times` the size of a draft. */
export async function sketch(job: ClipJob, { pass }: Along, times = 2): Promise<Board> {
  const { width, height } = pixelSize(job.wish.shape, 'draft');
  const { fps } = job.wish;
  const reel = await openReel(job, { width: width * times, height: height * times }, fps);
  try {
    const drawAll = async (moments: readonly number[]): Promise<BoardFrame[]> => {
      const drawn: BoardFrame[] = [];
      for (const seconds of moments) {
        reel.paint(Math.round(seconds * fps));
        drawn.push({ seconds, picture: await toPng(reel.canvas) });
        await breathe();
        pass();
      }
      return drawn;
    };
    const { seconds } = reel.storyboard;
    const even = Array.from({ length: Math.ceil(seconds / STRIP_S) }, (_, i) => i * STRIP_S);
    return { seconds, frames: await drawAll(keyMoments(reel.storyboard)), strip: await drawAll(even) };
  } finally {
    reel.dispose();
  }
}
