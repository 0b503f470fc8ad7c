import type { Verdict } from '../../reading/verdicts';
import { boxAround, isClear, isInside, type Obstacles } from './boxes';
import type { Dimension } from './dimension';
import { SHEET, type Box, type Frame, type Point, type Segment } from '../plate/frame';
import { captionAt, captionWidth, type Caption, type Lettering } from './lettering';

/** Everything on a plate that is not the figure: what is measured, how much, and whether that is on plane. Units of the plate. */
export interface Annotation {
  /** What has to be seen of the plate: all of it, or less where it is small and bare. */
  readonly view: Box;
  readonly verdict: Verdict;
  /** The pale strip, exactly as wide as the band: its four corners, and its two dotted edges. */
  readonly corridor: readonly Point[];
  readonly edges: readonly [Segment, Segment];
  /** What is dimensioned is what is patterned. */
  readonly zone: readonly Point[];
  /** The shaft line (P5) or the line through the head (P6). */
  readonly axis: Segment;
  readonly extensions: readonly Segment[];
  readonly dimension: Dimension | undefined;
  /** The bicep centre (P5) or the hands (P6). */
  readonly pin: Point;
  readonly handle: Handle;
  readonly captions: readonly Caption[];
  readonly scaleBar: ScaleBar | undefined;
  readonly others: readonly OtherLine[];
}

/** The ring on the line, and how dragging it reads: one metre of the reading moves it by `perMetre` units along `direction`. */
interface Handle {
  readonly at: Point;
  readonly direction: Point;
  readonly perMetre: number;
}

/** A length to compare with, named. */
interface ScaleBar {
  readonly line: Segment;
  readonly ticks: readonly Segment[];
  readonly caption: Caption;
}

/** What stands beside the line of another swing. */
export const OTHER_NAMES: Readonly<Record<OtherLine['kind'], string>> = { reference: 'reference', ghost: 'comparison' };

/** The same line of another swing: the reference, or the ghost held for comparison. */
export interface OtherLine {
  readonly kind: 'reference' | 'ghost';
  readonly line: Segment;
  readonly caption: Caption | undefined;
}

/** What a plate is asked to show beside the pose. Metres. */
export interface Measured {
  readonly verdict: Verdict;
  /** The judged reading and its band. */
  readonly value: number;
  readonly band: { readonly low: number; readonly high: number };
  readonly number: string;
  readonly unit: string;
}

/** Radii of the ring and of the pin, and half the cross through the pin, units. */
export const HANDLE_RADIUS = 9;
export const PIN_RADIUS = 5.4;
export const REGISTER_CROSS = 10;
/** Room for lettering: what is seen of the plate, less a margin. */
export const roomIn = (view: Box): Box => ({
  left: view.left + 6,
  top: view.top + 5,
  right: view.right - 6,
  bottom: view.bottom - 6,
});

/** Length of the bar (m) and its name, in the unit the coach reads. */
export const BARS = { cm: { length: 0.2, caption: '20 cm' }, in: { length: 8 * 0.0254, caption: '8 in' } } as const;
/** Units a scale bar comes in. */
export type BarUnit = keyof typeof BARS;

/** A scale bar in the first corner where nothing is in its way. `corners` name its left or right lower end. */
export function findScaleBar(
  frame: Frame,
  unit: BarUnit,
  corners: readonly ('bottom left' | 'bottom right' | 'top left' | 'top right')[],
  letters: Lettering,
  obstacles: Obstacles,
): ScaleBar | undefined {
  const { length: metres, caption: text } = BARS[unit];
  const length = metres * frame.scale;
  const width = captionWidth(text, letters);
  for (const corner of corners) {
    const x = corner.endsWith('left') ? 14 : SHEET.right - 14 - length;
    const y = corner.startsWith('bottom') ? SHEET.bottom - 14 : 18 + letters.caption;
    // The words stand above the bar: beside it they would run into the figure.
    const words = { x: x + (length - width) / 2, y: y - 8 };
    const caption = captionAt(text, words, 'start', letters);
    const box = {
      left: Math.min(x - 4, caption.box.left),
      right: Math.max(x + length + 4, caption.box.right),
      top: caption.box.top,
      bottom: y + 6,
    };
    if (!isInside(box, SHEET) || !isClear(box, obstacles)) continue;
    const tick = (at: number, size: number): Segment => ({
      from: { x: x + at, y: y - size },
      to: { x: x + at, y: y + size },
    });
    return {
      line: { from: { x, y }, to: { x: x + length, y } },
      ticks: [tick(0, 4), tick(length / 2, 3), tick(length, 4)],
      caption: { ...caption, box },
    };
  }
  return undefined;
}

/** Keeps the handle, the pin and the dimension's ticks clear of lettering. */
export const keepClear = (handle: Point, pin: Point): Box[] => [
  boxAround(handle, HANDLE_RADIUS + 2),
  boxAround(pin, REGISTER_CROSS + 1),
];
