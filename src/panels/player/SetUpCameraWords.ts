import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { CameraView } from '../../reading/camera/camera';
import { throughCameras, useDerived, useDesk, type ThroughCameras } from '../../store';
import {
  CHECKPOINT_NAMES,
  isWorthMoving,
  nameFaceOn,
  sayBend,
  sayCheckpoint,
  sayFaceOn,
  sayFront,
  sayLine,
  sayMisjudged,
  sayMove,
  sayMoveFront,
  sayTurn,
  sayUnseen,
  sayWhyWithheld,
  TOO_NARROW,
} from '../../words';

/** One reading: without a camera, off its picture, and the difference. */
export interface CameraRow {
  readonly name: string;
  readonly own: string;
  readonly seen: string;
  readonly bend: string;
}

/** What a camera makes of the swing, in words. */
export interface CameraWords {
  readonly lead: string;
  readonly notes: readonly string[];
  readonly rows: readonly CameraRow[];
  /** How it is mended; empty when there is nothing to mend. */
  readonly mend: readonly string[];
  /** Where it would read true; null when no such place is told. */
  readonly better: ThroughCameras['better'];
}

/** What is said about the camera of a view. */
export function useCameraWords(view: CameraView): CameraWords {
  const line = useLine();
  const front = useFront();
  const withheld = useDerived((derived) => (derived.isWithheld ? sayWhyWithheld(derived) : undefined));
  if (withheld !== undefined) return { lead: withheld, notes: [], rows: [], mend: [], better: null };
  return view === 'downTheLine' ? line : front;
}

function useLine(): CameraWords {
  const { downTheLine, better } = useDesk(throughCameras);
  const tripod = useDesk(({ document }) => document.camera.downTheLine);
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived((derived) => derived.bands);
  const checkpoints = useDerived((derived) => derived.checkpoints);
  const all = CHECKPOINT_IDS.map((at) => {
    const { judged: read, asSeen } = downTheLine[at];
    const own = sayCheckpoint(at, checkpoints[at], bands, units);
    return { at, read, own, seen: sayCheckpoint(at, asSeen, bands, units) };
  });
  const rows = all.map(({ at, read, own, seen }): CameraRow => {
    const name = CHECKPOINT_NAMES[at].title;
    if (!('bend' in read)) return { name, own: own.shortWhy, seen: sayUnseen(read), bend: '–' };
    return { name, own: own.shortWhy, seen: seen.shortWhy, bend: sayBend(read.bend, units) };
  });
  const misjudged = all.flatMap(({ at, read, own, seen }) =>
    'bend' in read ? (sayMisjudged(at, seen.word, own.word) ?? []) : [],
  );
  const isHeld = CHECKPOINT_IDS.every((id) => downTheLine[id].isHeld);
  const isBent = all.some(({ read }) => isWorthMoving(read));
  return {
    lead: sayLine(all, tripod, units),
    notes: isHeld ? misjudged : [...misjudged, TOO_NARROW],
    rows,
    mend: isBent ? sayMove(tripod, better, units) : [],
    better: isBent ? better : null,
  };
}

function useFront(): CameraWords {
  const { faceOn, isFaceOnHeld } = useDesk(throughCameras);
  const tripod = useDesk(({ document }) => document.camera.faceOn);
  const units = useDesk(({ document }) => document.units);
  const rows = faceOn.map(({ at, id, read }): CameraRow => {
    const name = nameFaceOn(id, at);
    if (!('bend' in read)) return { name, own: '–', seen: sayUnseen(read), bend: '–' };
    const own = sayFaceOn(id, read.seen - read.bend);
    return { name, own, seen: sayFaceOn(id, read.seen), bend: sayTurn(id, read.bend) };
  });
  return {
    lead: sayFront(faceOn, tripod, units),
    notes: isFaceOnHeld ? [] : [TOO_NARROW],
    rows,
    mend: sayMoveFront(tripod, units),
    better: null,
  };
}
