import type { Pose } from '../../model/chain';
import { isReached, type Checkpoint, type CheckpointId } from '../../reading/checkpoints';
import { judgedReading, verdictAt, type Bands } from '../../reading/verdicts';
import { sayCheckpoint, type CheckpointWords, type Units } from '../../words';
import type { Stance } from '../../figure/place';
import type { Annotation, OtherLine } from '../annotation/annotation';
import type { DrawnPart, Finish, PlateFigure } from '../figure/drawnPart';
import { drawBody } from '../figure/figurePainter';
import type { Drawn } from '../figure/outlineCache';
import { SHEET, type Box, type Frame, type Framing } from './frame';
import { annotateLeadArm, LEAD_ARM_BARE, leadArmFrame } from './leadArmPlate';
import { BARE_BELOW, letteringAt, type Lettering } from '../annotation/lettering';
import { annotateShaft, SHAFT_BARE, shaftFrame } from './shaftPlate';

/** What is measured on a plate, and how it is shown. */
interface Measurement {
  readonly id: CheckpointId;
  readonly checkpoint: Checkpoint;
  readonly bands: Bands;
  readonly units: Pick<Units, 'length'>;
  readonly handed: 'right' | 'left';
  /** The same checkpoint of the reference, and of a swing held for comparison. */
  readonly reference: Checkpoint | undefined;
  readonly ghost: Checkpoint | undefined;
  readonly letters: Lettering;
  /** Largest scale, units per metre, for plates that share one. */
  readonly most?: number;
}
/** What a plate is drawn from. */
export interface PlateOf extends Measurement {
  readonly plate: PlateFigure;
  readonly stance: Stance;
  readonly finish: Finish;
  /** What the same plate drew last, where it is drawn again and again. */
  readonly drawn?: Drawn;
}

/** A plate as plain shapes, in units of the plate. */
export interface PlateDrawing {
  readonly frame: Frame;
  readonly parts: readonly DrawnPart[];
  readonly annotation: Annotation;
}

/** Swings closer than this in the reading (m) and in the shaft's direction share a line: drawing two would only thicken it. */
const SAME = 0.004;
const SAME_DIRECTION = 0.01;

/** Where the world lies on a plate, and everything on it but the figure; nothing where the checkpoint was not reached. */
export function annotatePlate(
  of: Measurement,
  words: CheckpointWords = wordsOf(of),
): { frame: Frame; annotation: Annotation } | undefined {
  const { id, checkpoint, bands, handed, letters } = of;
  if (!isReached(checkpoint) || words.verdict === 'missing') return undefined;
  const { pose } = checkpoint;
  const framing: Framing = { side: handed === 'left' ? -1 : 1, ...(of.most !== undefined && { most: of.most }) };
  const frame = id === 'leadArmParallel' ? leadArmFrame(pose, framing) : shaftFrame(pose, framing);
  const measured = {
    verdict: verdictAt(id, checkpoint, bands),
    value: judgedReading(id, checkpoint),
    band: bands[id],
    number: words.number,
    unit: words.unit,
  };
  const annotate = id === 'leadArmParallel' ? annotateLeadArm : annotateShaft;
  return { frame, annotation: annotate(pose, frame, measured, othersOf(of), letters, of.units.length) };
}

/** A plate as shapes; nothing where the checkpoint was not reached. */
export function plateDrawing(of: PlateOf, words: CheckpointWords = wordsOf(of)): PlateDrawing | undefined {
  const annotated = annotatePlate(of, words);
  if (!annotated || !isReached(of.checkpoint)) return undefined;
  const { frame, annotation } = annotated;
  return { frame, annotation, parts: drawBody(of.plate, of.checkpoint.pose, of.stance, frame, of.finish, of.drawn) };
}

const wordsOf = ({ id, checkpoint, bands, units }: Measurement): CheckpointWords =>
  sayCheckpoint(id, checkpoint, bands, units);

function othersOf({ id, checkpoint, reference, ghost }: Measurement): { kind: OtherLine['kind']; pose: Pose }[] {
  if (!isReached(checkpoint)) return [];
  const lines: { kind: OtherLine['kind']; pose: Pose }[] = [];
  for (const [kind, other] of [
    // A ghost that is the reference itself is drawn once.
    ['reference', reference && ghost && sharesLine(id, reference, ghost) ? undefined : reference],
    ['ghost', ghost],
  ] as const) {
    if (other && isReached(other) && !sharesLine(id, other, checkpoint)) lines.push({ kind, pose: other.pose });
  }
  return lines;
}

/** Whether two swings are so close at a checkpoint that drawing both would only thicken a line. */
function sharesLine(id: CheckpointId, a: Checkpoint, b: Checkpoint): boolean {
  if (!isReached(a) || !isReached(b)) return false;
  const apart = Math.abs(judgedReading(id, a) - judgedReading(id, b));
  const turned = Math.abs(a.readings.shaftPlane - b.readings.shaftPlane);
  return apart <= SAME && !(id === 'leadArmParallel' && turned > SAME_DIRECTION);
}

/** How a plate fills a picture of this size. */
export interface Fitting {
  readonly view: Box;
  /** css px for a unit. */
  readonly pxPerUnit: number;
  readonly letters: Lettering;
}

/** Scales that differ by less share their lettering, so that a window being resized does not redraw at every pixel. */
const GRAIN = 0.01;

/** Fits a plate into a picture (css px): all of it with its captions, or, where that would be too small, its heart alone. */
export function fitPicture(
  id: CheckpointId,
  size: { readonly width: number; readonly height: number } | undefined,
): Fitting {
  const fit = ({ left, top, right, bottom }: Box): number =>
    size ? Math.min(size.width / (right - left), size.height / (bottom - top)) : 1;
  const isBare = fit(SHEET) < BARE_BELOW;
  const view = isBare ? (id === 'leadArmParallel' ? LEAD_ARM_BARE : SHAFT_BARE) : SHEET;
  const pxPerUnit = fit(view);
  return { view, pxPerUnit, letters: letteringAt(Math.max(0.2, Math.floor(pxPerUnit / GRAIN) * GRAIN), isBare) };
}
