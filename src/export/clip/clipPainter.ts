import {
  ILLUSTRATION,
  sayBothAt,
  sayCheckpoint,
  sayPair,
  sayPathAndFace,
  saySlow,
  sayStatus,
  sayTake,
} from '../../words';
import { drawEnd, drawTitle } from '../picture/titleCards';
import { layOut, type ClipLayout } from './clipLayout';
import { codeOf } from '../picture/qrCode';
import type { ClipJob } from './clipJob';
import { directionOf, type ClipStage } from './clipStage';
import type { PixelSize } from './formats';
import {
  book,
  createCanvas,
  draft,
  inset,
  penOn,
  wrap,
  write,
  type Canvas,
  type Hand,
  type Pen,
  type Rect,
} from '../picture/canvasPen';
import { drawPlateCard } from '../picture/plateCard';
import { SLOW, type Moment } from './storyboard';

/** Draws whole frames: pictures, plates, words and cards on one canvas. The same moment gives the same pixels. */
export class ClipPainter {
  readonly canvas: Canvas;
  private readonly pen: Pen;
  private readonly squares: readonly (readonly boolean[])[];

  constructor(
    private readonly job: ClipJob,
    private readonly set: ClipStage,
    private readonly size: PixelSize,
  ) {
    this.canvas = createCanvas(size.width, size.height);
    this.pen = penOn(this.canvas);
    this.squares = codeOf(job.address);
  }

  paint(moment: Moment): void {
    const { pen, size, job } = this;
    const { inks, ghost } = job;
    const { kind, takes } = moment.shot;
    const layout = layOut(size, Math.max(1, takes.length), kind === 'slow');
    const { unit } = layout;
    pen.textBaseline = 'alphabetic';
    pen.textAlign = 'left';
    pen.fillStyle = inks.paper;
    pen.fillRect(0, 0, size.width, size.height);
    const card = { pen, size, unit, inks, bottom: layout.strip.y };
    if (kind === 'title') drawTitle(card, job, ghost ? [...job.takes, ghost] : job.takes);
    else if (kind === 'end') drawEnd(card, this.squares, job);
    else takes.forEach((take, i) => this.paintTake(moment, take, i, layout));
    this.writeStrip(layout, this.captionOf(moment));
  }

  private paintTake(moment: Moment, take: number, i: number, { cells, unit }: ClipLayout): void {
    const { pen, set, job } = this;
    const { inks } = job;
    const { picture, plate } = cells[i];
    const { label, dialled } = job.takes[take];
    const hand = draft(27 * unit, 600);
    const lead = 32 * unit;
    const width = picture.width - 44 * unit;
    const said = sayTake(label, dialled);
    const ghost = job.ghost && sayTake(job.ghost.label, job.ghost.dialled);
    // As many lines as the longest has: swings side by side are seen from the same place.
    const lines = Math.max(
      ...moment.shot.takes.map((shown) => {
        const own = sayTake(job.takes[shown].label, job.takes[shown].dialled);
        return [own, ghost].flatMap((text) => (text ? wrap(pen, text, hand, width) : [])).length;
      }),
    );
    const insets = { left: 14 * unit, right: 14 * unit, top: 24 * unit + lines * lead, bottom: 10 * unit };
    const { camera, legs } = moment.shot;
    const until = Math.max(...legs.flatMap(({ to }) => to));
    const view = set.fit(directionOf(camera, moment.share), picture, insets, until);
    pen.drawImage(set.draw(take, moment.times[i], view, picture, Math.max(0.5, unit * 1.3)), picture.x, picture.y);
    pen.fillStyle = inks.ink;
    if (i > 0) pen.fillRect(...this.ruleBefore(picture, unit));
    const at = { x: picture.x + 22 * unit, y: picture.y + 40 * unit, width, lead };
    const next = write(pen, said, hand, at);
    pen.fillStyle = inks.ghost;
    if (ghost) write(pen, ghost, hand, { ...at, y: next });
    if (plate && moment.plate)
      drawPlateCard(pen, job.plates[take][moment.plate], inset(plate, 14 * unit), inks, 22 * unit);
  }

  /** A thin rule between two pictures. */
  private ruleBefore({ x, y }: Rect, unit: number): [number, number, number, number] {
    const { width, height } = this.size;
    const thin = Math.max(1, 2 * unit);
    return x > 0 ? [x, 0, thin, height] : [0, y, width, thin];
  }

  private writeStrip({ strip, unit }: ClipLayout, caption: string): void {
    const { pen } = this;
    const { inks } = this.job;
    const x = 22 * unit;
    const width = strip.width - 2 * x;
    pen.fillStyle = inks.paper;
    pen.fillRect(strip.x, strip.y, strip.width, strip.height);
    pen.fillStyle = inks.ink;
    pen.fillRect(strip.x, strip.y, strip.width, Math.max(1, 2 * unit));
    write(pen, caption, book(33 * unit), { x, y: strip.y + 46 * unit, width, lead: 36 * unit, most: 2 });
    pen.fillStyle = inks.quiet;
    const y = strip.y + strip.height - 14 * unit;
    write(pen, ILLUSTRATION, illustrationHand(unit), { x, y, width, lead: 0, most: 1 });
  }

  private captionOf({ shot, times, plate, isFrozen }: Moment): string {
    const { takes, bands, units } = this.job;
    const shown = shot.takes.map((i) => takes[i]);
    if (shown.length === 0) return '';
    const isPair = shown.length > 1;
    if (shot.kind === 'whole' && isPair) return sayPair(shown[0].label, shown[1].label);
    if (isFrozen && plate && isPair) return sayBothAt(plate);
    if (isFrozen && plate) {
      return sayCheckpoint(plate, shown[0].checkpoints[plate], bands, units).sentence;
    }
    if (shot.kind === 'slow') {
      const { delivery } = shown[0];
      const isStruck = !isPair && !('missing' in delivery) && times[0] >= delivery.t;
      return isStruck ? sayPathAndFace(delivery) : saySlow(SLOW);
    }
    return sayStatus({ status: 'ready', checkpoints: shown[0].checkpoints, bands });
  }
}

/** How the sentence is written that every picture carries. */
const illustrationHand = (unit: number): Hand => draft(21 * unit, 600);
