import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { AT, type Pose } from '../../model/chain';
import { createFigure } from '../../figure/figure';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from '../../figure/partIds';
import { placeFigure, type Stance } from '../../figure/place';
import { outlineShapes, type DrawnPart, type Finish, type Outline, type PlateFigure, type Tone } from './drawnPart';
import { BOUND_SIZE, findKept, forget, project, remember, type Drawn } from './outlineCache';
import { engrave, engravingPaths } from './engraving';
import { SHEET, toX, toY, type Frame } from '../plate/frame';
import { HullFinder } from './hull';
import { transformOf } from './shape';

const HANDS: readonly PartId[] = [
  'wristLead',
  'wristTrail',
  'palmLead',
  'palmTrail',
  'fistLead',
  'fistTrail',
  'thumbLead',
  'thumbTrail',
];
const CLUB: readonly PartId[] = ['shaft', 'sleeve', 'grip', 'clubHead'];
const IN_FRONT: ReadonlySet<PartId> = new Set<PartId>([...HANDS, ...CLUB]);
/** Too small or too plain for an engraver. */
const PLAIN: ReadonlySet<PartId> = new Set<PartId>([...CLUB, 'thumbLead', 'thumbTrail', 'ankleLead', 'ankleTrail']);

/** Prepares a player with a club. Once for each. */
export function preparePlateFigure(body: Body, club: Club): PlateFigure {
  const figure = createFigure(body, club);
  const bounds = new Float64Array(figure.parts.length * BOUND_SIZE);
  figure.parts.forEach(({ rings }, i) => {
    let radius = 0;
    for (let axis = 0; axis < 3; axis++) {
      let low = Infinity;
      let high = -Infinity;
      for (let at = axis; at < rings.length; at += 3) {
        low = Math.min(low, rings[at]);
        high = Math.max(high, rings[at]);
      }
      const half = (high - low) / 2;
      bounds[BOUND_SIZE * i + axis] = low + half;
      bounds[BOUND_SIZE * i + 4 + axis] = half;
      radius = Math.hypot(radius, half);
    }
    bounds[BOUND_SIZE * i + 3] = radius;
  });
  const engraved = figure.parts.map((part) => engrave(PLAIN.has(part.id) ? { ...part, ringCount: 1 } : part));
  return { figure, engraved, bounds };
}

/** Cache: the prepared figure of a body with a club, for as long as both are in use. */
const prepared = new WeakMap<Body, WeakMap<Club, PlateFigure>>();

/** The prepared figure of a player with a club; whatever draws the two shares it. */
export function plateFigureOf(body: Body, club: Club): PlateFigure {
  let clubs = prepared.get(body);
  if (!clubs) prepared.set(body, (clubs = new WeakMap()));
  let plate = clubs.get(club);
  if (!plate) clubs.set(club, (plate = preparePlateFigure(body, club)));
  return plate;
}

/** How far past the plate's box the frame around it may reach, units. */
const MARGIN = 90;
/** Scratch: where every part of a figure lies, and how far. */
const placement = createPlacement();
const depth = new Float64Array(placement.length / MATRIX_SIZE);
/** Scratch: the contour of one part. */
const hull = new HullFinder();
/**
 * The figure in `pose`, seen down the line: contours from far to near, then the club in the hands, the hands around it, and the head
 * on top when it is nearer than the hands. `drawn` remembers for the next time.
 */
export function drawBody(
  plate: PlateFigure,
  pose: Pose,
  stance: Stance,
  frame: Frame,
  finish: Finish,
  drawn?: Drawn,
): DrawnPart[] {
  if (drawn && drawn.plate !== plate) forget(drawn, plate);
  placeFigure(plate.figure, pose, stance, placement);
  const parts: DrawnPart[] = [];
  const own = { ...frame, x0: 0, y0: 0 };
  for (const i of orderOf(plate, pose, frame)) {
    const part = drawPart(plate, i, own, finish, drawn);
    if (part.outline.contour !== '') parts.push(part);
  }
  return parts;
}

/** Parts that are on the plate, in the order they are drawn. */
function orderOf({ figure, bounds }: PlateFigure, pose: Pose, frame: Frame): number[] {
  const order: number[] = [];
  const { parts } = figure;
  for (let i = 0; i < parts.length; i++) {
    const m = i * MATRIX_SIZE;
    const b = i * BOUND_SIZE;
    const x = toX(frame, middleOf(m + 2, bounds, b));
    const y = toY(frame, middleOf(m + 1, bounds, b));
    depth[i] = middleOf(m, bounds, b);
    const reach = bounds[b + 3] * frame.scale + MARGIN;
    const isSeen =
      x > SHEET.left - reach && x < SHEET.right + reach && y > SHEET.top - reach && y < SHEET.bottom + reach;
    if (isSeen && !IN_FRONT.has(parts[i].id)) order.push(i);
  }
  order.sort(fromFar);
  const hands = HAND_PARTS.toSorted(fromFar);
  const headIsNear = pose[AT.head] < pose[AT.leadGrip];
  if (headIsNear) order.push(PART.grip, ...hands, PART.shaft, PART.sleeve, PART.clubHead);
  else order.push(PART.clubHead, PART.shaft, PART.sleeve, PART.grip, ...hands);
  return order;
}

const HAND_PARTS = HANDS.map((id) => PART[id]);
const fromFar = (i: number, j: number): number => depth[j] - depth[i];
/** World coordinate of the middle of a part; `row` of its matrix: 0 x, 1 y, 2 z. */
const middleOf = (row: number, bounds: Float64Array, b: number): number =>
  placement[row] * bounds[b] +
  placement[row + 3] * bounds[b + 1] +
  placement[row + 6] * bounds[b + 2] +
  placement[row + 9];

function drawPart(plate: PlateFigure, i: number, frame: Frame, finish: Finish, drawn?: Drawn): DrawnPart {
  const { id, material } = plate.figure.parts[i];
  const tone: Tone = id === 'upperArmTrail' ? 'tinted' : material === 'brass' ? 'head' : material;
  if (drawn) project(placement, i * MATRIX_SIZE, frame);
  // No engraving is carried along.
  const kept = drawn && finish !== 'engraved' ? findKept(drawn, i, plate.bounds) : undefined;
  const carried = finish === 'sketch' ? kept : undefined;
  const outline = carried?.outline ?? outlineOf(plate, i, tone, frame, finish);
  if (drawn && !kept && finish !== 'engraved') remember(drawn, i, outline);
  const matrix = carried?.matrix;
  return {
    key: id,
    tag: 'g',
    attributes: matrix ? ['transform', transformOf(matrix)] : NONE,
    inside: outline.shapes,
    matrix,
    id,
    tone,
    isInFront: IN_FRONT.has(id),
    outline,
  };
}

const NONE = [] as const;

function outlineOf({ figure, engraved }: PlateFigure, i: number, tone: Tone, frame: Frame, finish: Finish): Outline {
  const m = i * MATRIX_SIZE;
  hull.find(figure.parts[i].rings, placement, m, frame);
  const contour = hull.toPath();
  const isEngraved = finish === 'engraved';
  const { shade, lit } = isEngraved ? engravingPaths(engraved[i], placement, m, frame) : NOTHING;
  return { contour, shade, lit, isEngraved, shapes: outlineShapes(tone, contour, shade, lit) };
}

const NOTHING = { shade: '', lit: '' } as const;
