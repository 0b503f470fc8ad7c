import { rad, type Rad } from '../../math/angle';
import { K } from '../../model/keys';
import { dialOf, STILL, type MovementId } from '../../model/movements';
import { AT, createPose, type Pose } from '../../model/pose';
import { CHECKPOINTS, type CheckpointId } from '../checkpointTable';
import { isReached, readCheckpoints } from '../checkpoints';
import { swingPose, withMovements, type Swing } from '../swing';
import { standCamera, type Address, type Tripod } from './camera';
import { readThrough } from './cameraReadings';

/** What was read off a picture down the line, m, with the margin of whoever read it. */
interface ReadOff {
  readonly value: number;
  readonly plusMinus: number;
}

/**
 * Movements whose swings stand in for the one that was filmed: which of them bent it is not known, so the reading is turned back through each, and
 * how far they disagree is doubt.
 */
const FAMILIES: readonly MovementId[] = ['leadWristFlexion', 'rotationDelay', 'trailSideBend'];
/** Swings of a family that are looked at; in between is interpolated. */
const SWINGS = 9;

/** How well a tripod's place is typed, two standard deviations (our choice): a tenth of the way, a hand's breadth, a careful aim. */
const TYPED_TO: readonly ((tripod: Tripod) => Tripod)[] = [
  (tripod) => ({ ...tripod, distance: tripod.distance * 1.1 }),
  (tripod) => ({ ...tripod, height: tripod.height + 0.1 }),
  (tripod) => ({ ...tripod, offset: tripod.offset + 0.1 }),
  (tripod) => ({ ...tripod, aim: tripod.aim + rad(2) }),
  (tripod) => ({ ...tripod, roll: tripod.roll + rad(1) }),
];

/** Hands at address and the ball: what a tripod is set up by. */
export function addressOf(swing: Swing): Address {
  const pose = createPose();
  swingPose(swing, swing.curves.times[K.address], pose);
  const at = AT.leadGrip;
  return { hands: [pose[at], pose[at + 1], pose[at + 2]], ball: swing.reference.ballPoint };
}

/** A swing of a family at the checkpoint: its reading as a camera sees it and as it is, m. */
interface Sample {
  readonly seen: number;
  readonly own: number;
  readonly pose: Pose;
}

/** Turns readings of one player's film into what a camera would have shown that bends nothing. */
export interface HonestReader {
  /** Undefined where the film shows nothing of this checkpoint: then the reading stands as it is. */
  readonly read: (id: CheckpointId, off: ReadOff) => ReadOff | undefined;
}

/**
 * A reader for a player and club (`swing`; its movements do not matter) filmed down the line from `tripod`. The answer's margin holds three
 * things, added as squares: the coach's own, half of how far the families disagree, and how well the tripod's place is known.
 */
export function createHonestReader(swing: Swing, tripod: Tripod, armAngle: Rad): HonestReader {
  const address = addressOf(swing);
  const lens = standCamera('downTheLine', tripod, address);
  const tables = new Map<CheckpointId, readonly (readonly Sample[])[]>();

  const sampleFamily = (id: CheckpointId, dial: MovementId): readonly Sample[] => {
    const { min, max } = dialOf(dial);
    return Array.from({ length: SWINGS }, (_, i) => min + (i * (max - min)) / (SWINGS - 1)).flatMap((value) => {
      const checkpoint = readCheckpoints(withMovements(swing, { ...STILL, [dial]: value }), armAngle)[id];
      if (!isReached(checkpoint)) return [];
      const through = readThrough(CHECKPOINTS[id].judged, lens, checkpoint.pose);
      if (!('seen' in through)) return [];
      return [{ seen: through.seen, own: through.seen - through.bend, pose: checkpoint.pose }];
    });
  };
  const tableOf = (id: CheckpointId): readonly (readonly Sample[])[] => {
    const known =
      tables.get(id) ?? FAMILIES.map((dial) => sampleFamily(id, dial)).filter((family) => family.length > 1);
    tables.set(id, known);
    return known;
  };

  const placeDoubt = (id: CheckpointId, pose: Pose): number => {
    const bendFrom = (from: Tripod): number => {
      const through = readThrough(CHECKPOINTS[id].judged, standCamera('downTheLine', from, address), pose);
      return 'bend' in through ? through.bend : NaN;
    };
    const here = bendFrom(tripod);
    const shifts = TYPED_TO.map((move) => bendFrom(move(tripod)) - here);
    return Math.hypot(...shifts.filter(Number.isFinite));
  };

  return {
    read(id, { value, plusMinus }) {
      const found = tableOf(id).map((family) => ownAt(family, value));
      if (found.length === 0) return undefined;
      const owns = found.map(({ own }) => own);
      const [low, high] = [Math.min(...owns), Math.max(...owns)];
      const middle = owns.reduce((sum, own) => sum + own, 0) / owns.length;
      const margin = Math.hypot(plusMinus, (high - low) / 2, placeDoubt(id, found[0].near.pose));
      return { value: middle, plusMinus: margin };
    },
  };
}

/** What a family reads where a camera sees `seen`: interpolated; past the ends with the bend of the end. */
function ownAt(family: readonly Sample[], seen: number): { readonly own: number; readonly near: Sample } {
  const near = family.reduce((best, one) => (Math.abs(one.seen - seen) < Math.abs(best.seen - seen) ? one : best));
  for (let i = 1; i < family.length; i++) {
    const [a, b] = [family[i - 1], family[i]];
    if ((a.seen - seen) * (b.seen - seen) > 0 || a.seen === b.seen) continue;
    const share = (seen - a.seen) / (b.seen - a.seen);
    return { own: a.own + share * (b.own - a.own), near };
  }
  return { own: seen - (near.seen - near.own), near };
}
