import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { AT, type Pose } from '../model/chain';
import { createFigure, type Figure } from '../figure/figure';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from '../figure/partIds';
import { placeFigure, type Stance } from '../figure/place';
import { findLeans } from './edges';
import { engrave, engravingPaths, type EngravedPart } from './engraving';
import { SHEET, toX, toY, type Frame } from './frame';
import { findHull, hullPath } from './hull';

export type Tone = 'beech' | 'walnut' | 'tinted' | 'grip' | 'steel' | 'head';

/** The figure of one player with one club, ready to be drawn on plates. */
export interface PlateFigure {
  readonly figure: Figure;
  readonly engraved: readonly EngravedPart[];
  /** Of each part: which of its points can be on its contour. */
  readonly leans: readonly Float32Array[];
  /** Centre of each part in its own axes and the radius of a ball around it, m: what lies off the plate is not drawn. */
  readonly bounds: Float64Array;
}

/**
 * Contour of one part, and its engraving once there is time for it. Paths in tenths of a unit from where the frame puts the middle of
 * the stance: a plate that only slides its frame along draws nothing anew.
 */
export interface DrawnPart {
  readonly id: PartId;
  readonly tone: Tone;
  readonly contour: string;
  readonly shade: string;
  readonly lit: string;
  /** Club and hands lie over the pattern, the rest of the figure under it. */
  readonly isInFront: boolean;
}

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
const IN_FRONT = new Set<PartId>([...HANDS, ...CLUB]);
/** Too small or too plain for an engraver. */
const PLAIN = new Set<PartId>([...CLUB, 'thumbLead', 'thumbTrail', 'ankleLead', 'ankleTrail']);

/** Prepares a player with a club. Once for each. */
export function preparePlateFigure(body: Body, club: Club): PlateFigure {
  const figure = createFigure(body, club);
  const bounds = new Float64Array(figure.parts.length * 4);
  figure.parts.forEach(({ rings }, i) => {
    let radius = 0;
    for (let axis = 0; axis < 3; axis++) {
      let low = Infinity;
      let high = -Infinity;
      for (let at = axis; at < rings.length; at += 3) {
        low = Math.min(low, rings[at]);
        high = Math.max(high, rings[at]);
      }
      bounds[4 * i + axis] = (low + high) / 2;
      radius = Math.hypot(radius, (high - low) / 2);
    }
    bounds[4 * i + 3] = radius;
  });
  const engraved = figure.parts.map((part) => engrave(PLAIN.has(part.id) ? { ...part, ringCount: 1 } : part));
  return { figure, engraved, bounds, leans: figure.parts.map(findLeans) };
}

let last: { body: Body; club: Club; plate: PlateFigure } | undefined;

/** The prepared figure of the player at hand; both plates share it. */
export function plateFigureOf(body: Body, club: Club): PlateFigure {
  if (last?.body !== body || last.club !== club) last = { body, club, plate: preparePlateFigure(body, club) };
  return last.plate;
}

/** How far past the plate's box the frame around it may reach, units. */
const MARGIN = 90;
const placement = createPlacement();
const depth = new Float64Array(placement.length / MATRIX_SIZE);
/** Numbers a part in `bounds`. */
const BOUND_SIZE = 4;

/** What a plate drew last: a part that has hardly moved since keeps its contour. One a plate that is drawn again and again. */
export interface Drawn {
  plate: PlateFigure | undefined;
  readonly parts: (DrawnPart | undefined)[];
  /** Where each of them was drawn: the eight numbers of `writeProjection`. */
  readonly at: Float64Array;
}
export const createDrawn = (): Drawn => ({
  plate: undefined,
  parts: [],
  at: new Float64Array((placement.length / MATRIX_SIZE) * PROJECTION_SIZE),
});
/** A part is drawn anew when one of its points may have moved by more than this, units: a small part of a pixel on any screen. */
const STILL = 0.05;
const PROJECTION_SIZE = 8;
const projection = new Float64Array(PROJECTION_SIZE);

/** How a part's own axes lie on the plate: x and y (units) of its origin, then of one metre along each axis. */
function writeProjection(m: number, { side, scale }: Frame): void {
  const right = side * scale;
  projection[0] = right * placement[m + 11];
  projection[1] = -scale * placement[m + 10];
  for (let axis = 0; axis < 3; axis++) {
    projection[2 + 2 * axis] = right * placement[m + 3 * axis + 2];
    projection[3 + 2 * axis] = -scale * placement[m + 3 * axis + 1];
  }
}

/** The farthest a point of part `i` may have moved on the plate since it was drawn, units. */
function movedSince(at: Float64Array, i: number, bounds: Float64Array): number {
  const from = i * PROJECTION_SIZE;
  const b = i * BOUND_SIZE;
  let most = 0;
  for (let row = 0; row < 2; row++) {
    const dx = projection[2 + row] - at[from + 2 + row];
    const dy = projection[4 + row] - at[from + 4 + row];
    const dz = projection[6 + row] - at[from + 6 + row];
    const middle = projection[row] - at[from + row] + dx * bounds[b] + dy * bounds[b + 1] + dz * bounds[b + 2];
    most = Math.max(most, Math.abs(middle) + bounds[b + 3] * (Math.abs(dx) + Math.abs(dy) + Math.abs(dz)));
  }
  return most;
}

/**
 * The figure in `pose`, seen down the line: contours from far to near, then the club in the hands, the hands around it, and the head
 * on top when it is nearer than the hands. With `engraving`, the lines of the engraver too. `drawn` remembers for the next time.
 */
export function drawBody(
  plate: PlateFigure,
  pose: Pose,
  stance: Stance,
  frame: Frame,
  engraving: boolean,
  drawn?: Drawn,
): DrawnPart[] {
  if (drawn && drawn.plate !== plate) {
    drawn.parts.length = 0;
    drawn.plate = plate;
  }
  placeFigure(plate.figure, pose, stance, placement);
  const parts: DrawnPart[] = [];
  const own = { ...frame, x0: 0, y0: 0 };
  for (const i of orderOf(plate, pose, frame)) {
    const part = drawPart(plate, i, own, engraving, drawn);
    if (part.contour !== '') parts.push(part);
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

function drawPart(plate: PlateFigure, i: number, frame: Frame, engraving: boolean, drawn?: Drawn): DrawnPart {
  const { id, material, rings } = plate.figure.parts[i];
  const m = i * MATRIX_SIZE;
  const before = drawn?.parts[i];
  if (drawn) {
    writeProjection(m, frame);
    if (before && !engraving && before.shade === '' && before.lit === '') {
      if (movedSince(drawn.at, i, plate.bounds) <= STILL) return before;
    }
    drawn.at.set(projection, i * PROJECTION_SIZE);
  }
  const contour = hullPath(findHull(rings, placement, m, frame, plate.leans[i]));
  const tone: Tone = id === 'upperArmTrail' ? 'tinted' : material === 'brass' ? 'head' : material;
  const { shade, lit } = engraving ? engravingPaths(plate.engraved[i], placement, m, frame) : NOTHING;
  const part = { id, tone, contour, shade, lit, isInFront: IN_FRONT.has(id) };
  if (drawn) drawn.parts[i] = part;
  return part;
}

const NOTHING = { shade: '', lit: '' } as const;
