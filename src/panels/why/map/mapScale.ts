import { dialOf, type MovementId } from '../../../model/movements';
import type { Region } from '../../../solving/diagnosis/corridor';
import { LENGTHS, type Units } from '../../../words';

/** One side of the map: from the model's units to css px, and the round values written on it. */
export interface Side {
  readonly id: MovementId;
  readonly toPx: (value: number) => number;
  readonly fromPx: (px: number) => number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  /** Ends of the usual range, px. */
  readonly usual: readonly [number, number];
}

/** Distance of the written values, in the unit of the slider. */
const TICK: Readonly<Record<MovementId, number>> = {
  leadWristFlexion: 10,
  rotationRate: 0.2,
  rotationDelay: 10,
  trailSideBend: 5,
  pelvisShift: 5,
};
const UNIT: Readonly<Record<MovementId, string>> = {
  leadWristFlexion: 'degrees',
  rotationRate: '%',
  rotationDelay: 'ms',
  trailSideBend: 'degrees',
  pelvisShift: 'cm',
};

/** The unit a movement is shown in on an axis of the map. */
export const unitOf = (id: MovementId, units: Pick<Units, 'length'>): string =>
  id === 'pelvisShift' ? LENGTHS[units.length].symbol : UNIT[id];

/** One axis of the map from pixel `from` to pixel `to`: ticks, usual range, and its two directions in words. */
export function sideOf(id: MovementId, from: number, to: number, units: Pick<Units, 'length'>): Side {
  const { min, max, usualMin, usualMax, edgeUnit } = dialOf(id);
  const toPx = (value: number): number => from + ((value - min) / (max - min)) * (to - from);
  const step = id === 'pelvisShift' && units.length === 'in' ? 2.54 * 2 : TICK[id];
  const ticks = [];
  for (let k = Math.ceil(min / edgeUnit / step - 1e-9); k * step <= max / edgeUnit + 1e-9; k++) {
    const edge = k * step;
    const shown =
      id === 'rotationRate' ? edge * 100 : id === 'pelvisShift' && units.length === 'in' ? edge / 2.54 : edge;
    // Which way is which stands in words at the ends.
    ticks.push({ at: toPx(edge * edgeUnit), text: String(Math.round(Math.abs(shown))) });
  }
  return {
    id,
    toPx,
    fromPx: (px) => Math.min(max, Math.max(min, min + ((px - from) / (to - from)) * (max - min))),
    ticks,
    usual: [toPx(usualMin), toPx(usualMax)],
  };
}

/** A region as an SVG path in css px. */
export const regionPath = (region: Region, x: Side, y: Side): string =>
  region
    .map((ring) => `M${ring.map(([u, v]) => `${x.toPx(u).toFixed(1)} ${y.toPx(v).toFixed(1)}`).join('L')}Z`)
    .join('');
