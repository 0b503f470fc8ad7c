import { heelLiftAt } from '../../figure/stance';
import { AT, placePose } from '../../model/chain';
import { createJointVector } from '../../model/joints';
import { createPose, type Pose } from '../../model/pose';
import { CHECKPOINT_IDS, type CheckpointId } from '../../reading/checkpointTable';
import { isReached } from '../../reading/checkpoints';
import { drawnPose, swingJoints, type Swing } from '../../reading/swing';
import { judge, type Bands, type Verdict } from '../../reading/verdicts';
import type { Box, Frame } from '../../plates/plate/frame';
import { PLATE_WORDS, sayCheckpoint, showJudged, type CheckpointWords, type Units } from '../../words';
import { sayWhere } from '../../words/showing/handout';
import { createCanvas, penOn, type Canvas, type Inks, type Pen } from '../picture/canvasPen';
import type { ClipStage } from '../clip/clipStage';
import type { PixelSize } from '../clip/formats';
import type { ShownSwing } from '../task/exportSnapshot';
import { bodyBoxes } from './bodyBoxes';
import { drawClubOver } from './clubOver';
import { drawAxis, drawPaper, drawStop, GHOST_DASHES, lineInk, numberSize, textInk, type Revealed } from './drawStop';
import { otherLine, readingOf } from './geometry';
import { layStop, type StopBody, type StopPlace } from './layStop';
import { layerSecond } from './secondBody';
import type { ShapeSizes } from './sizes';
import { viewOf } from './stopView';
import { drawWords, layWords, shifted, type Column, type LaidWords, type TopWords } from './topWords';

/** What all stops of a picture share. */
export interface StopScene {
  readonly stage: ClipStage;
  readonly takes: readonly ShownSwing[];
  readonly handed: 'right' | 'left';
  readonly bands: Bands;
  readonly units: Pick<Units, 'length'>;
  readonly inks: Inks;
}

/** Words of a stop: those that stand beside its number, and others that show without it. */
export interface StopTexts {
  readonly withNumber: readonly TopWords[];
  readonly alone: readonly TopWords[];
}

/** Ways of wrapping a sentence, shares of the widest column. */
const WRAPS = [1, 0.72, 0.5] as const;
/** What may stand in the number's place: counting, it is never wider than the wider of its ends, but for a decimal. */
const SLACK = 1.02;

/** What a stop says of a body: its verdict, its number, and what stands at the top. */
export interface StopSaid {
  readonly verdict: Verdict;
  readonly number: string;
  readonly unit: string;
  readonly word: NonNullable<TopWords['word']>;
  readonly where: string;
}

/** Lays out and draws checkpoints on the body, in one cell of a picture. Keeps what does not change from frame to frame. */
export class StopPainter {
  private readonly places = new Map<CheckpointId, { place: StopPlace; left: number; share: number }>();
  private readonly kept = new Map<string, Canvas>();
  private readonly pose = createPose();

  constructor(
    private readonly scene: StopScene,
    readonly size: PixelSize,
    readonly sizes: ShapeSizes,
    readonly unit: number,
    /** Pen for measuring. */
    private readonly pen: Pen,
    /** Where the words begin, px, where the source line stands elsewhere. */
    private readonly below?: number,
  ) {}

  private get side(): 1 | -1 {
    return this.scene.handed === 'left' ? -1 : 1;
  }

  poseAt(take: number, id: CheckpointId): Pose | undefined {
    const at = this.scene.takes[take].checkpoints[id];
    if (!isReached(at)) return undefined;
    const pose = createPose();
    drawnPose(this.scene.takes[take].swing, at.t, pose);
    return pose;
  }

  /** What is said of a take at a checkpoint, in the words of the plates. */
  wordsOf(take: number, id: CheckpointId): CheckpointWords {
    const { takes, bands, units } = this.scene;
    return sayCheckpoint(id, takes[take].checkpoints[id], bands, units);
  }

  /** The same for any pose: while one body becomes another. */
  said(id: CheckpointId, pose: Pose): StopSaid {
    const { bands, units, inks } = this.scene;
    const value = readingOf(id, pose);
    const verdict = judge(value, bands[id]);
    const { number, unit } = showJudged(value, bands[id], units);
    const word = { text: PLATE_WORDS[verdict], px: this.sizes.word[id], colour: textInk(verdict, inks), verdict };
    return { verdict, number, unit, word, where: '' };
  }

  saidOf(take: number, id: CheckpointId): StopSaid | undefined {
    const pose = this.poseAt(take, id);
    return pose && { ...this.said(id, pose), where: sayWhere(id, this.wordsOf(take, id)) };
  }

  /** Lays out a stop for the bodies and the words that it is to show; once. */
  lay(id: CheckpointId, bodies: readonly number[], say: () => StopTexts): void {
    if (this.places.has(id)) return;
    const { withNumber, alone: others } = say();
    const { pen, sizes, unit, size, side } = this;
    const shown = bodies.map((take) => this.bodyOf(take, id));
    const sets = WRAPS.map((share) => {
      const layAll = (sets: readonly TopWords[]) => sets.map((set) => this.layAt(set, share));
      const [own, alone] = [layAll(withNumber), layAll(others)];
      const laid = [...own, ...alone];
      return {
        own,
        alone,
        width: Math.max(0, ...laid.flatMap(({ boxes }) => boxes.map((box) => box.right - sizes.left * unit))),
      };
    });
    const left = (width: number): number =>
      side === -1 && size.width >= size.height ? size.width - sizes.left * unit - width : sizes.left * unit;
    const numbers = bodies.map((take) => {
      const said = this.said(id, this.poseAt(take, id)!);
      return numberSize(pen, said.number, said.unit, sizes.stop[id].number * unit);
    });
    const place = layStop(
      {
        id,
        side,
        band: this.scene.bands[id],
        bodies: shown,
        words: sets.map(({ own, alone, width }) => {
          const by = left(width) - sizes.left * unit;
          const boxesOf = (laid: readonly LaidWords[]): Box[] => laid.flatMap((one) => [...shifted(one, by).boxes]);
          return { withNumber: boxesOf(own), alone: boxesOf(alone) };
        }),
        number: {
          width: SLACK * Math.max(...numbers.map(({ width }) => width)),
          height: Math.max(...numbers.map(({ height }) => height)),
        },
      },
      sizes,
      unit,
      size,
    );
    const { width } = sets[place.wrap];
    this.places.set(id, { place, left: left(width), share: WRAPS[place.wrap] });
  }

  private bodyOf(take: number, id: CheckpointId): StopBody {
    const { stage, takes } = this.scene;
    const { swing, checkpoints } = takes[take];
    const at = checkpoints[id];
    if (!isReached(at)) throw new RangeError('A checkpoint that is not reached has no place.');
    const pose = this.poseAt(take, id)!;
    const { figure, ball } = stage.built;
    return { pose, boxes: bodyBoxes(figure, pose, { ballPoint: ball, heelLift: heelLiftAt(swing, at.t) }) };
  }

  private layAt(words: TopWords, share: number, left = this.sizes.left * this.unit): LaidWords {
    const width = this.sizes.column * this.unit;
    const column: Column = { left, width, sentences: width * share };
    return layWords(this.pen, words, column, this.sizes, this.unit, this.scene.inks, this.below);
  }

  placeOf(id: CheckpointId): StopPlace {
    return this.places.get(id)!.place;
  }

  /** Paper with a body on it, seen in a frame: drawn once for each name. */
  base(name: string, frame: Frame, take: number, t: number, pose?: Pose): Canvas {
    let kept = name === '' ? undefined : this.kept.get(name);
    if (!kept) {
      kept = createCanvas(this.size.width, this.size.height);
      this.drawBase(penOn(kept), frame, take, t, pose);
      if (name !== '') this.kept.set(name, kept);
    }
    return kept;
  }

  /** The same, straight onto a picture. */
  drawBase(pen: Pen, frame: Frame, take: number, t: number, pose?: Pose): void {
    drawPaper(pen, frame, this.size, this.scene.inks, this.unit);
    pen.drawImage(this.alone(frame, take, t, 'solid', pose), 0, 0);
  }

  /** A body alone, on nothing, in a frame of this picture or of a larger one. Valid until the next is drawn. */
  alone(frame: Frame, take: number, t: number, how: 'solid' | 'contour', pose?: Pose, size = this.size): Canvas {
    const { stage, takes } = this.scene;
    if (!pose) drawnPose(takes[take].swing, t, this.pose);
    const depth = (pose ?? this.pose)[AT.bicep];
    const shown = { take, t, view: viewOf(frame, size, depth), alone: how, ...(pose ? { pose } : {}) };
    return stage.draw(shown, size, Math.max(0.5, this.unit * 1.3));
  }

  /** Another take over the first at a checkpoint: in plum with its wash, or in ink without. */
  second(id: CheckpointId, first: number, second: number, style: 'plum' | 'ink'): Canvas {
    const name = `${id} ${second} over ${first}`;
    let kept = this.kept.get(name);
    if (!kept) {
      const { inks, takes } = this.scene;
      const { frame } = this.placeOf(id);
      const timeOf = (take: number): number => {
        const at = takes[take].checkpoints[id];
        return isReached(at) ? at.t : 0;
      };
      const draw = (which: 'first' | 'second', how: 'solid' | 'contour'): Canvas => {
        const take = which === 'first' ? first : second;
        return this.alone(frame, take, timeOf(take), how);
      };
      kept = layerSecond(draw, this.size, this.unit, style === 'plum' ? inks.ghost : inks.ink, style === 'plum');
      this.kept.set(name, kept);
    }
    return kept;
  }

  /** The line of a take at a checkpoint, in its verdict's dashes, or in plum as the line of a plan. */
  drawOther(pen: Pen, id: CheckpointId, take: number, asPlan: boolean, share = 1): void {
    const pose = this.poseAt(take, id);
    if (!pose) return;
    const { inks } = this.scene;
    const line = otherLine(id, pose, this.placeOf(id).frame);
    const { verdict } = this.said(id, pose);
    pen.globalAlpha = share;
    const dashes = asPlan ? GHOST_DASHES : verdict === 'steep' ? [18, 4, 3, 4] : verdict === 'shallow' ? [1.5, 8] : [];
    drawAxis(pen, line, asPlan ? inks.ghost : lineInk(verdict, inks), dashes, inks, this.unit * 0.9);
    pen.globalAlpha = 1;
  }

  /** The drawing on a take's body; in another pose than its own where one is given. */
  drawMeasured(pen: Pen, id: CheckpointId, take: number, box: Box, revealed: Revealed, between?: Pose): void {
    const pose = between ?? this.poseAt(take, id)!;
    const { bands, inks } = this.scene;
    const said = this.said(id, pose);
    const { frame } = this.placeOf(id);
    const own = { id, pose, frame, band: bands[id], value: readingOf(id, pose), number: said.number, unit: said.unit };
    const numberPx = this.sizes.stop[id].number * this.unit;
    drawStop(pen, { ...own, box, numberPx }, revealed, inks, this.unit, () => {
      if (id === 'shaftParallel') this.drawClub(pen, take, pose, between !== undefined);
    });
  }

  /** The club over the pattern between it and the hands. Kept but for a pose in between. */
  private drawClub(pen: Pen, take: number, pose: Pose, isBetween: boolean): void {
    const { swing, checkpoints } = this.scene.takes[take];
    const at = checkpoints.shaftParallel;
    if (!isReached(at)) return;
    const { frame } = this.placeOf('shaftParallel');
    const name = `club ${take}`;
    let body = isBetween ? undefined : this.kept.get(name);
    if (!body) {
      const drawn = this.alone(frame, take, at.t, 'solid', pose);
      if (isBetween) body = drawn;
      else {
        body = createCanvas(this.size.width, this.size.height);
        penOn(body).drawImage(drawn, 0, 0);
        this.kept.set(name, body);
      }
    }
    const { figure, ball } = this.scene.stage.built;
    drawClubOver(pen, body, figure, pose, { ballPoint: ball, heelLift: heelLiftAt(swing, at.t) }, frame);
  }

  /** Words of a stop, where its layout has them. */
  drawWordsAt(pen: Pen, id: CheckpointId | null, words: TopWords): void {
    const found = id && this.places.get(id);
    const laid = found ? this.layAt(words, found.share, found.left) : this.layAt(words, 1);
    drawWords(pen, laid, this.scene.inks, this.unit);
  }
}

const [a, b] = [createJointVector(), createJointVector()];

/** The pose between two swings of one player, each at its own time (s): joints in between, so that bones keep their lengths. */
export function mixedPose(from: Swing, t0: number, to: Swing, t1: number, share: number, pose: Pose): Pose {
  swingJoints(from, t0, a);
  swingJoints(to, t1, b);
  for (let i = 0; i < a.length; i++) a[i] += (b[i] - a[i]) * share;
  placePose(to.rig, a, pose);
  return pose;
}

/** Checkpoints that all of these takes reach, in order. */
export const reachedBy = (takes: readonly ShownSwing[]): readonly CheckpointId[] =>
  CHECKPOINT_IDS.filter((id) => takes.every(({ checkpoints }) => isReached(checkpoints[id])));
