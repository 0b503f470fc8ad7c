import { createHonestReader } from '../../reading/camera/honest';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Player } from '../../model/body';
import type { Swing } from '../../reading/swing';
import { CAMERA_FIELDS, toTripod, USUAL_CAMERAS, type CameraPlace } from '../document/cameras';
import type { Seen, Sighting } from '../document/sighting';
import { remember } from './remember';

/** A mark as it counts: what was seen, less what the coach's camera made of it. */
export interface HonestSighting {
  readonly cm: number;
  readonly plusMinusCm: number;
  /** The camera was reckoned in: the number that was seen is another. */
  readonly isCorrected: boolean;
}
export type HonestSeen = { readonly [id in CheckpointId]: HonestSighting | null };

/** A camera that nobody has placed is not known: nothing can be said about its film. */
const isPlaced = (place: CameraPlace): boolean =>
  CAMERA_FIELDS.some((field) => place[field] !== USUAL_CAMERAS.downTheLine[field]);

const toCm = (metres: number): number => Number((metres * 100).toFixed(2)) + 0;

/** Reckons the camera down the line into marks; once per change. `swing`: player, club and reference swing. */
export function createHonestSeen() {
  const readerFor = remember((swing: Swing, place: CameraPlace, player: Player, armAngle: number) =>
    createHonestReader(swing, toTripod(place, player), armAngle),
  );
  return remember((seen: Seen, place: CameraPlace, player: Player, swing: Swing, armAngle: number): HonestSeen => {
    const correct = (id: CheckpointId, mark: Sighting): HonestSighting => {
      const { cm, plusMinusCm } = mark;
      const asSeen = { cm, plusMinusCm, isCorrected: false };
      if (mark.from === 'film' || !isPlaced(place)) return asSeen;
      const off = { value: cm / 100, plusMinus: plusMinusCm / 100 };
      const honest = readerFor(swing, place, player, armAngle).read(id, off);
      return honest ? { cm: toCm(honest.value), plusMinusCm: toCm(honest.plusMinus), isCorrected: true } : asSeen;
    };
    const one = (id: CheckpointId): HonestSighting | null => seen[id] && correct(id, seen[id]);
    const [arm, shaft] = CHECKPOINT_IDS.map(one);
    return { leadArmParallel: arm, shaftParallel: shaft };
  });
}
