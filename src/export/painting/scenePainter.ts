import { saySlow } from '../../words';
import { FEEL_THIS, sayRun, YOUR_SWING } from '../../words/showing/handout';
import { DIRECTIONS, type Insets, type View } from '../../scene/camera/view';
import type { ClipJob } from '../clip/clipJob';
import { directionOf, type ClipStage } from '../clip/clipStage';
import type { PixelSize } from '../clip/formats';
import { SLOW, type Moment, type Shot } from '../clip/storyboard';
import { book, type Pen, type Rect } from '../picture/canvasPen';
import { drawOwnMark, titleWords } from '../picture/titleCards';
import { sizesFor, type ShapeSizes } from '../stop/sizes';
import { drawWords, layWords, shifted, type LaidWords, type TopWords } from '../stop/topWords';

/** What the painters of a picture share. */
export interface Painting {
  readonly pen: Pen;
  readonly job: ClipJob;
  readonly stage: ClipStage;
  readonly size: PixelSize;
  /** Where words begin in cells side by side, under the source line of the whole picture, px. */
  readonly belowSource: number;
}

/** Shares of the width that words keep beside a figure: of a wide picture, of a square one, and of a wide one whose words are few. */
const BESIDE = { wide: 0.42, square: 0.48, few: 0.2 } as const;
/** Tallest headline beside a figure, and above one, px. */
const TALL = { beside: 420, above: 290, aboveInSquare: 120, heading: 150 } as const;
/** Between figure and edge, and pens, px. */
const AIR = 16;
const PEN = 1.3;

/** Draws a swing with ground and glass round it into a cell of a picture, with words at the top: title, whole swing, what to feel. */
export function paintScene(painting: Painting, moment: Moment, index: number, cell: Rect): void {
  const { pen, job, stage, size, belowSource } = painting;
  const { shot, times } = moment;
  const { kind, second, takes } = shot;
  const { sizes, unit } = sizesFor(cell);
  const isCell = cell.width !== size.width || cell.height !== size.height;
  const isWide = cell.width > cell.height * 1.2;
  const isLeft = job.staging.handed === 'left';
  const beside = !isCell && ((kind === 'title' && sizes.isBeside.title) || (kind === 'feel' && sizes.isBeside.feel));
  const left = sizes.left * unit;
  const width = beside
    ? Math.min(sizes.column * unit, cell.width * (isWide ? BESIDE.wide : BESIDE.square))
    : cell.width - 2 * left;
  const words = wordsOf(job, shot, takes[index], sizes, isCell);
  const put = layWords(pen, words, { left, width }, sizes, unit, job.inks, isCell ? belowSource : undefined);
  // A left-handed player stands mirrored: words beside him stand on the other side.
  const isMirrored = isLeft && !isCell && (beside || isWide);
  const right = Math.max(...put.boxes.map((box) => box.right));
  const laid = isMirrored ? shifted(put, cell.width - left - right) : put;

  const air = AIR * unit;
  const room = beside ? width + left + 2 * air : isWide ? cell.width * BESIDE.few : air;
  const insets = {
    // In the right-handed picture, which is mirrored afterwards.
    left: isMirrored === isLeft ? room : air,
    right: isMirrored === isLeft ? air : room,
    top: beside || isWide ? air * 1.5 : laid.bottom + air,
    bottom: air * 1.5,
  };
  const shown = {
    take: takes[index],
    t: times[index],
    view: viewFor(painting, moment, index, cell, insets, belowSource + air),
    ghost: second === null ? undefined : job.takes[second],
    isTraceless: kind === 'title' || kind === 'feel',
  };
  pen.drawImage(stage.draw(shown, cell, Math.max(0.5, unit * PEN)), cell.x, cell.y);
  pen.save();
  pen.translate(cell.x, cell.y);
  drawWords(pen, laid, job.inks, unit);
  if (kind === 'title') drawOwnMark(pen, job.own, { x: leftOf(laid), y: laid.bottom + 26 * unit }, unit);
  pen.restore();
}

const leftOf = ({ boxes }: LaidWords): number => Math.min(...boxes.map((box) => box.left));

function viewFor(
  { stage, job }: Painting,
  moment: Moment,
  index: number,
  cell: Rect,
  insets: Insets,
  highest: number,
): View {
  const { shot, share, times } = moment;
  const { kind, camera, takes, second } = shot;
  if (kind === 'title') return stage.fitAt(DIRECTIONS.free, takes[index], times[index], cell, insets);
  const isFixed = camera === 'orbit' || job.wish.cuts;
  if (kind === 'feel')
    return stage.fill(directionOf(camera, share), takes[index], times[index], cell, insets, highest, isFixed);
  const together = second === null ? takes : [...takes, second];
  return stage.follow(directionOf(camera, share), together, times[index], cell, insets, isFixed);
}

function wordsOf(job: ClipJob, { kind, run }: Shot, take: number, sizes: ShapeSizes, isCell: boolean): TopWords {
  const colour = job.inks.ink;
  if (kind === 'title') return titleWords(job, sizes);
  if (kind === 'slow') return { label: saySlow(SLOW) };
  if (kind === 'feel') {
    const hand = { ...book(sizes.feel, 500), isItalic: true } as const;
    const tall = sizes.isBeside.feel ? TALL.beside : sizes.isBeside.title ? TALL.aboveInSquare : TALL.above;
    return { label: FEEL_THIS, headline: { text: job.feel, hand, colour, tall }, notes: job.balls[take] };
  }
  const text = take === 0 ? YOUR_SWING : job.takes[take].label;
  const hand = book(sizes.sentence * (isCell ? 0.9 : 1.1), 700);
  return {
    ...(run === null ? {} : { label: sayRun(run, job.takes[take].label) }),
    headline: { text, hand, colour, tall: TALL.heading },
    notes: job.balls[take],
  };
}
