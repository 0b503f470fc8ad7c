import { CHECKPOINT_IDS, CHECKPOINTS } from '../../reading/checkpointTable';
import type { Pose } from '../../model/pose';
import type { Player } from '../../model/body';
import { holdsPose, standCamera, type Address, type CameraView, type Tripod } from '../../reading/camera/camera';
import { readWithCause, type Bent } from '../../reading/camera/cameraCause';
import { findTruePlace } from '../../reading/camera/cameraPlace';
import { readThrough, type CameraReadingId, type Unseen } from '../../reading/camera/cameraReadings';
import {
  isReached,
  type Checkpoint,
  type CheckpointId,
  type Checkpoints,
  type NotReached,
} from '../../reading/checkpoints';
import { addressOf } from '../../reading/camera/honest';
import type { Swing } from '../../reading/swing';
import { toTripod, type Cameras } from '../document/cameras';
import type { Derived } from './derived';
import { remember } from './remember';
import type { DeskState } from '../desk/state';

/** A checkpoint through a camera. */
interface CheckpointThrough {
  /** The reading the checkpoint is judged by, down the line. */
  readonly judged: Bent | Unseen | NotReached;
  /** As a coach would read it off the picture: the same checkpoint with the readings that are visible there. */
  readonly asSeen: Checkpoint;
  /** The picture holds all that is read on it. */
  readonly isHeld: boolean;
}

/** One of what is read face on, rad: arm at lead arm parallel, shaft at shaft parallel, trunk at both. */
interface FaceOnReading {
  readonly at: CheckpointId;
  readonly id: CameraReadingId;
  readonly read: Bent | Unseen | NotReached;
}

export interface ThroughCameras {
  readonly downTheLine: { readonly [id in CheckpointId]: CheckpointThrough };
  readonly faceOn: readonly FaceOnReading[];
  readonly isFaceOnHeld: boolean;
  /** Where the camera down the line would read this swing true; right as the coach sees it, m. */
  readonly better: { readonly rightCm: number; readonly heightM: number; readonly worst: number } | null;
}

const FACE_ON: readonly (readonly [CheckpointId, CameraReadingId])[] = [
  ['leadArmParallel', 'armAngle'],
  ['leadArmParallel', 'trunkLean'],
  ['shaftParallel', 'shaftAngle'],
  ['shaftParallel', 'trunkLean'],
];

function seeCheckpoint(id: CheckpointId, checkpoint: Checkpoint, tripod: Tripod, address: Address): CheckpointThrough {
  if (!isReached(checkpoint)) return { judged: checkpoint, asSeen: checkpoint, isHeld: true };
  const { pose, readings } = checkpoint;
  const judged = readWithCause('downTheLine', CHECKPOINTS[id].judged, tripod, address, pose);
  const lens = standCamera('downTheLine', tripod, address);
  const plane = readThrough('shaftPlane', lens, pose);
  const asSeen = {
    ...checkpoint,
    readings: {
      ...readings,
      ...('seen' in judged ? { [CHECKPOINTS[id].judged]: judged.seen } : {}),
      ...('seen' in plane ? { shaftPlane: plane.seen } : {}),
    },
  };
  return { judged, asSeen, isHeld: holdsPose(lens, pose) };
}

const poseAt = (checkpoint: Checkpoint): Pose | undefined => (isReached(checkpoint) ? checkpoint.pose : undefined);

/** Works out what the coach's cameras make of the swing that is drawn. Once per change; asking again is free. */
export function createCameraReader(derive: (state: DeskState) => Derived): (state: DeskState) => ThroughCameras {
  const read = remember((checkpoints: Checkpoints, reference: Swing, player: Player, camera: Cameras) =>
    look(checkpoints, addressOf(reference), player.handed === 'left' ? -1 : 1, (view) =>
      toTripod(camera[view], player),
    ),
  );
  return (state) => {
    const { checkpoints, referenceSwing, player } = derive(state);
    return read(checkpoints, referenceSwing, player, state.document.camera);
  };
}

function look(
  checkpoints: Checkpoints,
  address: Address,
  side: 1 | -1,
  tripodOf: (view: CameraView) => Tripod,
): ThroughCameras {
  const [line, front] = [tripodOf('downTheLine'), tripodOf('faceOn')];
  const see = (id: CheckpointId): CheckpointThrough => seeCheckpoint(id, checkpoints[id], line, address);
  const lens = standCamera('faceOn', front, address);
  const faceOn = FACE_ON.map(([at, id]): FaceOnReading => {
    const checkpoint = checkpoints[at];
    return {
      at,
      id,
      read: isReached(checkpoint) ? readWithCause('faceOn', id, front, address, checkpoint.pose) : checkpoint,
    };
  });
  const place = findTruePlace(line, address, {
    leadArmParallel: poseAt(checkpoints.leadArmParallel),
    shaftParallel: poseAt(checkpoints.shaftParallel),
  });
  return {
    downTheLine: { leadArmParallel: see('leadArmParallel'), shaftParallel: see('shaftParallel') },
    faceOn,
    isFaceOnHeld: CHECKPOINT_IDS.every((id) => !isReached(checkpoints[id]) || holdsPose(lens, checkpoints[id].pose)),
    better: place
      ? { rightCm: Math.round(side * place.offset * 100) + 0, heightM: place.height, worst: place.worst }
      : null,
  };
}
