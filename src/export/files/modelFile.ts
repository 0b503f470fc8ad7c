import {
  AnimationClip,
  Color,
  Group,
  InterpolateLinear,
  Matrix4,
  Mesh,
  MeshStandardMaterial,
  Quaternion,
  QuaternionKeyframeTrack,
  Vector3,
  VectorKeyframeTrack,
  type KeyframeTrack,
} from 'three';
import { createFigure } from '../../figure/figure';
import { createPlacement, MATRIX_SIZE, PART_IDS } from '../../figure/partIds';
import { placeFigure } from '../../figure/place';
import { BALL_RADIUS, heelLiftAt, placeBall } from '../../figure/stance';
import { createPose } from '../../model/chain';
import { K } from '../../model/keys';
import { drawnPose, swingPose } from '../../reading/swing';
import { ballGeometry, partGeometries } from '../../scene/figure/partGeometries';
import type { Surface } from '../../scene/figure/solids';
import { ILLUSTRATION } from '../../words';
import { toMarked } from './embedded';
import type { ExportSnapshot, ShownSwing } from '../task/exportSnapshot';

/** Pictures a second of the player's own time; the ten positions have theirs exactly. */
const RATE = 120;

const LOOKS: Readonly<Record<Surface | 'ball', { colour: string; metalness: number; roughness: number }>> = {
  beech: { colour: '#cfa56e', metalness: 0, roughness: 0.56 },
  walnut: { colour: '#744c33', metalness: 0, roughness: 0.5 },
  dark: { colour: '#2b2723', metalness: 0, roughness: 0.82 },
  steel: { colour: '#b9bdbf', metalness: 1, roughness: 0.22 },
  head: { colour: '#b3b8bb', metalness: 1, roughness: 0.36 },
  brass: { colour: '#c79a3e', metalness: 1, roughness: 0.28 },
  ball: { colour: '#fffdf6', metalness: 0, roughness: 0.35 },
};

/**
 * The figure with its club as an animated model in binary glTF 2.0: a node a part, moved by keys of translation, rotation and, where a
 * part spans a changing gap, scale. Seconds of the player's own time from address on; metres; +Y up, +X toward the target.
 */
export async function toModelFile(subject: ExportSnapshot, take: ShownSwing): Promise<Blob> {
  const { GLTFExporter } = await import('three/addons/exporters/GLTFExporter.js');
  const { root, clip, dispose } = buildModel(subject, take);
  try {
    const out = await new GLTFExporter().parseAsync(root, { binary: true, animations: [clip], onlyVisible: false });
    if (!(out instanceof ArrayBuffer)) throw new Error('The model file came out as text.');
    return new Blob([out], { type: 'model/gltf-binary' });
  } finally {
    dispose();
  }
}

interface Model {
  readonly root: Group;
  readonly clip: AnimationClip;
  readonly dispose: () => void;
}

function buildModel({ derived, document }: ExportSnapshot, { swing, positions, label }: ShownSwing): Model {
  const { body, club, player } = derived;
  const figure = createFigure(body, club);
  const materials = new Map(
    (Object.keys(LOOKS) as (Surface | 'ball')[]).map((surface) => {
      const { colour, ...rest } = LOOKS[surface];
      return [surface, new MeshStandardMaterial({ name: surface, color: new Color(colour), ...rest })] as const;
    }),
  );
  const root = new Group();
  root.name = 'Slantwise';
  root.userData = { slantwise: toMarked(document), note: ILLUSTRATION };
  if (player.handed === 'left') root.scale.z = -1;
  const geometries = partGeometries(figure);
  PART_IDS.forEach((id, part) => {
    const node = new Group();
    node.name = id;
    for (const { surface, geometry } of geometries[part]) node.add(new Mesh(geometry, materials.get(surface)));
    root.add(node);
  });
  const pose = createPose();
  swingPose(derived.referenceSwing, derived.referenceSwing.curves.times[K.impact], pose);
  const ball = placeBall(club, pose, new Float64Array(3));
  const ballMesh = new Mesh(ballGeometry(BALL_RADIUS), materials.get('ball'));
  ballMesh.name = 'ball';
  ballMesh.position.set(ball[0], ball[1], ball[2]);
  root.add(ballMesh);

  const { times } = swing.curves;
  const instants = instantsOf(times[K.address], times[K.finish], swing.tempo, Object.values(positions));
  const placements = instants.map((t) => {
    const placement = createPlacement();
    drawnPose(swing, t, pose);
    placeFigure(figure, pose, { ballPoint: ball, heelLift: heelLiftAt(swing, t) }, placement);
    return placement;
  });
  const seconds = instants.map((t) => (t - times[K.address]) * swing.tempo);
  const tracks = PART_IDS.flatMap((id, part) => tracksOf(id, part, seconds, placements));
  return {
    root,
    clip: new AnimationClip(label, -1, tracks),
    dispose: () => {
      for (const { geometry } of [...geometries.flat(), ballMesh]) geometry.dispose();
      for (const material of materials.values()) material.dispose();
    },
  };
}

function instantsOf(from: number, to: number, tempo: number, extra: readonly (number | null)[]): number[] {
  const count = Math.ceil((to - from) * tempo * RATE);
  const even = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  const own = extra.filter((t): t is number => t !== null && t >= from && t <= to);
  // A position next to an even instant takes its place: keys too close together would be one in single precision.
  const kept = even.filter((t) => !own.some((other) => Math.abs(other - t) < 1e-4));
  return [...kept, ...own].toSorted((a, b) => a - b).filter((t, i, all) => i === 0 || t - all[i - 1] > 1e-5);
}

function tracksOf(
  id: string,
  part: number,
  seconds: readonly number[],
  placements: readonly Float64Array[],
): KeyframeTrack[] {
  const matrix = new Matrix4();
  const place = new Vector3();
  const turn = new Quaternion();
  const last = new Quaternion();
  const size = new Vector3();
  const [places, turns, sizes]: [number[], number[], number[]] = [[], [], []];
  placements.forEach((placement, i) => {
    const m = placement.subarray(part * MATRIX_SIZE);
    matrix.set(m[0], m[3], m[6], m[9], m[1], m[4], m[7], m[10], m[2], m[5], m[8], m[11], 0, 0, 0, 1);
    matrix.decompose(place, turn, size);
    // The same rotation has two quaternions; between neighbours the shorter way is meant.
    if (i > 0 && last.dot(turn) < 0) turn.set(-turn.x, -turn.y, -turn.z, -turn.w);
    last.copy(turn);
    places.push(place.x, place.y, place.z);
    turns.push(turn.x, turn.y, turn.z, turn.w);
    sizes.push(size.x, size.y, size.z);
  });
  const tracks: KeyframeTrack[] = [
    new VectorKeyframeTrack(`${id}.position`, [...seconds], places, InterpolateLinear),
    new QuaternionKeyframeTrack(`${id}.quaternion`, [...seconds], turns, InterpolateLinear),
  ];
  if (sizes.some((value) => Math.abs(value - 1) > 1e-6))
    tracks.push(new VectorKeyframeTrack(`${id}.scale`, [...seconds], sizes, InterpolateLinear));
  return tracks;
}
