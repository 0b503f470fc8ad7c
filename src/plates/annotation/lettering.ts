import { boxAround, doesLineCross, holds, isClear, isInside, nearestOn, type Obstacles } from './boxes';
import { along, type Box, type Point, type Segment } from '../plate/frame';

/**
 * Sizes of what is written on a plate, in its units. A plate is drawn larger or smaller than its units; captions must stay
 * readable on a small one, so they grow against it. `pxPerUnit` in css px.
 */
export interface Lettering {
  readonly caption: number;
  readonly figure: number;
  readonly unit: number;
  /** Too small for captions: the words stand under the plate. */
  readonly isBare: boolean;
}

const CAPTION_PX = 16;
const SMALLEST_PX = 15;
const FIGURE_UNITS = 30;
const FIGURE_PX = 24;
const UNIT_UNITS = 17;
/** Below this size captions would be larger than what they name. */
export const BARE_BELOW = 0.6;

/** Sizes for a plate drawn at `pxPerUnit`: never smaller on the screen than can be read. */
export const letteringAt = (pxPerUnit: number, isBare = pxPerUnit < BARE_BELOW): Lettering => ({
  caption: CAPTION_PX / pxPerUnit,
  figure: Math.max(FIGURE_UNITS, FIGURE_PX / pxPerUnit),
  unit: Math.max(UNIT_UNITS, SMALLEST_PX / pxPerUnit),
  isBare,
});

/** Widths in ems, measured on the two faces and taken a little generous. */
const EM = { digit: 0.575, point: 0.28, unit: 0.65, letter: 0.5, slim: 0.34, wide: 0.8 } as const;
const GAP = 3;

/** Width of "21 cm" as it stands on a dimension line, units. */
export function figureWidth(number: string, unit: string, letters: Lettering): number {
  const digits = number.replace('.', '').length;
  const points = number.length - digits;
  return letters.figure * (digits * EM.digit + points * EM.point) + GAP + letters.unit * unit.length * EM.unit;
}
/** Width of a caption, units. */
export function captionWidth(text: string, letters: Lettering): number {
  let ems = 0;
  for (const letter of text) ems += 'fijlrt '.includes(letter) ? EM.slim : letter === 'm' ? EM.wide : EM.letter;
  return letters.caption * ems;
}

/** Words at a place, with the box they fill. */
export interface Caption {
  readonly text: string;
  readonly at: Point;
  readonly anchor: 'start' | 'end';
  readonly box: Box;
  /** From the words to what they name. */
  readonly leader?: Segment;
}

/** Share of the size above the base line that letters fill, and below. */
const RISE = 0.72;
const FALL = 0.24;

/** A caption that starts or ends at a point of its base line. */
export function captionAt(text: string, at: Point, anchor: 'start' | 'end', letters: Lettering): Caption {
  const width = captionWidth(text, letters);
  const left = anchor === 'start' ? at.x : at.x - width;
  const box = { left, right: left + width, top: at.y - RISE * letters.caption, bottom: at.y + FALL * letters.caption };
  return { text, at, anchor, box };
}

/** Free space around a pin that a leader leaves open. */
const PIN_CLEAR = 13;
const LEADER_GAP = 4;

/**
 * Names what lies at `target`: the first of the places in `offsets` (units from the target, x toward the ball) where the words fit the
 * room and touch nothing. Nothing when there is none: the words under the plate say it anyway.
 */
export function findCaption(
  text: string,
  target: Point,
  offsets: readonly Point[],
  side: 1 | -1,
  letters: Lettering,
  room: Box,
  obstacles: Obstacles,
): Caption | undefined {
  for (const { x, y } of offsets) {
    const at = { x: target.x + side * x, y: target.y + y };
    const caption = captionAt(text, at, side * x < 0 ? 'end' : 'start', letters);
    if (!isInside(caption.box, room) || !isClear(caption.box, obstacles)) continue;
    const leader = leaderTo(target, caption.box);
    // It stops short of what is named by itself; what is kept clear there is square, and a slanting leader clips its corner.
    if (leader && obstacles.boxes.some((box) => !holds(box, target) && doesLineCross(leader, box))) continue;
    return leader ? { ...caption, leader } : caption;
  }
  return undefined;
}

function leaderTo(target: Point, box: Box): Segment | undefined {
  const middle = {
    left: box.left,
    right: box.right,
    top: (box.top + box.bottom) / 2,
    bottom: (box.top + box.bottom) / 2,
  };
  const from = nearestOn(middle, target);
  const size = Math.hypot(target.x - from.x, target.y - from.y);
  if (size < PIN_CLEAR + LEADER_GAP + 4) return undefined;
  const direction = { x: (target.x - from.x) / size, y: (target.y - from.y) / size };
  return { from: along(from, direction, LEADER_GAP), to: along(from, direction, size - PIN_CLEAR) };
}

/** The number on a dimension line. */
export interface Figure {
  readonly number: string;
  readonly unit: string;
  /** Middle of the number and its unit, on the base line. */
  readonly at: Point;
  readonly box: Box;
}

/** A number with its unit, its middle at a point. */
export function figureAround(middle: Point, number: string, unit: string, letters: Lettering): Figure {
  const halfHeight = (letters.figure * RISE) / 2;
  const box = boxAround(middle, figureWidth(number, unit, letters) / 2, halfHeight);
  return { number, unit, at: { x: middle.x, y: middle.y + halfHeight }, box };
}
