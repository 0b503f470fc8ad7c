import { bodyOf } from '../../src/model/body';
import { AT, createPose } from '../../src/model/chain';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { K } from '../../src/model/keys';
import { STILL, type Movements } from '../../src/model/movements';
import {
  standCamera,
  USUAL_TRIPODS,
  type Address,
  type CameraView,
  type Tripod,
} from '../../src/reading/camera/camera';
import { readThrough, type CameraReadingId, type ThroughLens } from '../../src/reading/camera/cameraReadings';
import {
  isReached,
  readCheckpoints,
  type CheckpointId,
  type Checkpoints,
  type Reached,
} from '../../src/reading/checkpoints';
import { createSwing, swingPose, withMovements } from '../../src/reading/swing';
import { findShipped } from '../../src/solving/reference/shipped';

/** A swing of a player of 1.78 m, and what a camera is set up by. */
export function filmed(movements: Partial<Movements> = {}, clubId: ClubId = '7-iron') {
  const body = bodyOf({ statureM: 1.78, handed: 'right' });
  const club = clubOf(CLUBS[clubId]);
  const reference = findShipped(body, club)!;
  const swing = withMovements(createSwing(body, club, reference), { ...STILL, ...movements });
  const pose = createPose();
  swingPose(swing, swing.curves.times[K.address], pose);
  const [x, y, z] = pose.subarray(AT.leadGrip, AT.leadGrip + 3);
  const address: Address = { hands: [x, y, z], ball: reference.ballPoint };
  return { address, checkpoints: readCheckpoints(swing) };
}

export const at = (checkpoints: Checkpoints, id: CheckpointId): Reached => {
  const checkpoint = checkpoints[id];
  if (!isReached(checkpoint)) throw new Error(checkpoint.missing);
  return checkpoint;
};

/** A tripod where the trade puts it, but for what is given. */
export const tripodOf = (view: CameraView, part: Partial<Tripod> = {}): Tripod => ({ ...USUAL_TRIPODS[view], ...part });

const FACE_ON: readonly CameraReadingId[] = ['armAngle', 'shaftAngle', 'trunkLean'];
export const viewOf = (id: CameraReadingId): CameraView => (FACE_ON.includes(id) ? 'faceOn' : 'downTheLine');

/** A reading at a checkpoint through a camera that has to see it. */
export function through(
  { address, checkpoints }: ReturnType<typeof filmed>,
  checkpoint: CheckpointId,
  id: CameraReadingId,
  part: Partial<Tripod> = {},
): ThroughLens {
  const view = viewOf(id);
  const read = readThrough(id, standCamera(view, tripodOf(view, part), address), at(checkpoints, checkpoint).pose);
  if ('missing' in read) throw new Error(read.missing);
  return read;
}
