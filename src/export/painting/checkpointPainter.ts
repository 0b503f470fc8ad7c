import { createPose } from '../../model/pose';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import { CHECKPOINT_NAMES, saySlow } from '../../words';
import { sayRun, sayWas, THE_CHANGE, THE_DIFFERENCE } from '../../words/showing/handout';
import type { Box, Frame } from '../../plates/plate/frame';
import type { Canvas, Rect } from '../picture/canvasPen';
import { slowFrame } from '../stop/slowFrame';
import { mixedPose, reachedBy, StopPainter } from '../stop/stopPainter';
import { betweenFrames } from '../stop/stopView';
import { sizesFor } from '../stop/sizes';
import type { TopWords } from '../stop/topWords';
import { SLOW, type Moment, type Shot } from '../clip/storyboard';
import type { Painting } from './scenePainter';

const titleOf = (id: CheckpointId): string => CHECKPOINT_NAMES[id].title;

/** Draws checkpoints on the body, near-parallel and down the line: on the way there, standing still, and what changes. */
export class CheckpointPainter {
  /** One for each size of cell. */
  private readonly stops = new Map<string, StopPainter>();
  private readonly pose = createPose();

  constructor(private readonly painting: Painting) {}

  paint(moment: Moment, index: number, cell: Rect): void {
    const { pen } = this.painting;
    pen.save();
    pen.translate(cell.x, cell.y);
    pen.beginPath();
    pen.rect(0, 0, cell.width, cell.height);
    pen.clip();
    this.paintIn(moment, moment.shot.takes[index], moment.times[index], cell);
    pen.restore();
  }

  private paintIn(moment: Moment, take: number, t: number, cell: Rect): void {
    const { pen } = this.painting;
    const { shot, travel, fade } = moment;
    const { kind, second } = shot;
    const id = shot.checkpoint!;
    const stops = this.stopsFor(shot, cell, take);
    const { frame } = stops.placeOf(id);
    if (kind === 'slow') {
      stops.drawBase(pen, betweenFrames(this.frameBefore(shot, stops), frame, travel), take, t);
      if (!this.isCell(cell)) stops.drawWordsAt(pen, id, { label: saySlow(SLOW) });
      return;
    }
    if (kind === 'morph' && second !== null) return this.paintMorph(moment, take, second, stops);
    pen.drawImage(stops.base(`${id} ${take}`, frame, take, t), 0, 0);
    if (kind === 'change' && second !== null) {
      this.lay(stops.second(id, take, second, 'plum'), fade);
      stops.drawOther(pen, id, take, false);
      stops.drawOther(pen, id, second, true, fade);
      stops.drawWordsAt(pen, id, this.changeWords(stops.sizes.word[id]));
      return;
    }
    if (second !== null) {
      this.lay(stops.second(id, take, second, 'ink'), fade);
      stops.drawOther(pen, id, second, false, fade);
    }
    stops.drawMeasured(pen, id, take, this.boxOf(id, take, stops), moment);
    stops.drawWordsAt(pen, id, this.stopWords(shot, id, take, stops, this.isCell(cell)));
  }

  /** The first body becomes the second, and its reading counts with it: each frame's is read from its own pose. */
  private paintMorph(moment: Moment, take: number, second: number, stops: StopPainter): void {
    const { pen, job } = this.painting;
    const { shot, mix } = moment;
    const id = shot.checkpoint!;
    const [from, to] = [job.takes[take], job.takes[second]].map(({ swing, checkpoints }) => {
      const at = checkpoints[id];
      return { swing, t: isReached(at) ? at.t : 0 };
    });
    const pose = mixedPose(from.swing, from.t, to.swing, to.t, mix, this.pose);
    const { frame } = stops.placeOf(id);
    if (mix === 1) pen.drawImage(stops.base(`${id} ${second}`, frame, second, to.t), 0, 0);
    else stops.drawBase(pen, frame, second, to.t, pose);
    this.lay(stops.second(id, take, second, 'plum'), 1 - mix);
    this.lay(stops.second(id, second, take, 'ink'), mix);
    stops.drawOther(pen, id, take, false);
    const box = mixBox(this.boxOf(id, take, stops), this.boxOf(id, second, stops), mix);
    stops.drawMeasured(pen, id, second, box, moment, pose);
    const { word } = stops.said(id, pose);
    stops.drawWordsAt(pen, id, { label: titleOf(id), word, sentence: sayWas(stops.wordsOf(take, id)) });
  }

  private lay(layer: Canvas, share: number): void {
    const { pen } = this.painting;
    if (share <= 0) return;
    pen.globalAlpha = share;
    pen.drawImage(layer, 0, 0);
    pen.globalAlpha = 1;
  }

  private isCell({ width, height }: Rect): boolean {
    const { size } = this.painting;
    return width !== size.width || height !== size.height;
  }

  private boxOf(id: CheckpointId, take: number, stops: StopPainter): Box {
    const { numbers } = stops.placeOf(id);
    return numbers[this.bodiesOf(id, take).indexOf(take)] ?? numbers[0];
  }

  private changeWords(px: number): TopWords {
    const { change, isPlan, inks } = this.painting.job;
    const word = { text: change.head, px, colour: inks.ghost };
    return { label: isPlan ? THE_CHANGE : THE_DIFFERENCE, word, sentence: change.rest };
  }

  private stopWords({ run }: Shot, id: CheckpointId, take: number, stops: StopPainter, isCell: boolean): TopWords {
    const { takes, wish } = this.painting.job;
    const { word, where } = stops.saidOf(take, id)!;
    const { label } = takes[take];
    if (isCell) return { label, word };
    if (run !== null) {
      const title = sayRun(run, `${label}, ${CHECKPOINT_NAMES[id].inSentence}`);
      const before = sayWas(stops.wordsOf(0, id)).replace(/^Was/, 'First run:');
      return { label: title, word, sentence: run === 2 ? before : where };
    }
    const isSecond = take === 1 && wish.arrangement === 'ghosted';
    return { label: titleOf(id), word, sentence: isSecond ? sayWas(stops.wordsOf(0, id)) : where };
  }

  /** Takes that a checkpoint's picture has to hold at one time or another: one camera sees them all. */
  private bodiesOf(id: CheckpointId, take: number): readonly number[] {
    const { takes } = this.painting.job;
    return reachedBy(takes).includes(id) ? takes.map((_, i) => i) : [take];
  }

  private stopsFor(shot: Shot, cell: Rect, take: number): StopPainter {
    const { job, stage, pen, belowSource } = this.painting;
    const isCell = this.isCell(cell);
    const key = `${cell.width} ${cell.height}`;
    let stops = this.stops.get(key);
    if (!stops) {
      const { sizes, unit } = sizesFor(cell);
      const { takes, bands, units, inks } = job;
      const scene = { stage, takes, handed: job.staging.handed, bands, units, inks };
      stops = new StopPainter(scene, cell, sizes, unit, pen, isCell ? belowSource : undefined);
      this.stops.set(key, stops);
    }
    this.layStop(stops, shot, shot.checkpoint!, take, isCell);
    return stops;
  }

  private layStop(stops: StopPainter, shot: Shot, id: CheckpointId, take: number, isCell: boolean): void {
    const bodies = this.bodiesOf(id, take);
    const runOf = (body: number): 1 | 2 | null => (shot.run === null ? null : body === 0 ? 1 : 2);
    stops.lay(id, bodies, () => ({
      withNumber: bodies.map((body) => this.stopWords({ ...shot, run: runOf(body) }, id, body, stops, isCell)),
      alone:
        !isCell && bodies.length > 1 && this.painting.job.wish.arrangement === 'ghosted'
          ? [this.changeWords(stops.sizes.word[id])]
          : [],
    }));
  }

  /** Where the camera of a slow shot comes from: the checkpoint before, or a picture of the whole downswing. */
  private frameBefore(shot: Shot, stops: StopPainter): Frame {
    const { job, stage } = this.painting;
    const take = shot.takes[0];
    const before = reachedBy([job.takes[take]])[0];
    if (before !== shot.checkpoint && shot.from[0] !== 0) {
      this.layStop(stops, shot, before, take, false);
      return stops.placeOf(before).frame;
    }
    return slowFrame(stage, shot, job.takes, job.staging.handed, stops);
  }
}

function mixBox(a: Box, b: Box, share: number): Box {
  const mix = (from: number, to: number): number => from + (to - from) * share;
  return {
    left: mix(a.left, b.left),
    right: mix(a.right, b.right),
    top: mix(a.top, b.top),
    bottom: mix(a.bottom, b.bottom),
  };
}
