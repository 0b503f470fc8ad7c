import { createFigure } from '../../figure/figure';
import { createPlacement, PART, PART_IDS, type PartId } from '../../figure/partIds';
import { placeFigure } from '../../figure/place';
import { BALL_RADIUS, heelLiftAt } from '../../figure/stance';
import { sightOf, toImage, type Pinhole } from '../../film/pinhole';
import { traceParts } from '../../film/trace';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { K } from '../../model/keys';
import { AT, createPose, type Pose } from '../../model/pose';
import { isReached, type CheckpointId, type Checkpoints } from '../../reading/checkpoints';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { swingPose, type Swing } from '../../reading/swing';

/** The player as he is to stand: at address for the fit, then at a checkpoint. */
export type Stand = 'address' | CheckpointId;
export type Side = 'faceOn' | 'downTheLine';

/** Where the device stands: the side, its distance from the hips at address, and its height, m. It looks level at the player. */
export interface Place {
  readonly side: Side;
  readonly distance: number;
  readonly height: number;
}

/** A swing that the player is to stand in. */
export interface Target {
  readonly body: Body;
  readonly club: Club;
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
}

type Hulls = readonly Float64Array[];
type Point = readonly [number, number];

/** A player at one stand as the device sees him. */
interface Seen {
  /** Limbs and trunk, far to near: each a set of convex outlines, x and y in turn. */
  readonly groups: readonly Hulls[];
  readonly ball: { readonly at: Point; readonly radius: number };
}

/** What the device sees, before it is fitted to a screen: y grows downward, units are arbitrary. */
export interface Sights {
  readonly stands: Readonly<Partial<Record<Stand, Seen>>>;
  /** Top of the head and lowest point of the feet at address. */
  readonly head: number;
  readonly feet: number;
  /** Middle of everything that is seen at any stand. */
  readonly middle: number;
}

/** Any focal length will do: the two lines say the size. */
const FOCAL = 1000;
const NO_SIZE = { w: 0, h: 0 };

const ofSide = (ids: readonly string[], side: 'Lead' | 'Trail'): readonly number[] =>
  ids.map((id) => PART_IDS.indexOf(`${id}${side}` as PartId));
const LEG = ['hip', 'thigh', 'knee', 'shank', 'ankle', 'foot'];
const ARM = ['upperArm', 'elbow', 'forearm', 'wrist', 'palm', 'fist', 'thumb'];
const CLUB = (['grip', 'shaft', 'sleeve', 'clubHead'] as const).map((id) => PART_IDS.indexOf(id));
const LIMBS = { lead: ofSide(ARM, 'Lead'), trail: ofSide(ARM, 'Trail'), farLeg: ofSide(LEG, 'Lead') };
const REST = PART_IDS.map((_, part) => part).filter(
  (part) => ![LIMBS.lead, LIMBS.trail, LIMBS.farLeg, CLUB].some((group) => group.includes(part)),
);

/** Looks at a swing from where the device stands. The model is right-handed: a left-handed player's picture is its mirror image. */
export function lookAt({ body, club, swing, checkpoints }: Target, place: Place): Sights {
  const figure = createFigure(body, club);
  const placement = createPlacement();
  const address = createPose();
  const start = swing.reference.times[K.address];
  swingPose(swing, start, address);
  const sight = sightOf(cameraAt(address, place));
  const trace = (pose: Pose, t: number): Hulls => {
    placeFigure(figure, pose, { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, t) }, placement);
    return traceParts(figure, placement, sight, NO_SIZE);
  };
  const ball = seeBall(swing.reference.ballPoint, sight);
  const see = (pose: Pose, hulls: Hulls): Seen => ({
    groups: layersOf(pose, sight, place.side).map((parts) => parts.map((part) => hulls[part])),
    ball,
  });
  const atAddress = trace(address, start);
  const stands: Partial<Record<Stand, Seen>> = { address: see(address, atAddress) };
  for (const id of CHECKPOINT_IDS) {
    const checkpoint = checkpoints[id];
    if (isReached(checkpoint)) stands[id] = see(checkpoint.pose, trace(checkpoint.pose, checkpoint.t));
  }
  const [left, right] = rangeOf(
    Object.values(stands).flatMap(({ groups }) => groups.flat()),
    0,
  );
  const [head] = rangeOf([atAddress[PART.headEgg]], 1);
  const [, feet] = rangeOf([atAddress[PART.footLead], atAddress[PART.footTrail]], 1);
  return { stands, head, feet, middle: (left + right) / 2 };
}

function cameraAt(address: Pose, { side, distance, height }: Place): Pinhole {
  const [x, z] = [address[AT.pelvis], address[AT.pelvis + 2]];
  const level = { pitch: 0, roll: 0, focal: FOCAL };
  return side === 'faceOn'
    ? { eye: [x, height, z + distance], yaw: -Math.PI / 2, ...level }
    : { eye: [x - distance, height, z], yaw: 0, ...level };
}

/** What is farther is covered by what is nearer, so that an arm in front of the chest is seen. From face on both legs belong to the body. */
function layersOf(pose: Pose, sight: Float64Array, side: Side): readonly (readonly number[])[] {
  const depth = (at: number): number =>
    [0, 1, 2].reduce((sum, axis) => sum + (pose[at + axis] - sight[axis]) * sight[9 + axis], 0);
  const trunk = (depth(AT.pelvis) + depth(AT.midShoulder)) / 2;
  const isFaceOn = side === 'faceOn';
  const layers = [
    { parts: isFaceOn ? [...REST, ...LIMBS.farLeg] : REST, far: trunk },
    { parts: LIMBS.lead, far: depth(AT.leadElbow) },
    { parts: LIMBS.trail, far: depth(AT.trailElbow) },
    { parts: CLUB, far: (depth(AT.leadGrip) + depth(AT.head)) / 2 },
  ].toSorted((a, b) => b.far - a.far);
  return [...(isFaceOn ? [] : [LIMBS.farLeg]), ...layers.map(({ parts }) => parts)];
}

function seeBall([x, y, z]: readonly [number, number, number], sight: Float64Array): Seen['ball'] {
  const image = new Float64Array(4);
  toImage(sight, NO_SIZE, x, y, z, image);
  toImage(sight, NO_SIZE, x, y + BALL_RADIUS, z, image, 2);
  return { at: [image[0], image[1]], radius: Math.abs(image[3] - image[1]) };
}

/** Least and greatest coordinate of outlines: 0 across, 1 down. */
function rangeOf(hulls: Hulls, axis: 0 | 1): readonly [number, number] {
  const values = hulls.flatMap((hull) => [...hull].filter((_, i) => i % 2 === axis));
  return [Math.min(...values), Math.max(...values)];
}

/** The player's two lines on the screen, shares of its height from the top. */
export interface Lines {
  readonly head: number;
  readonly feet: number;
}
interface Screen {
  readonly width: number;
  readonly height: number;
}

/** One stand on the screen, px: head and feet at address would meet the two lines. Undefined where the swing has no such stand. */
export function fitContour(
  { stands, head, feet, middle }: Sights,
  stand: Stand,
  screen: Screen,
  lines: Lines,
  isFlipped: boolean,
): Seen | undefined {
  const seen = stands[stand];
  if (!seen) return undefined;
  const scale = ((lines.feet - lines.head) * screen.height) / (feet - head);
  const across = (u: number): number => screen.width / 2 + (isFlipped ? -1 : 1) * scale * (u - middle);
  const down = (v: number): number => lines.feet * screen.height + scale * (v - feet);
  const {
    ball: { at, radius },
  } = seen;
  return {
    groups: seen.groups.map((hulls) =>
      hulls.map((hull) => hull.map((value, i) => (i % 2 === 0 ? across(value) : down(value)))),
    ),
    ball: { at: [across(at[0]), down(at[1])], radius: radius * scale },
  };
}
