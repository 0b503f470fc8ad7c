import { CHECKPOINT_IDS, type CheckpointId } from '../../../reading/checkpointTable';
import { desk } from '../../../store';
import type { Outlines } from '../../../video/film.worker';
import { sayDrawn, sayOnPicture } from '../../../words/film/over';
import { sayFilmReading } from '../../../words/film/film';
import type { PlaceId } from '../filmMarks';
import type { FilmState } from '../filmStore';
import { DASHED, paintClub, paintContour, SOLID } from './paintContour';

const PLACE_OF: Readonly<Record<CheckpointId, PlaceId>> = { leadArmParallel: 'arm', shaftParallel: 'shaft' };
/** Longer side of what is made, px. */
const LONGEST = 1280;
/** Height of the line of words below, as a share of the picture's. */
const BAND = 0.09;
const PAPER = '#f6f0e3';
const PLATE = '#fcf9f1';
const INK = '#211d18';

/** A frame of the film with the figure over it, as it goes into a still or a clip. */
export interface OverPicture {
  readonly canvas: HTMLCanvasElement;
  readonly width: number;
  readonly height: number;
  /** Draws a frame; without `picture` the figure stands on paper. */
  draw(frame: number, outlines: Outlines | undefined, picture: ImageBitmap | undefined): void;
}

/** Readings at the frames that were marked. */
export const checkpointAt = ({ sheet }: Pick<FilmState, 'sheet'>, frame: number): CheckpointId | undefined =>
  CHECKPOINT_IDS.find((id) => sheet[PLACE_OF[id]]?.frame === frame);

/** A canvas for the film that is open, its readings and switches as they stand at this moment. */
export function createOverPicture({ video, view, answer, sheet }: FilmState): OverPicture {
  const { w, h } = video!.info;
  const { document: state } = desk.getState();
  const shape = { w, h, isLeft: state.player.handed === 'left' };
  const scale = Math.min(1, LONGEST / (Math.max(w, h) * (1 + BAND)));
  const even = (px: number): number => 2 * Math.round(px / 2);
  const [width, tall] = [even(w * scale), even(h * scale)];
  const band = even(tall * BAND);
  const canvas = Object.assign(document.createElement('canvas'), { width, height: tall + band });
  const pen = canvas.getContext('2d', { alpha: false, willReadFrequently: true })!;
  const layer = Object.assign(document.createElement('canvas'), { width: w, height: h });
  const layerPen = layer.getContext('2d')!;
  const aim = state.plan ? 'plan' : 'reference';
  const style = getComputedStyle(document.documentElement);
  const write = (text: string, y: number, size: number, face: string, weight: number): void => {
    pen.font = `${weight} ${size}px ${style.getPropertyValue(face)}`;
    pen.fillText(text, band * 0.2, y, width - band * 0.4);
  };
  return {
    canvas,
    width,
    height: tall + band,
    draw(frame, outlines, picture) {
      pen.fillStyle = PAPER;
      pen.fillRect(0, 0, width, tall);
      if (picture) {
        pen.globalAlpha = view.film;
        pen.drawImage(picture, 0, 0, width, tall);
        pen.globalAlpha = 1;
      }
      const body = picture ? 1 - view.film : 1;
      const lay = (): void => pen.drawImage(layer, 0, 0, width, tall);
      if (view.target) {
        paintContour(layerPen, outlines?.target, shape, DASHED[aim], view.before ? 0 : body);
        lay();
      }
      // Over the target: where both are the same, the player is seen.
      if (view.before) {
        paintContour(layerPen, outlines?.before, shape, SOLID, body);
        if (view.target && outlines) paintClub(layerPen, outlines.target, h, DASHED[aim].ink);
        lay();
      }
      pen.fillStyle = PLATE;
      pen.fillRect(0, tall, width, band);
      pen.fillStyle = INK;
      pen.fillRect(0, tall, width, Math.max(1, Math.round(band / 40)));
      const id = checkpointAt({ sheet }, frame);
      const reading = id && answer && 'camera' in answer ? answer[id] : undefined;
      const said = id && reading && sayFilmReading(id, reading, state.units);
      const at = id && said && { id, said: `${said.word} ${said.number} ${said.margin}` };
      write(sayOnPicture(frame, at), tall + band * 0.5, band * 0.36, '--book', 600);
      write(sayDrawn(view.before, view.target ? aim : undefined), tall + band * 0.85, band * 0.25, '--draft', 500);
    },
  };
}
