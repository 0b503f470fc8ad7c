// The reference swing beside a recorded one, angle by angle through the downswing. Both are measured alike, from the places of joints.
import { toDeg } from '../../src/math/angle';
import { AT, createPose } from '../../src/model/pose';
import { impactOf, swingPose, type Swing } from '../../src/reading/swing';
import { RECORDED_ADDRESS, RECORDED_DOWNSWING, RECORDED_JOINTS } from './recordedFrames';

type Vec = readonly [number, number, number];
type Matrix = readonly [Vec, Vec, Vec];

/** The joints that are measured, in the frame of the chain: +X to the target, +Y up, +Z to the ball. Any unit of length. */
interface Places {
  readonly leadHip: Vec;
  readonly trailHip: Vec;
  readonly pelvis: Vec;
  /** Where the trunk ends: between the shoulders of the model, at the foot of the recorded neck. */
  readonly trunkTop: Vec;
  readonly leadShoulder: Vec;
  readonly trailShoulder: Vec;
  readonly leadHand: Vec;
}

/** What is compared, deg. Turns are seen from above, zero at the target line, positive open to the target. */
const ANGLES = {
  'pelvis turn': ({ leadHip, trailHip }: Places) => headingDeg(minus(leadHip, trailHip)),
  'shoulder line turn': ({ leadShoulder, trailShoulder }: Places) => headingDeg(minus(leadShoulder, trailShoulder)),
  'shoulder line, lead side down': ({ leadShoulder, trailShoulder }: Places) =>
    -elevationDeg(minus(leadShoulder, trailShoulder)),
  'trunk bent forward': ({ trunkTop, pelvis }: Places) => {
    const [, y, z] = minus(trunkTop, pelvis);
    return toDeg(Math.atan2(z, y));
  },
  'trunk back from the target': ({ trunkTop, pelvis }: Places) => {
    const [x, y] = minus(trunkTop, pelvis);
    return toDeg(Math.atan2(-x, y));
  },
  'lead arm across': ({ leadShoulder, trailShoulder, leadHand }: Places) => {
    const [arm, line] = [unit(minus(leadHand, leadShoulder)), unit(minus(trailShoulder, leadShoulder))];
    return toDeg(Math.asin(arm[0] * line[0] + arm[1] * line[1] + arm[2] * line[2]));
  },
  'lead arm, seen from above': ({ leadShoulder, leadHand }: Places) => {
    const [x, , z] = minus(leadHand, leadShoulder);
    return toDeg(Math.atan2(z, -x));
  },
} satisfies Record<string, (places: Places) => number>;

type AngleName = keyof typeof ANGLES;

/** Heights of the lead arm, shoulder to hand, at which the swings are compared on the way down, deg above level. */
export const ARM_HEIGHTS_DEG = [30, 15, 0, -15, -30, -45, -60] as const;

const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const unit = (v: Vec): Vec => {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
};
const middle = (a: Vec, b: Vec): Vec => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
const headingDeg = ([x, , z]: Vec): number => toDeg(Math.atan2(-z, x));
const elevationDeg = (v: Vec): number => toDeg(Math.asin(unit(v)[1]));
const armHeightDeg = ({ leadShoulder, leadHand }: Places): number => elevationDeg(minus(leadHand, leadShoulder));

/** The places of a recorded frame, in the recording's own axes and unit. Offsets of its skeleton: as published with it. */
function skeletonOf(frame: readonly number[]): Places & { readonly leadAnkle: Vec; readonly trailAnkle: Vec } {
  const turned = (joint: (typeof RECORDED_JOINTS)[number], parent: Matrix): Matrix => {
    const at = 3 * RECORDED_JOINTS.indexOf(joint);
    return times(parent, rotation(frame[at], frame[at + 1], frame[at + 2]));
  };
  const pelvis: Vec = [0, 0, 0];
  const hips = turned('hips', IDENTITY);
  const leadHip = apply(hips, [1.58161, -1.81893, 0.78828]);
  const leadThigh = turned('leadThigh', hips);
  const leadKnee = plus(leadHip, apply(leadThigh, [2.53374, -6.96141, 0]));
  const leadAnkle = plus(leadKnee, apply(turned('leadShank', leadThigh), [2.63509, -7.23986, 0]));
  const trailHip = apply(hips, [-1.11138, -1.81893, 0.78828]);
  const trailThigh = turned('trailThigh', hips);
  const trailKnee = plus(trailHip, apply(trailThigh, [-2.58392, -7.09926, 0]));
  const trailAnkle = plus(trailKnee, apply(turned('trailShank', trailThigh), [-2.66423, -7.31992, 0]));
  const lowerBack = turned('lowerBack', hips);
  const spine = turned('spine', lowerBack);
  const upperSpine = turned('upperSpine', spine);
  const trunkTop = plus(apply(lowerBack, [-0.01511, 1.97958, -0.08829]), apply(spine, [0.08344, 1.97334, -0.0433]));
  const leadShoulder = plus(trunkTop, apply(upperSpine, [3.20667, 1.30156, -0.6024]));
  const trailShoulder = plus(trunkTop, apply(upperSpine, [-3.06877, 1.34672, -0.60964]));
  const upperArm = turned('leadUpperArm', upperSpine);
  const leadElbow = plus(leadShoulder, apply(upperArm, [4.95663, 0, 0]));
  const leadHand = plus(leadElbow, apply(turned('leadForearm', upperArm), [3.38177, 0, 0]));
  return { leadHip, trailHip, pelvis, trunkTop, leadShoulder, trailShoulder, leadHand, leadAnkle, trailAnkle };
}

const IDENTITY: Matrix = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Rows of Rz(a) Ry(b) Rx(c), angles in degrees as the recording writes them. */
function rotation(a: number, b: number, c: number): Matrix {
  const [za, yb, xc] = [a, b, c].map((deg) => (deg * Math.PI) / 180) as [number, number, number];
  const [ca, sa, cb, sb, cc, sc] = [za, yb, xc].flatMap((r) => [Math.cos(r), Math.sin(r)]) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return [
    [ca * cb, ca * sb * sc - sa * cc, ca * sb * cc + sa * sc],
    [sa * cb, sa * sb * sc + ca * cc, sa * sb * cc - ca * sc],
    [-sb, cb * sc, cb * cc],
  ];
}
const apply = (m: Matrix, v: Vec): Vec =>
  m.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as unknown as Vec;
const transposed = (m: Matrix): Matrix => [0, 1, 2].map((i) => m.map((row) => row[i as 0])) as unknown as Matrix;
const times = (a: Matrix, b: Matrix): Matrix => {
  const columns = transposed(b);
  return a.map((row) => columns.map((c) => row[0] * c[0] + row[1] * c[1] + row[2] * c[2])) as unknown as Matrix;
};

/** The recorded frames in the chain's axes: the target line lies along the feet at address. */
function recordedPlaces(): Places[] {
  const { leadAnkle, trailAnkle } = skeletonOf(RECORDED_ADDRESS);
  const [tx, , tz] = minus(leadAnkle, trailAnkle);
  const length = Math.hypot(tx, tz);
  const [x, z] = [tx / length, tz / length];
  const inChain = ([vx, vy, vz]: Vec): Vec => [vx * x + vz * z, vy, vz * x - vx * z];
  return RECORDED_DOWNSWING.map((frame) => {
    const { leadHip, trailHip, pelvis, trunkTop, leadShoulder, trailShoulder, leadHand } = skeletonOf(frame);
    return {
      leadHip: inChain(leadHip),
      trailHip: inChain(trailHip),
      pelvis: inChain(pelvis),
      trunkTop: inChain(trunkTop),
      leadShoulder: inChain(leadShoulder),
      trailShoulder: inChain(trailShoulder),
      leadHand: inChain(leadHand),
    };
  });
}

const pose = createPose();
const point = (at: number): Vec => [pose[at], pose[at + 1], pose[at + 2]];

/** The same joints of a swing at time `t`. The hand is the grip's centre; an arm of the model is straight. */
function placesOf(swing: Swing, t: number): Places {
  swingPose(swing, t, pose);
  const half: Vec = point(AT.pelvisAxes);
  const pelvis = point(AT.pelvis);
  return {
    leadHip: plus(pelvis, half),
    trailHip: minus(pelvis, half),
    pelvis,
    trunkTop: middle(point(AT.leadShoulder), point(AT.trailShoulder)),
    leadShoulder: point(AT.leadShoulder),
    trailShoulder: point(AT.trailShoulder),
    leadHand: point(AT.leadGrip),
  };
}

type Angles = Readonly<Record<AngleName, number>>;
const measure = (places: Places): Angles =>
  Object.fromEntries(Object.entries(ANGLES).map(([name, of]) => [name, of(places)])) as Record<AngleName, number>;

/** Angles on the way down where the lead arm stands at this height, between the two frames around it; `undefined`: never there. */
function anglesAt(frames: readonly Places[], heightDeg: number): Angles | undefined {
  const after = frames.findIndex(
    (f, i) => i > 0 && armHeightDeg(f) <= heightDeg && armHeightDeg(frames[i - 1]) > heightDeg,
  );
  if (after < 1) return undefined;
  const [before, then] = [frames[after - 1], frames[after]];
  const share = (armHeightDeg(before) - heightDeg) / (armHeightDeg(before) - armHeightDeg(then));
  const [a, b] = [measure(before), measure(then)];
  const names = Object.keys(ANGLES) as AngleName[];
  return Object.fromEntries(names.map((name) => [name, a[name] + share * (b[name] - a[name])])) as Angles;
}

/** One angle's differences, ours less the recording's, deg: at the top, then at each of `ARM_HEIGHTS_DEG` that both reach. */
export interface Compared {
  readonly name: AngleName;
  readonly differences: readonly (number | undefined)[];
}

/** Steps in which our downswing is looked at. */
const STEPS = 400;

/** A reference swing less the recorded one, angle by angle through the downswing, with root mean square and the worst of all. */
export function compareWithRecording(swing: Swing): {
  readonly angles: readonly Compared[];
  readonly rootMeanSquare: number;
  readonly worst: number;
} {
  const theirs = recordedPlaces();
  const impact = impactOf(swing);
  const ours = Array.from({ length: STEPS + 1 }, (_, i) => placesOf(swing, (impact * i) / STEPS));
  const pairs: readonly (readonly [Angles | undefined, Angles | undefined])[] = [
    [measure(ours[0]), measure(theirs[0])],
    ...ARM_HEIGHTS_DEG.map((height) => [anglesAt(ours, height), anglesAt(theirs, height)] as const),
  ];
  const angles = (Object.keys(ANGLES) as AngleName[]).map((name) => ({
    name,
    differences: pairs.map(([a, b]) => (a && b ? a[name] - b[name] : undefined)),
  }));
  const all = angles.flatMap(({ differences }) => differences.filter((d) => d !== undefined));
  return {
    angles,
    rootMeanSquare: Math.sqrt(all.reduce((sum, d) => sum + d * d, 0) / all.length),
    worst: all.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)),
  };
}
