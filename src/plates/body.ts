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
  readonly leans: readonly Float64Array[];
  /** Centre of each part in its own axes and the radius of a ball around it, m: what lies off the plate is not drawn. */
  readonly bounds: Float64Array;
}

/** Contour of one part, and its engraving once there is time for it. Paths in tenths of a unit. */
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

/**
 * The figure in `pose`, seen down the line: contours from far to near, then the club in the hands, the hands around it, and the head
 * on top when it is nearer than the hands. With `engraving`, the lines of the engraver too.
 */
export function drawBody(
  plate: PlateFigure,
  pose: Pose,
  stance: Stance,
  frame: Frame,
  engraving: boolean,
): DrawnPart[] {
  const { figure, bounds } = plate;
  placeFigure(figure, pose, stance, placement);
  const order: number[] = [];
  figure.parts.forEach(({ id }, i) => {
    const m = i * MATRIX_SIZE;
    const [a, b, c, radius] = [bounds[4 * i], bounds[4 * i + 1], bounds[4 * i + 2], bounds[4 * i + 3]];
    const at = (row: number): number =>
      placement[m + row] * a + placement[m + 3 + row] * b + placement[m + 6 + row] * c + placement[m + 9 + row];
    depth[i] = at(0);
    const x = toX(frame, at(2));
    const y = toY(frame, at(1));
    const reach = radius * frame.scale + MARGIN;
    const isSeen =
      x > SHEET.left - reach && x < SHEET.right + reach && y > SHEET.top - reach && y < SHEET.bottom + reach;
    if (isSeen && !IN_FRONT.has(id)) order.push(i);
  });
  order.sort((i, j) => depth[j] - depth[i]);
  const headIsNear = pose[AT.head] < pose[AT.leadGrip];
  const hands = HANDS.map((id) => PART[id]).sort((i, j) => depth[j] - depth[i]);
  const club = [PART.shaft, PART.sleeve, PART.grip];
  order.push(
    ...(headIsNear
      ? [PART.grip, ...hands, PART.shaft, PART.sleeve, PART.clubHead]
      : [PART.clubHead, ...club, ...hands]),
  );
  return order.map((i) => drawPart(plate, i, frame, engraving)).filter(({ contour }) => contour !== '');
}

function drawPart({ figure, engraved, leans }: PlateFigure, i: number, frame: Frame, engraving: boolean): DrawnPart {
  const { id, material, rings } = figure.parts[i];
  const m = i * MATRIX_SIZE;
  const contour = hullPath(findHull(rings, placement, m, frame, leans[i]));
  const tone: Tone = id === 'upperArmTrail' ? 'tinted' : material === 'brass' ? 'head' : material;
  const { shade, lit } = engraving ? engravingPaths(engraved[i], placement, m, frame) : NOTHING;
  return { id, tone, contour, shade, lit, isInFront: IN_FRONT.has(id) };
}

const NOTHING = { shade: '', lit: '' } as const;
