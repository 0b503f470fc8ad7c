import { BufferTarget, CanvasSource, Mp4OutputFormat, Output } from 'mediabunny';
import { ALL_DIALS } from '../../../src/film/explain';
import { fitFilm } from '../../../src/film/fit/fitFilm';
import { judgeFilm } from '../../../src/film/judgeFilm';
import { MARK_SD, type FrameMarks, type PictureSize, type Pixel } from '../../../src/film/marks';
import { sightOf, toImage, type Pinhole } from '../../../src/film/pinhole';
import { readFilm } from '../../../src/film/readings';
import { refineShaft } from '../../../src/film/refineLine';
import { AT, createPose } from '../../../src/model/chain';
import { K } from '../../../src/model/keys';
import { CHECKPOINT_IDS } from '../../../src/reading/checkpointTable';
import { swingPose } from '../../../src/reading/swing';
import { DEFAULT_BANDS, judge } from '../../../src/reading/verdicts';
import { openVideo } from '../../../src/video/openVideo';
import { greyAround } from '../../../src/panels/film/grey';
import { simulate, type Simulated } from '../../unit/filmSimulated';
import { FilmScene, STICK } from './scene';

/** What came of a film that was drawn, encoded, opened and read. */
export interface Rendered {
  /** Farthest that a point of the player, where the camera puts it, lies from his picture, and which; px of a film of 1080 by 1920. */
  readonly off: readonly (readonly [string, number])[];
  /** Farthest that an end of the stick lies from the stick in the picture, or a point of that from the line between the ends, px of the same. */
  readonly stick: number;
  /** The same by a camera that is turned by half a degree: what the check would say if the two did not agree. */
  readonly turned: number;
  /** How far the line that was found lies beside the shaft, px of the same; undefined: none was found. */
  readonly line: number | undefined;
  /** Of both readings: how far off, what was claimed, cm, and whether a word was given and was right. */
  readonly readings: readonly { readonly off: number; readonly plusMinus: number; readonly word?: boolean }[];
}

/** Pictures are drawn and encoded at half the size of the camera's. */
const SCALE = 2;
/** Difference in brightness from the picture without the player, 0 to 255. */
const DIFFERS = 20;
/** How far a camera is turned that does not agree, rad. */
const TURNED = 0.009;
/** A point of the player farther from his picture than this is just far, px of the picture. */
const FARTHEST = 30;

/** Which times are drawn, s, with the player and without: around each frame that is marked its neighbours too. */
function shots({ staged, marks }: Simulated) {
  const { timeOf, swing } = staged;
  const arm = marks.leadArmParallel!.frame;
  const [first, second] = marks.shaftParallel!.map(({ frame }) => frame);
  const address = swing.reference.times[K.address];
  const at = (frame: number) => ({ t: timeOf(frame), isEmpty: false });
  const pair = (t: number) => [
    { t, isEmpty: false },
    { t, isEmpty: true },
  ];
  return {
    address: 0,
    arm: 3,
    first: 7,
    second: 9,
    times: { address, arm: timeOf(arm), first: timeOf(first), second: timeOf(second) },
    list: [
      ...pair(address),
      at(arm - 1),
      ...pair(timeOf(arm)),
      at(arm + 1),
      at(first - 1),
      ...pair(timeOf(first)),
      ...pair(timeOf(second)),
      at(second + 1),
    ],
  };
}

async function encode(film: Simulated): Promise<Blob> {
  const { w, h } = film.marks.size;
  const scene = new FilmScene(film, { w: w / SCALE, h: h / SCALE });
  const target = new BufferTarget();
  const output = new Output({ format: new Mp4OutputFormat(), target });
  const source = new CanvasSource(scene.canvas, { codec: 'avc', bitrate: 8e6, keyFrameInterval: 0.025 });
  output.addVideoTrack(source, { frameRate: 240 });
  await output.start();
  for (const [i, { t, isEmpty }] of shots(film).list.entries()) {
    if (isEmpty) scene.drawEmpty();
    else scene.draw(t);
    await source.add(i / 240, 1 / 240);
  }
  await output.finalize();
  scene.dispose();
  return new Blob([target.buffer!]);
}

const pixelsOf = (picture: ImageBitmap): ImageData => {
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(picture, 0, 0);
  return pen.getImageData(0, 0, picture.width, picture.height);
};

/** Whether a mark lies in the picture, not at its edge, px. */
const isInside = ([u, v]: Pixel, { w, h }: PictureSize): boolean => Math.min(u, w - u, v, h - v) > SCALE * FARTHEST;

/** How far a place lies from where two pictures differ, px. */
function farFrom(full: ImageData, empty: ImageData, [u, v]: Pixel): number {
  let least = FARTHEST;
  for (let y = Math.floor(v - FARTHEST); y <= v + FARTHEST; y++) {
    for (let x = Math.floor(u - FARTHEST); x <= u + FARTHEST; x++) {
      const i = 4 * (y * full.width + x);
      const differs = [0, 1, 2].some((c) => Math.abs(full.data[i + c] - empty.data[i + c]) > DIFFERS);
      // A place lies in its pixel: half a pixel is no distance.
      if (differs) least = Math.min(least, Math.max(0, Math.hypot(x + 0.5 - u, y + 0.5 - v) - Math.SQRT1_2));
    }
  }
  return least;
}

/** How far the ends of the stick lie from its picture, and its picture from the line between them, px: the farthest. */
function compareStick({ data, width, height }: ImageData, a: Pixel, b: Pixel): number {
  const [du, dv] = [b[0] - a[0], b[1] - a[1]];
  const least = [Infinity, Infinity];
  let beside = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [red, green] = data.subarray(4 * (y * width + x));
      if (!(red > 110 && green < 0.5 * red)) continue;
      const [u, v] = [x + 0.5, y + 0.5];
      [a, b].forEach((end, k) => (least[k] = Math.min(least[k], Math.hypot(u - end[0], v - end[1]))));
      const share = Math.max(0, Math.min(1, ((u - a[0]) * du + (v - a[1]) * dv) / (du * du + dv * dv)));
      const off = Math.hypot(u - a[0] - share * du, v - a[1] - share * dv);
      // Wood in shadow is red too, farther off.
      if (off < FARTHEST) beside = Math.max(beside, off);
    }
  }
  return Math.max(beside, ...least);
}

/**
 * Draws, encodes, opens and reads the film of one made-up swing. Undefined where the player reaches no checkpoint, or where something that is
 * marked lies beside the picture or at its very edge.
 */
export async function renderAndRead(seed: number): Promise<Rendered | undefined> {
  const film = simulate(seed, { isPosed: true });
  if (!film || !film.world.every(({ mark }) => isInside(mark, film.marks.size))) return undefined;
  const { marks, expected, camera, staged, truth } = film;
  const places = shots(film);
  const video = await openVideo(await encode(film));
  const pictures = new Map<number, ImageBitmap>();
  const show = async (index: number): Promise<ImageBitmap> => {
    if (!pictures.has(index)) pictures.set(index, (await video.frame(index))!);
    return pictures.get(index)!;
  };
  const image = new Float64Array(2);
  const seeBy = (by: Pinhole) => {
    const sight = sightOf(by);
    return (x: number, y: number, z: number): Pixel => {
      toImage(sight, marks.size, x, y, z, image);
      return [image[0] / SCALE, image[1] / SCALE];
    };
  };
  const see = seeBy(camera);
  try {
    const off: [string, number][] = [];
    const pose = createPose();
    const look = async (at: 'address' | 'arm' | 'first' | 'second', points: Readonly<Record<string, number>>) => {
      const [full, empty] = [pixelsOf(await show(places[at])), pixelsOf(await show(places[at] + 1))];
      swingPose(staged.swing, places.times[at], pose);
      for (const [name, i] of Object.entries(points)) {
        off.push([`${at} ${name}`, SCALE * farFrom(full, empty, see(pose[i], pose[i + 1], pose[i + 2]))]);
      }
      return { full, empty };
    };
    const CLUB = { hands: AT.leadGrip, clubHead: AT.head };
    const BODY = {
      trailShoulder: AT.trailShoulder,
      trailElbow: AT.trailElbow,
      leadShoulder: AT.leadShoulder,
      leadElbow: AT.leadElbow,
      midHip: AT.pelvis,
      neck: AT.midShoulder,
    };
    const { full, empty } = await look('address', CLUB);
    const [gripEnd, toes] = [gripEndOf(film), [expected.trailToe, expected.leadToe]];
    off.push(['address gripEnd', SCALE * farFrom(full, empty, see(...gripEnd))]);
    for (const [x, z] of toes) off.push(['address toe', SCALE * farFrom(full, empty, see(x, 0.02, z))]);
    const [x, z] = staged.stick;
    const ends = (seen: typeof see): readonly [Pixel, Pixel] => [
      seen(x, STICK.thick / 2, z),
      seen(x + STICK.long, STICK.thick / 2, z),
    ];
    const stick = SCALE * compareStick(full, ...ends(see));
    const turned = SCALE * compareStick(full, ...ends(seeBy({ ...camera, yaw: camera.yaw + TURNED })));
    await look('arm', { ...CLUB, ...BODY });
    await look('first', CLUB);
    await look('second', CLUB);

    // The shaft as the desk finds it between the marks of hands and head.
    swingPose(staged.swing, places.times.arm, pose);
    const arm = marks.leadArmParallel!;
    const half = ([u, v]: Pixel): Pixel => [u / SCALE, v / SCALE];
    const [from, to] = [half(arm.hands), half(arm.clubHead)];
    const { grey, left, top } = greyAround(await show(places.arm), from, to);
    const found = refineShaft(grey, [from[0] - left, from[1] - top], [to[0] - left, to[1] - top]);
    const line = found?.line.map(([u, v]): Pixel => [u + left, v + top]);
    const [grip, head] = [AT.leadGrip, AT.head].map((i) => see(pose[i], pose[i + 1], pose[i + 2]));
    const beside = ([u, v]: Pixel): number => {
      const [[au, av], [bu, bv]] = [grip, head];
      return Math.abs((u - au) * (bv - av) - (v - av) * (bu - au)) / Math.hypot(bu - au, bv - av);
    };
    const shaft = line?.map(([u, v]): Pixel => [SCALE * u, SCALE * v, MARK_SD.refined]) as [Pixel, Pixel] | undefined;
    const tapped = Object.fromEntries(
      Object.entries(arm).filter(([name]) => name !== 'shaft'),
    ) as unknown as FrameMarks;
    const marked = { ...marks, leadArmParallel: { ...tapped, ...(shaft && { shaft }) } };
    const fit = fitFilm(expected, marked, ALL_DIALS);
    const read = readFilm(fit);
    return {
      off,
      stick,
      turned,
      line: line && SCALE * Math.max(...line.map(beside)),
      readings: CHECKPOINT_IDS.map((id, k) => {
        const { value, plusMinus, verdict } = judgeFilm(id, read[id]!, DEFAULT_BANDS[id], marked, fit.costPerFreedom);
        return {
          off: 100 * (value - truth[k]),
          plusMinus: 100 * plusMinus,
          ...(verdict && { word: verdict === judge(truth[k], DEFAULT_BANDS[id]) }),
        };
      }),
    };
  } finally {
    for (const picture of pictures.values()) picture.close();
    video.close();
  }
}

/** The end of the grip at address, m. */
function gripEndOf({ expected: { head, lie, lean }, staged: { swing } }: Simulated): readonly [number, number, number] {
  const { length } = swing.rig.club;
  const across = length * Math.cos(lean);
  return [head[0] - length * Math.sin(lean), head[1] + across * Math.sin(lie), head[2] - across * Math.cos(lie)];
}
