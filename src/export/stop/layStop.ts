import { AT, type Pose } from '../../model/chain';
import type { CheckpointId } from '../../reading/checkpointTable';
import type { Band } from '../../reading/verdicts';
import { doBoxesMeet, doesLineCross, grow } from '../../plates/annotation/boxes';
import { toPoint, type Box, type Frame, type Segment } from '../../plates/plate/frame';
import type { PixelSize } from '../clip/formats';
import { boxIn, type BodyBox } from './bodyBoxes';
import { stopGeometry, type StopGeometry } from './geometry';
import type { ShapeSizes } from './sizes';
import { frameAt } from './stopView';

/** One body that the picture of a stop shows. */
export interface StopBody {
  readonly pose: Pose;
  readonly boxes: readonly BodyBox[];
}

/** What the picture of a stop has to hold. */
export interface StopOf {
  readonly id: CheckpointId;
  readonly side: 1 | -1;
  readonly band: Band;
  /** Each is measured at one time or another. */
  readonly bodies: readonly StopBody[];
  /**
   * Words that stand over the picture at one time or another, for each way of wrapping them, the best first: boxes, px. Those of the stop
   * itself, which stand there with the number, and others.
   */
  readonly words: readonly { readonly withNumber: readonly Box[]; readonly alone: readonly Box[] }[];
  /** Size of the number with its unit, px; the larger where it changes. */
  readonly number: { readonly width: number; readonly height: number };
}

/** Where everything lies at a stop. */
export interface StopPlace {
  readonly frame: Frame;
  /** Which way of wrapping the words. */
  readonly wrap: number;
  /** The number's box for each body. */
  readonly numbers: readonly Box[];
  /** What had to be given up, 0 for nothing: covered words, cropped clubhead. */
  readonly cost: number;
}

/** Scales, as shares of the usual, and places of the pin, as shares of the picture off the usual, that are tried. */
const SCALES = [1, 0.94, 0.88, 0.82, 0.76, 0.7, 0.64, 0.58] as const;
const ACROSS = [0, 0.04, -0.04, 0.08, -0.08, 0.13, -0.13, 0.19, -0.19, 0.26, -0.26] as const;
const DOWN = [0, 0.05, -0.05, 0.1, -0.1, 0.16, 0.22] as const;
/** What each fault costs. */
const COST = {
  smaller: 3,
  moved: 2,
  covered: 8,
  crossed: 5,
  cut: 30,
  wrapped: 0.08,
  far: 2,
  controls: 1.5,
  low: 12,
} as const;
/** Room round words and numbers, and to the edge of the picture, shares of the shorter side. */
const AIR = 0.014;
const EDGE = 0.02;
/** Round the clubhead's reference point and past the line's end, m. */
const HEAD_ROOM = 0.06;
/** Parts that words may not cover, however little room there is. */
const LEGS = /hip|thigh|knee|shank|ankle|foot/;

/** Scale, place, wrapping and the number's place: the best of those that are tried, so that nothing that is read covers another. */
export function layStop(of: StopOf, sizes: ShapeSizes, unit: number, size: PixelSize): StopPlace {
  const { id, side, bodies } = of;
  const usual = sizes.stop[id];
  const at = id === 'leadArmParallel' ? AT.bicep : AT.leadGrip;
  const { pose } = bodies[0];
  const usualX = side === 1 ? usual.pin.x * unit : size.width - usual.pin.x * unit;
  let best: StopPlace | undefined;
  for (const scale of SCALES) {
    for (const dx of ACROSS) {
      for (const dy of DOWN) {
        const px = usualX + dx * size.width;
        const py = usual.pin.y * unit + dy * size.height;
        const frame = frameAt(side, usual.scale * scale * unit, pose[at + 1], pose[at + 2], px, py);
        const early = COST.smaller * (1 - scale) + COST.moved * (Math.abs(dx) + Math.abs(dy));
        if (best && early >= best.cost) continue;
        const found = judgeFrame(of, sizes, frame, size, early, best?.cost ?? Infinity);
        if (found && (!best || found.cost < best.cost)) best = found;
      }
    }
  }
  return best!;
}

function judgeFrame(
  of: StopOf,
  sizes: ShapeSizes,
  frame: Frame,
  size: PixelSize,
  early: number,
  limit: number,
): StopPlace | undefined {
  const { id, bodies, band, words } = of;
  const short = Math.min(size.width, size.height);
  const boxes = bodies.flatMap(({ boxes: all }) => all.map((box) => ({ id: box.id, ...boxIn(frame, box) })));
  const drawn = bodies.map(({ pose }) => stopGeometry(id, pose, frame, band));
  const clubs = bodies.map(({ pose }): Segment => ({
    from: toPoint(frame, pose, AT.leadGrip),
    to: toPoint(frame, pose, AT.head),
  }));
  let cost = early + COST.cut * cutOff(of, frame, size) + COST.low * lowHands(of, frame, sizes, size);
  if (cost >= limit && Number.isFinite(limit)) return undefined;
  const lines = [...clubs, ...drawn.flatMap(({ axis, edges }) => [axis, ...edges])];
  const heads = boxes.filter(({ id: part }) => part === 'clubHead');
  let [wrap, least] = [0, Infinity];
  words.forEach((set, i) => {
    let own = COST.wrapped * i;
    for (const word of [...set.withNumber, ...set.alone]) {
      const air = grow(word, AIR * short);
      own += COST.covered * shareCovered(word, boxes);
      const isCrossed = lines.some((line) => doesLineCross(line, air)) || heads.some((head) => doBoxesMeet(head, air));
      own += isCrossed ? COST.crossed : 0;
      own += word.right > size.width * (1 - EDGE) || word.left < size.width * EDGE ? COST.cut : 0;
    }
    if (own < least) [wrap, least] = [i, own];
  });
  cost += least;
  if (cost >= limit) return undefined;
  const around = { boxes, words: words[wrap]?.withNumber ?? [] };
  const numbers: Box[] = [];
  for (const [i, lies] of drawn.entries()) {
    const own = [clubs[i], lies.axis, ...lies.edges];
    const number = placeNumber(of, sizes, lies, { ...around, own, others: lines }, size, limit - cost);
    if (!number) return undefined;
    numbers.push(number.box);
    cost += number.cost / drawn.length;
  }
  return { frame, wrap, numbers, cost };
}

/** How far what has to be seen lies outside the picture, share of its height. */
function cutOff({ id, bodies }: StopOf, frame: Frame, size: PixelSize): number {
  const edge = EDGE * 0.4 * Math.min(size.width, size.height);
  let out = 0;
  const hold = ({ left, right, top, bottom }: Box): void => {
    out += Math.max(0, edge - left, right - (size.width - edge), edge - top, bottom - (size.height - edge));
  };
  for (const { pose, boxes } of bodies) {
    for (const point of [AT.head, AT.leadGrip, AT.bicep]) {
      const { x, y } = toPoint(frame, pose, point);
      const by = HEAD_ROOM * frame.scale;
      hold({ left: x - by, right: x + by, top: y - by, bottom: y + by });
    }
    const head = boxes.find((box) => box.id === 'headEgg');
    // At lead arm parallel the face may run out of an upright picture; the shaft tells it all.
    if (head && id === 'shaftParallel') hold(boxIn(frame, head));
  }
  return out / size.height;
}

/** How far hands and bicep lie under players' controls, share of the height: legs may, what is shown may not. */
function lowHands({ bodies }: StopOf, frame: Frame, { free }: ShapeSizes, { height }: PixelSize): number {
  const lowest = Math.max(
    ...bodies.flatMap(({ pose }) => [AT.leadGrip, AT.bicep].map((at) => toPoint(frame, pose, at).y)),
  );
  return Math.max(0, lowest / height - (1 - free.bottom));
}

/** Share of a box that the body covers, by the boxes of its parts; legs count half. */
function shareCovered(word: Box, boxes: readonly (Box & { readonly id: string })[]): number {
  const area = (word.right - word.left) * (word.bottom - word.top);
  let covered = 0;
  for (const box of boxes) {
    const wide = Math.min(word.right, box.right) - Math.max(word.left, box.left);
    const tall = Math.min(word.bottom, box.bottom) - Math.max(word.top, box.top);
    if (wide > 0 && tall > 0) covered += wide * tall * (LEGS.test(box.id) ? 0.5 : 1);
  }
  return Math.min(1.5, (covered / area) * 4);
}

interface InTheWay {
  readonly boxes: readonly (Box & { readonly id: string })[];
  /** Lines of the body that is measured, and of all that are there. */
  readonly own: readonly Segment[];
  readonly others: readonly Segment[];
  readonly words: readonly Box[];
}

/** Steps of the search for the number's place, shares of the picture. */
const STEP = 0.03;
const REACH = 0.42;

/** The place beside the pattern where the number lies on least: near the dimension, on the side away from the body if it can. */
function placeNumber(
  { number, id, side }: StopOf,
  { free }: ShapeSizes,
  { dimension, zone }: StopGeometry,
  { boxes, own, others, words }: InTheWay,
  size: PixelSize,
  limit: number,
): { readonly box: Box; readonly cost: number } | undefined {
  const short = Math.min(size.width, size.height);
  const edge = EDGE * short;
  const air = AIR * short;
  const from = { x: (dimension.from.x + dimension.to.x) / 2, y: (dimension.from.y + dimension.to.y) / 2 };
  const hatch = zone.map((p, i): Segment => ({ from: p, to: zone[(i + 1) % zone.length] }));
  // Away from the body at lead arm parallel; toward the ball at shaft parallel.
  const wanted = id === 'leadArmParallel' ? -side : side;
  let best: { box: Box; cost: number } | undefined;
  for (let j = -REACH; j <= REACH; j += STEP) {
    for (let i = -REACH; i <= REACH; i += STEP) {
      const [x, y] = [from.x + i * short * 1.2, from.y + j * short];
      const box = {
        left: x - number.width / 2,
        right: x + number.width / 2,
        top: y - number.height / 2,
        bottom: y + number.height / 2,
      };
      const gap = Math.hypot(
        Math.max(0, box.left - from.x, from.x - box.right),
        Math.max(0, box.top - from.y, from.y - box.bottom),
      );
      let cost = (COST.far * gap) / short + (i * wanted < 0 ? 1.2 : 0);
      const least = Math.min(limit, best?.cost ?? Infinity);
      if (cost >= least) continue;
      const inside =
        box.left >= edge && box.right <= size.width - edge && box.top >= edge && box.bottom <= size.height - edge;
      if (!inside) continue;
      if (box.bottom > size.height * (1 - free.bottom) || box.top < size.height * free.top) cost += COST.controls;
      if (box.right > size.width * (1 - free.right) && box.bottom > size.height * free.below) cost += COST.controls / 4;
      const around = grow(box, air);
      if (words.some((word) => doBoxesMeet(around, word))) cost += COST.covered * 2;
      if ([...own, ...hatch].some((line) => doesLineCross(line, around))) cost += COST.crossed;
      else if (others.some((line) => doesLineCross(line, box))) cost += COST.crossed / 8;
      if (cost >= least) continue;
      cost += COST.covered * 0.4 * shareCovered(box, boxes);
      if (cost < least) best = { box, cost };
    }
  }
  return best;
}
