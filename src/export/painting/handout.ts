import { CHECKPOINT_IDS, type CheckpointId } from '../../reading/checkpointTable';
import { isReached } from '../../reading/checkpoints';
import type { Bands } from '../../reading/verdicts';
import { CHECKPOINT_NAMES, ILLUSTRATION, sayCheckpoint, type Units } from '../../words';
import type { OwnLook } from '../clip/clipJob';
import { ClipStage, type Staging } from '../clip/clipStage';
import type { PixelSize } from '../clip/formats';
import {
  book,
  createCanvas,
  draft,
  loadFonts,
  penOn,
  toPng,
  type Inks,
  type Pen,
  type Rect,
} from '../picture/canvasPen';
import { drawOwnMark } from '../picture/titleCards';
import { drawWordsOf } from '../picture/headline';
import type { Frame } from '../../plates/plate/frame';
import { drawPaper } from '../stop/drawStop';
import { StopPainter } from '../stop/stopPainter';
import type { ShapeSizes } from '../stop/sizes';
import type { ShownSwing } from '../task/exportSnapshot';

export type HandoutShape = '4:5' | '16:9';

/** What a still with numbers is made from, as plain data. */
export interface HandoutJob {
  readonly shape: HandoutShape;
  readonly staging: Staging;
  readonly take: ShownSwing;
  readonly bands: Bands;
  readonly units: Pick<Units, 'length'>;
  readonly inks: Inks;
  readonly own: OwnLook;
  /** Over it all: what the swing does, and why. */
  readonly sentence: string;
  /** The same in two sentences, where there is room. */
  readonly longer: string;
  /** "Slantwise, 7-iron, 1.78 m" */
  readonly who: string;
}

/** Where everything stands on a sheet, px. */
interface SheetLayout {
  readonly size: PixelSize;
  readonly sentence: Rect & { readonly px: number };
  readonly longer: (Rect & { readonly px: number }) | null;
  readonly cells: Readonly<Record<CheckpointId, Rect>>;
  /** The ink line over the source. */
  readonly foot: number;
  readonly sizes: ShapeSizes;
}

const SOURCE = { px: 30, base: 46 } as const;

const sizesOf = (
  left: number,
  top: number,
  width: number,
  scale: number,
  arm: { readonly x: number; readonly y: number },
  shaft: { readonly x: number; readonly y: number },
): ShapeSizes => ({
  source: { px: SOURCE.px, top },
  left,
  top,
  label: 33,
  word: { leadArmParallel: 60, shaftParallel: 60 },
  sentence: 32,
  title: 0,
  feel: 0,
  code: 0,
  column: width - left - 12,
  isBeside: { title: false, feel: false },
  stop: {
    leadArmParallel: { number: 108, scale, pin: arm },
    shaftParallel: { number: 96, scale, pin: shaft },
  },
  free: { top: 0, bottom: 0, right: 0, below: 1 },
});

const LAYOUTS: Readonly<Record<HandoutShape, SheetLayout>> = {
  '4:5': {
    size: { width: 1080, height: 1350 },
    sentence: { x: 48, y: 34, width: 984, height: 160, px: 66 },
    longer: null,
    cells: {
      leadArmParallel: { x: 0, y: 200, width: 540, height: 1071 },
      shaftParallel: { x: 540, y: 200, width: 540, height: 1071 },
    },
    foot: 1271,
    sizes: sizesOf(48, 10, 540, 610, { x: 280, y: 525 }, { x: 281, y: 804 }),
  },
  '16:9': {
    size: { width: 1600, height: 900 },
    sentence: { x: 57, y: 44, width: 400, height: 400, px: 64 },
    longer: { x: 57, y: 470, width: 400, height: 340, px: 36 },
    cells: {
      leadArmParallel: { x: 470, y: 0, width: 565, height: 838 },
      shaftParallel: { x: 1035, y: 0, width: 565, height: 838 },
    },
    foot: 838,
    sizes: sizesOf(20, 26, 565, 590, { x: 284, y: 436 }, { x: 313, y: 705 }),
  },
};

/** A left-handed player bends to the left, over words that stood there: on a wide sheet they stand on the right. */
function layoutFor({ shape, staging }: HandoutJob): SheetLayout {
  const layout = LAYOUTS[shape];
  if (staging.handed === 'right' || !layout.longer) return layout;
  const { leadArmParallel: arm, shaftParallel: shaft } = layout.cells;
  const x = arm.width + shaft.width + 20;
  return {
    ...layout,
    sentence: { ...layout.sentence, x },
    longer: { ...layout.longer, x },
    cells: { leadArmParallel: { ...arm, x: 0 }, shaftParallel: { ...shaft, x: arm.width } },
  };
}

/** Draws both checkpoints of a swing side by side, each with its drawing and its number on the body, under one sentence. A PNG. */
export async function drawHandout(job: HandoutJob): Promise<Blob> {
  await loadFonts();
  const { size, sentence, longer, cells, foot, sizes } = layoutFor(job);
  const { inks, own, take } = job;
  const stage = new ClipStage(job.staging, [take]);
  try {
    const pen = penOn(createCanvas(size.width, size.height));
    pen.fillStyle = inks.paper;
    pen.fillRect(0, 0, size.width, size.height);
    const drawn = CHECKPOINT_IDS.map((id) => layCell(pen, job, stage, id, cells[id], sizes));
    const frames = drawn.flatMap(({ frame }) => frame ?? []);
    if (frames.length > 0) drawPaper(pen, frames[0], size, inks, 1);
    // Bodies first: one may reach into the other's half, and numbers and words lie over both.
    for (const { body } of drawn) body(size);
    for (const { drawing } of drawn) drawing();
    drawWordsOf(pen, job.sentence, book(sentence.px, 700), own.colour ?? inks.ink, sentence, inks.paper);
    if (longer) drawWordsOf(pen, job.longer, book(longer.px, 500), inks.ink, longer, inks.paper);
    drawFoot(pen, job, foot, size, LAYOUTS[job.shape].sentence.x);
    return await toPng(pen.canvas);
  } finally {
    stage.dispose();
  }
}

/** One checkpoint on a sheet, ready to be drawn: its frame there, its body, and all that lies over it. */
interface LaidCell {
  readonly frame: Frame | null;
  readonly body: (sheet: PixelSize) => void;
  readonly drawing: () => void;
}

function layCell(
  pen: Pen,
  job: HandoutJob,
  stage: ClipStage,
  id: CheckpointId,
  cell: Rect,
  sizes: ShapeSizes,
): LaidCell {
  const { take, bands, units, inks } = job;
  const scene = { stage, takes: [take], handed: job.staging.handed, bands, units, inks };
  const stops = new StopPainter(scene, cell, sizes, 1, pen, sizes.top);
  const label = CHECKPOINT_NAMES[id].title;
  const said = stops.saidOf(0, id);
  const at = take.checkpoints[id];
  const inCell = (draw: () => void): void => {
    pen.save();
    pen.translate(cell.x, cell.y);
    draw();
    pen.restore();
  };
  if (!said || !isReached(at)) {
    const { word, why } = sayCheckpoint(id, at, bands, units);
    const words = { label, word: { text: word, px: sizes.word[id], colour: inks.ink }, sentence: why };
    return { frame: null, body: () => {}, drawing: () => inCell(() => stops.drawWordsAt(pen, null, words)) };
  }
  const words = { label, word: said.word };
  stops.lay(id, [0], () => ({ withNumber: [words], alone: [] }));
  const { frame: own, numbers } = stops.placeOf(id);
  const frame = { ...own, x0: own.x0 + cell.x, y0: own.y0 + cell.y };
  return {
    frame,
    body: (sheet) => pen.drawImage(stops.alone(frame, 0, at.t, 'solid', undefined, sheet), 0, 0),
    drawing: () =>
      inCell(() => {
        stops.drawMeasured(pen, id, 0, numbers[0], { line: 1, hatch: 1, number: 1 });
        stops.drawWordsAt(pen, id, words);
      }),
  };
}

/** The source under an ink line, and the coach's own mark at its end. */
function drawFoot(
  pen: Pen,
  { inks, who, own }: HandoutJob,
  foot: number,
  { width, height }: PixelSize,
  left: number,
): void {
  pen.fillStyle = inks.paper;
  pen.fillRect(0, foot, width, height - foot);
  pen.fillStyle = inks.ink;
  pen.fillRect(0, foot, width, 2);
  const box = {
    x: left,
    y: foot + SOURCE.base - SOURCE.px,
    width: width - 2 * left - (own.mark ? 150 : 0),
    height: SOURCE.px * 1.2,
  };
  drawWordsOf(pen, `${ILLUSTRATION}. ${who}`, draft(SOURCE.px, 500), inks.quiet, box, inks.paper);
  if (!own.mark) return;
  // As tall as the foot allows.
  const tall = height - foot - 16;
  const unit = tall / 90.5;
  drawOwnMark(pen, own, { x: width - left - tall * 0.95, y: foot + 8 }, unit, true);
}
