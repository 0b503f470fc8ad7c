import type { Rad } from '../../math/angle';
import { AT, type Pose } from '../../model/pose';
import { findImage, type CameraView, type Image, type Lens } from './camera';
import { bicepGap, headDepth, shaftPlane } from '../readings';

/** Why a reading cannot be taken off a picture: a point of it is behind the camera, or a line of it points straight at the camera. */
export interface Unseen {
  readonly missing: 'behind-the-camera' | 'end-on';
}

/** A reading taken off a picture, and how far the camera bends it: as seen minus orthographic. Radians or metres. */
export interface ThroughLens {
  readonly seen: number;
  readonly bend: number;
}

/**
 * What a coach reads off a picture. Down the line: `bicepGap`, `headDepth` (m) and `shaftPlane` (rad), senses as in the single readings;
 * the aim of the shaft is not visible there. Face on, rad: `armAngle`, lead arm against the horizontal, + hands above the shoulder;
 * `shaftAngle`, shaft against the horizontal, + head above the hands, both zero pointing away from the target; `trunkLean`, trunk against
 * the vertical, + away from the target.
 */
export type CameraReadingId = 'bicepGap' | 'headDepth' | 'shaftPlane' | 'armAngle' | 'shaftAngle' | 'trunkLean';

type Point = 'leadGrip' | 'head' | 'bicep' | 'leadShoulder' | 'pelvis' | 'midShoulder';

interface CameraReading {
  readonly view: CameraView;
  readonly points: readonly Point[];
  /** The two points whose images make the line that is read; absent where none is. */
  readonly line?: readonly [Point, Point];
  readonly isAngle: boolean;
  readonly see: (image: Readonly<Record<Point, Image>>) => number;
  /** The same without a camera. */
  readonly own: (pose: Pose) => number;
}

/** Angle above the horizontal of a line that points away from the target, in the picture. */
const rise = (from: Image, to: Image): Rad => Math.atan2(to.up - from.up, from.right - to.right);

/** Lengths are measured with the scale of the picture at the depth of the hands, along the line of sight. */
const READINGS: Readonly<Record<CameraReadingId, CameraReading>> = {
  bicepGap: {
    view: 'downTheLine',
    points: ['leadGrip', 'head', 'bicep'],
    line: ['leadGrip', 'head'],
    isAngle: false,
    see: ({ leadGrip, head, bicep }) => {
      const across = head.right - leadGrip.right;
      const up = head.up - leadGrip.up;
      const off = (bicep.up - leadGrip.up) * across - (bicep.right - leadGrip.right) * up;
      return (off / Math.hypot(across, up)) * leadGrip.depth;
    },
    own: bicepGap,
  },
  headDepth: {
    view: 'downTheLine',
    points: ['leadGrip', 'head'],
    isAngle: false,
    see: ({ leadGrip, head }) => (head.right - leadGrip.right) * leadGrip.depth,
    own: headDepth,
  },
  shaftPlane: {
    view: 'downTheLine',
    points: ['leadGrip', 'head'],
    line: ['leadGrip', 'head'],
    isAngle: true,
    see: ({ leadGrip, head }) => Math.atan2(head.up - leadGrip.up, leadGrip.right - head.right),
    own: shaftPlane,
  },
  armAngle: {
    view: 'faceOn',
    points: ['leadShoulder', 'leadGrip'],
    line: ['leadShoulder', 'leadGrip'],
    isAngle: true,
    see: ({ leadShoulder, leadGrip }) => rise(leadShoulder, leadGrip),
    own: (p) => Math.atan2(p[AT.armDirection + 1], -p[AT.armDirection]),
  },
  shaftAngle: {
    view: 'faceOn',
    points: ['leadGrip', 'head'],
    line: ['leadGrip', 'head'],
    isAngle: true,
    see: ({ leadGrip, head }) => rise(leadGrip, head),
    own: (p) => Math.atan2(p[AT.shaftDirection + 1], -p[AT.shaftDirection]),
  },
  trunkLean: {
    view: 'faceOn',
    points: ['pelvis', 'midShoulder'],
    line: ['pelvis', 'midShoulder'],
    isAngle: true,
    see: ({ pelvis, midShoulder }) => Math.atan2(pelvis.right - midShoulder.right, midShoulder.up - pelvis.up),
    own: (p) => Math.atan2(p[AT.pelvis] - p[AT.midShoulder], p[AT.midShoulder + 1] - p[AT.pelvis + 1]),
  },
};

/** Images closer together than this, on the scale of the nearer end, make no line, m. */
const ONE_POINT = 1e-6;

/** A reading as a coach takes it off the picture of this lens: rad or m, or why he cannot. */
export function seeReading(id: CameraReadingId, lens: Lens, pose: Pose): number | Unseen {
  const { points, line, see } = READINGS[id];
  const images = {} as Record<Point, Image>;
  for (const point of points) {
    const image = findImage(lens, pose, AT[point]);
    if (!image) return { missing: 'behind-the-camera' };
    images[point] = image;
  }
  if (line) {
    const [a, b] = [images[line[0]], images[line[1]]];
    const depth = Math.min(a.depth, b.depth);
    if (!(Math.hypot(a.right - b.right, a.up - b.up) * depth > ONE_POINT)) return { missing: 'end-on' };
  }
  return see(images);
}

/** The same reading without a camera: orthographic, rad or m. Not a number where its line points along the view. */
export const ownReading = (id: CameraReadingId, pose: Pose): number => READINGS[id].own(pose);

/** The difference of two angles, within half a turn, rad. */
const turned = (to: Rad, from: Rad): Rad => Math.atan2(Math.sin(to - from), Math.cos(to - from));

/**
 * A reading through a camera and how far it is bent. Positive down the line: read steeper than it is (line too high, head too far in
 * front). Positive face on: read too high, or leaning too far.
 */
export function readThrough(id: CameraReadingId, lens: Lens, pose: Pose): ThroughLens | Unseen {
  const seen = seeReading(id, lens, pose);
  if (typeof seen !== 'number') return seen;
  const own = ownReading(id, pose);
  if (!Number.isFinite(own)) return { missing: 'end-on' };
  return { seen, bend: READINGS[id].isAngle ? turned(seen, own) : seen - own };
}
