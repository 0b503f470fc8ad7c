import { rad } from '../../src/math/angle';
import { createNormal, createRandom } from '../../src/math/normal';
import { AT, createPose } from '../../src/model/chain';
import { JOINT_COUNT, JOINTS } from '../../src/model/joints';
import { K } from '../../src/model/keys';
import { DIALS, MOVEMENT_GROUPS, STILL, type MovementGroup, type Movements } from '../../src/model/movements';
import { DEFAULT_ARM_ANGLE, isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { createSwing, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { findExpected, type Expected } from '../../src/film/fit/player';
import { sightOf, toImage, type Pinhole } from '../../src/film/pinhole';
import type { AddressMarks, FilmMarks, FrameMarks, Pixel } from '../../src/film/marks';
import { referenceSwing } from '../reference/solvingPlayers';

/** A film that was made up, and what is true about it. */
export interface Simulated {
  readonly marks: FilmMarks;
  readonly expected: Expected;
  readonly camera: Pinhole;
  /** Bicep gap and head depth, m, exactly at the checkpoints. */
  readonly truth: readonly [number, number];
  /** The frame in which the shaft is level, as a fraction between two. */
  readonly levelFrame: number;
  /** The movement that was dialled. */
  readonly moved: MovementGroup;
  /** What was filmed: the player, the reference that the search knows, where the stick lies (x and z, m) and when a frame was taken. */
  readonly staged: {
    readonly swing: Swing;
    readonly reference: Swing;
    readonly stick: readonly [number, number];
    readonly timeOf: (frame: number) => number;
  };
  /** Every marked point: where it is in the world, m, and where it was marked. */
  readonly world: readonly { readonly at: readonly [number, number, number]; readonly mark: Pixel }[];
}

/** What is marked, and what the search does not know about. */
export interface Circumstances {
  readonly stick?: boolean;
  readonly toes?: boolean;
  readonly horizon?: boolean;
  /** Lead shoulder and elbow, hips and neck, and the arms at shaft parallel too. */
  readonly body?: boolean;
  /** Null: nobody knows. */
  readonly fps?: number | null;
  /** How many frames beside level the first frame at shaft parallel is picked, and whether it stays the only one. */
  readonly shaftOff?: number;
  readonly isSingle?: boolean;
  /** Spread of the player about the reference, deg a joint; half of it lasts, half is new at every key. */
  readonly noiseDeg?: number;
  /** How far the corners of the picture are pushed out, share. */
  readonly distortion?: number;
  /** Time from the first to the last row of a frame, s. */
  readonly shutter?: number;
  /** Club and feet at address as the figure is drawn there: without the spread of other players. */
  readonly isPosed?: boolean;
}

const SIZE = { w: 1080, h: 1920 } as const;
/** Standard deviations of marks: px, and m on the player. */
const PX = { still: 3, line: 2, head: 6 } as const;
const BODY = { joint: 0.02, trunk: 0.03, hands: 0.01, club: 0.005, toe: 0.01 } as const;

type Draw = () => number;

/** One of the three movements, by a third to the whole of the usual range of each of its dials, either way. */
function drawMovement(random: Draw): { readonly moved: MovementGroup; readonly movements: Movements } {
  const moved = MOVEMENT_GROUPS[Math.floor(random() * MOVEMENT_GROUPS.length)];
  const dialled = DIALS.filter(({ group }) => group === moved).map(({ id, neutral, usualMin, usualMax }) => {
    const share = (random() < 0.5 ? -1 : 1) * (1 / 3 + (2 / 3) * random());
    return [id, neutral + (share * (usualMax - usualMin)) / 2] as const;
  });
  return { moved, movements: { ...STILL, ...(Object.fromEntries(dialled) as Partial<Movements>) } };
}

/** The reference as another player would do it: every joint off by its own noise, at every key of the downswing anew. */
function drawPlayer(reference: Swing, movements: Movements, noiseDeg: number, normal: Draw): Swing {
  const values = reference.reference.values.slice();
  for (let j = 0; j < JOINT_COUNT; j++) {
    const sd = JOINTS[j].kind === 'angle' ? rad(noiseDeg) : 0.005 * noiseDeg;
    const lasting = sd * normal() * Math.SQRT1_2;
    for (const key of [K.top, K.leadArmParallel, K.shaftParallel, K.impact, K.exit]) {
      values[key * JOINT_COUNT + j] += lasting + sd * normal() * Math.SQRT1_2;
    }
  }
  const { body, club } = reference.rig;
  return createSwing(body, { ...club, gripTurn: 0 }, { ...reference.reference, values }, movements);
}

/** A phone 3 to 8 m away, 0.6 to 1.5 m high, up to 10 deg off the line, 24 to 70 mm equivalent. */
function drawCamera({ hands }: Expected, random: Draw, normal: Draw): Pinhole {
  const between = (a: number, b: number): number => a + (b - a) * random();
  const off = rad(between(-10, 10));
  const distance = between(3, 8);
  const height = between(0.6, 1.5);
  return {
    eye: [hands[0] - distance * Math.cos(off), height, hands[2] - distance * Math.sin(off)],
    yaw: off + rad(between(-3, 3)),
    pitch: Math.atan2(0.9 - height, distance) + rad(between(-2, 2)),
    roll: rad(1.5 * normal()),
    focal: (between(24, 70) / Math.hypot(36, 24)) * Math.hypot(SIZE.w, SIZE.h),
  };
}

/** Films a player who is not the reference and marks him with noise. Undefined when he never reaches a checkpoint. */
export function simulate(
  seed: number,
  {
    stick = true,
    toes = true,
    horizon = true,
    body = true,
    fps = 240,
    shaftOff = 0,
    isSingle = false,
    noiseDeg = 3,
    distortion = 0,
    shutter = 0,
    isPosed = false,
  }: Circumstances = {},
): Simulated | undefined {
  const random = createRandom(seed);
  const normal = createNormal(random);
  const between = (a: number, b: number): number => a + (b - a) * random();
  const reference = referenceSwing();
  const { moved, movements } = drawMovement(random);
  const real = withMovements(drawPlayer(reference, movements, noiseDeg, normal), movements);
  const { leadArmParallel: arm, shaftParallel: shaft } = readCheckpoints(real);
  const expected = findExpected(reference, DEFAULT_ARM_ANGLE);
  if (!isReached(arm) || !isReached(shaft) || !expected) return undefined;

  const camera = drawCamera(expected, random, normal);
  const sight = sightOf(camera);
  const world: { at: readonly [number, number, number]; mark: Pixel }[] = [];
  const image = new Float64Array(2);
  const bend = (px: Pixel): Pixel => {
    const du = px[0] - SIZE.w / 2;
    const dv = px[1] - SIZE.h / 2;
    const push = 1 + distortion * (Math.hypot(du, dv) / Math.hypot(SIZE.w / 2, SIZE.h / 2)) ** 2;
    return [SIZE.w / 2 + du * push, SIZE.h / 2 + dv * push];
  };
  const mark = (x: number, y: number, z: number, px: number = PX.still, m = 0): Pixel => {
    toImage(sight, SIZE, x + m * normal(), y + m * normal(), z + m * normal(), image);
    const [u, v] = bend([image[0], image[1]]);
    const made: Pixel = [u + px * normal(), v + px * normal()];
    world.push({ at: [x, y, z], mark: made });
    return made;
  };

  const { head, lie, lean } = expected;
  const { length, gripInset } = real.rig.club;
  const apart = isPosed ? 0 : 1;
  const [realLie, realLean] = [lie + apart * rad(3) * normal(), lean + apart * rad(3) * normal()];
  const across = length * Math.cos(realLean);
  const toe = ([x, z]: readonly [number, number]): Pixel =>
    mark(x + apart * 0.04 * normal(), 0.02, z + apart * 0.04 * normal(), PX.still, BODY.toe);
  const [stickX, stickZ] = [head[0] + between(-0.6, 0.3), head[2] + between(-0.25, 0.4)];
  const farAway = (z: number): Pixel => {
    toImage(sight, SIZE, 4000, camera.eye[1], z, image);
    const [u, v] = bend([image[0], image[1]]);
    return [u + PX.still * normal(), v + PX.still * normal()];
  };
  const address: AddressMarks = {
    clubHead: mark(...head, PX.still, BODY.club),
    gripEnd: mark(
      head[0] - length * Math.sin(realLean),
      head[1] + across * Math.sin(realLie),
      head[2] - across * Math.cos(realLie),
      PX.still,
      BODY.club,
    ),
    ...(stick && { stick: [mark(stickX, 0, stickZ), mark(stickX + 1.2, 0, stickZ)] as const }),
    ...(toes && { trailToe: toe(expected.trailToe), leadToe: toe(expected.leadToe) }),
    ...(horizon && { horizon: [farAway(-600), farAway(600)] as const }),
  };

  const pose = createPose();
  const rate = fps ?? 240;
  const phase = random();
  const timeOf = (frame: number): number => (frame - phase) / rate;
  let frameTime = 0;
  /** Puts the player where he is when the row of that point of the pose is read out. */
  const waitFor = (at: number): void => {
    swingPose(real, frameTime, pose);
    toImage(sight, SIZE, pose[at], pose[at + 1], pose[at + 2], image);
    swingPose(real, frameTime + shutter * (image[1] / SIZE.h - 0.5), pose);
  };
  const see = (at: number, m: number, px: number = PX.still): Pixel => {
    waitFor(at);
    return mark(pose[at], pose[at + 1], pose[at + 2], px, m);
  };
  const onShaft = (share: number): Pixel => {
    waitFor(share < 0.5 ? AT.leadGrip : AT.head);
    const reach = share * (length - gripInset);
    const along = (i: number): number => pose[AT.leadGrip + i] + reach * pose[AT.shaftDirection + i];
    return mark(along(0), along(1), along(2), PX.line);
  };
  const trailArm = () => ({
    trailShoulder: see(AT.trailShoulder, BODY.joint),
    trailElbow: see(AT.trailElbow, BODY.joint),
  });
  const others = () => ({
    leadShoulder: see(AT.leadShoulder, BODY.joint),
    leadElbow: see(AT.leadElbow, BODY.joint),
    midHip: see(AT.pelvis, BODY.trunk),
    neck: see(AT.midShoulder, BODY.trunk),
  });
  const club = (frame: number) => {
    frameTime = timeOf(frame);
    return { frame, hands: see(AT.leadGrip, BODY.hands), clubHead: see(AT.head, BODY.hands, PX.head) };
  };
  const leadArmParallel: FrameMarks = {
    ...club(Math.round(arm.t * rate + phase)),
    shaft: [onShaft(0.25), onShaft(0.85)],
    ...trailArm(),
    ...(body && others()),
  };
  const first = Math.floor(shaft.t * rate + phase) + shaftOff;
  const shaftParallel = (isSingle ? [first] : [first, first + 1]).map((frame): FrameMarks => ({
    ...club(frame),
    ...(body && { ...trailArm(), ...others() }),
  }));
  return {
    marks: { size: SIZE, ...(fps !== null && { fps }), address, leadArmParallel, shaftParallel },
    expected,
    camera,
    levelFrame: shaft.t * rate + phase,
    truth: [arm.readings.bicepGap, shaft.readings.headDepth],
    moved,
    staged: { swing: real, reference, stick: [stickX, stickZ], timeOf },
    world,
  };
}
