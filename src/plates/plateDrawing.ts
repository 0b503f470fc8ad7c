import type { Pose } from '../model/chain';
import { isReached, type Checkpoint, type CheckpointId } from '../reading/checkpoints';
import { judgedReading, verdictAt, type Bands } from '../reading/verdicts';
import { sayCheckpoint, type CheckpointWords, type Units } from '../words';
import type { Stance } from '../figure/place';
import type { Annotation, OtherLine } from './annotation';
import { drawBody, type DrawnPart, type PlateFigure } from './body';
import { SHEET, type Box, type Frame } from './frame';
import { annotateLeadArm, LEAD_ARM_BARE, leadArmFrame } from './leadArmPlate';
import { BARE_BELOW, letteringAt, type Lettering } from './lettering';
import { annotateShaft, SHAFT_BARE, shaftFrame } from './shaftPlate';

/** What a plate is drawn from. */
export interface PlateOf {
  readonly id: CheckpointId;
  readonly plate: PlateFigure;
  readonly checkpoint: Checkpoint;
  readonly stance: Stance;
  readonly bands: Bands;
  readonly units: Pick<Units, 'length'>;
  readonly handed: 'right' | 'left';
  /** The same checkpoint of the reference, and of a swing held for comparison. */
  readonly reference: Checkpoint | undefined;
  readonly ghost: Checkpoint | undefined;
  readonly letters: Lettering;
  readonly engraving: boolean;
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

/** A plate as shapes; nothing where the checkpoint was not reached. */
export function plateDrawing(
  of: PlateOf,
  words: CheckpointWords = sayCheckpoint(of.id, of.checkpoint, of.bands, of.units),
): PlateDrawing | undefined {
  const { id, checkpoint, bands, handed, letters } = of;
  if (!isReached(checkpoint) || words.verdict === 'missing') return undefined;
  const { pose } = checkpoint;
  const side = handed === 'left' ? -1 : 1;
  const frame = id === 'leadArmParallel' ? leadArmFrame(pose, side) : shaftFrame(pose, side);
  const measured = {
    verdict: verdictAt(id, checkpoint, bands),
    value: judgedReading(id, checkpoint),
    band: bands[id],
    number: words.number,
    unit: words.unit,
  };
  const annotate = id === 'leadArmParallel' ? annotateLeadArm : annotateShaft;
  return {
    frame,
    parts: drawBody(of.plate, pose, of.stance, frame, of.engraving),
    annotation: annotate(pose, frame, measured, othersOf(of), letters, of.units.length),
  };
}

function othersOf({ id, checkpoint, reference, ghost }: PlateOf): { kind: OtherLine['kind']; pose: Pose }[] {
  if (!isReached(checkpoint)) return [];
  const own = judgedReading(id, checkpoint);
  const lines: { kind: OtherLine['kind']; pose: Pose }[] = [];
  for (const [kind, other] of [
    ['reference', reference],
    ['ghost', ghost],
  ] as const) {
    if (!other || !isReached(other)) continue;
    const apart = Math.abs(judgedReading(id, other) - own);
    const turned = Math.abs(other.readings.shaftPlane - checkpoint.readings.shaftPlane);
    if (apart > SAME || (id === 'leadArmParallel' && turned > SAME_DIRECTION)) lines.push({ kind, pose: other.pose });
  }
  return lines;
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
