import type { ClipJob } from '../clip/clipJob';
import type { ClipStage } from '../clip/clipStage';
import type { PixelSize } from '../clip/formats';
import type { Moment } from '../clip/storyboard';
import { createCanvas, penOn, type Canvas, type Pen, type Rect } from '../picture/canvasPen';
import { codeOf } from '../picture/qrCode';
import { drawEnd } from '../picture/titleCards';
import { sizesFor, type ShapeSizes } from '../stop/sizes';
import { drawWords, layWords } from '../stop/topWords';
import { cellsOf } from './cells';
import { CheckpointPainter } from './checkpointPainter';
import { paintScene, type Painting } from './scenePainter';

/** Draws whole frames: pictures, drawings and words on one canvas. The same moment gives the same pixels. */
export class ClipPainter {
  readonly canvas: Canvas;
  private readonly pen: Pen;
  private readonly squares: readonly (readonly boolean[])[];
  private readonly sizes: ShapeSizes;
  private readonly unit: number;
  private readonly painting: Painting;
  private readonly checkpoints: CheckpointPainter;

  constructor(
    private readonly job: ClipJob,
    stage: ClipStage,
    private readonly size: PixelSize,
  ) {
    this.canvas = createCanvas(size.width, size.height);
    this.pen = penOn(this.canvas);
    this.squares = codeOf(job.address);
    ({ sizes: this.sizes, unit: this.unit } = sizesFor(size));
    const { source } = this.sizes;
    const belowSource = (source.top + 1.2 * source.px) * this.unit;
    this.painting = { pen: this.pen, job, stage, size, belowSource };
    this.checkpoints = new CheckpointPainter(this.painting);
  }

  paint(moment: Moment): void {
    const { pen, size, sizes, unit, job } = this;
    pen.textBaseline = 'alphabetic';
    pen.textAlign = 'left';
    pen.globalAlpha = 1;
    pen.fillStyle = job.inks.paper;
    pen.fillRect(0, 0, size.width, size.height);
    const { kind, camera, takes } = moment.shot;
    if (kind === 'end') return drawEnd({ pen, size, sizes, unit, inks: job.inks }, this.squares, job);
    const isScene =
      kind === 'title' || kind === 'whole' || kind === 'feel' || (kind === 'slow' && camera !== 'downTheLine');
    const cells = cellsOf(size, takes.length);
    cells.forEach((cell, i) => {
      if (isScene) paintScene(this.painting, moment, i, cell);
      else this.checkpoints.paint(moment, i, cell);
    });
    if (cells.length > 1) this.join(cells);
  }

  /** Thin rules between pictures that stand side by side, and one source line over them all. */
  private join(cells: readonly Rect[]): void {
    const { pen, size, sizes, unit, job } = this;
    pen.fillStyle = job.inks.ink;
    const thin = Math.max(1, 2 * unit);
    for (const { x, y } of cells.slice(1)) {
      if (x > 0) pen.fillRect(x, 0, thin, size.height);
      else pen.fillRect(0, y, size.width, thin);
    }
    const laid = layWords(pen, {}, { left: sizes.left * unit, width: size.width }, sizes, unit, job.inks);
    drawWords(pen, laid, job.inks, unit);
  }
}
