import type { Pose } from '../../model/pose';
import { standCamera, USUAL_TRIPODS, type Address, type CameraView, type Tripod } from './camera';
import { readThrough, type CameraReadingId, type ThroughLens, type Unseen } from './cameraReadings';

/** What about a tripod bends a reading most: one part of how it is set up, or that it stands no farther away. */
export type BendCause = 'offset' | 'height' | 'aim' | 'roll' | 'distance';
export type Bent = ThroughLens & { readonly cause: BendCause };

const PARTS = ['offset', 'height', 'aim', 'roll'] as const;

/**
 * A reading through a tripod, rad or m, and what bends it most: the part that, put back to where it usually is, takes most of the bend
 * away. When none takes half of it, it is the distance: a camera anywhere near bends something.
 */
export function readWithCause(
  view: CameraView,
  id: CameraReadingId,
  tripod: Tripod,
  address: Address,
  pose: Pose,
): Bent | Unseen {
  const through = (at: Tripod): ThroughLens | Unseen => readThrough(id, standCamera(view, at, address), pose);
  const read = through(tripod);
  if ('missing' in read) return read;
  let cause: BendCause = 'distance';
  let most = Math.abs(read.bend) / 2;
  for (const part of PARTS) {
    const without = through({ ...tripod, [part]: USUAL_TRIPODS[view][part] });
    if ('missing' in without) continue;
    const takesAway = (read.bend - without.bend) * Math.sign(read.bend);
    if (takesAway > most) [most, cause] = [takesAway, part];
  }
  return { ...read, cause };
}
