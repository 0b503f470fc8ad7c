import type { BatchedLines } from '../lines/lineBatch';
import type { Theme } from './theme';
import { TintedQuad } from './tintedQuad';

/** Ends of the glass sheet along the target line, m. */
export const GLASS_X = { from: -0.66, to: 0.56 } as const;
/** Its lower edge stays this far up the slope from the ground, m. */
const FOOT = 0.004;

/** How the sheet stands: on the ground at `footZ` (m), leaning at `slope` (rad above the ground), `height` m up the slope. */
export interface GlassStand {
  readonly footZ: number;
  readonly slope: number;
  readonly height: number;
}

/** A place on a sheet, m: `x` along the target line, `up` up its slope. */
export const onGlass = ({ footZ, slope }: GlassStand, x: number, up: number): [number, number, number] => [
  x,
  up * Math.sin(slope),
  footZ - up * Math.cos(slope),
];

/** The sheet of glass on the plane of the shaft at address, with its edges and the drawing sign for glass. */
export class Glass {
  readonly sheet: TintedQuad;

  constructor(
    private readonly theme: Theme,
    private readonly lines: BatchedLines,
  ) {
    this.sheet = new TintedQuad(theme.glass, theme.glassShare);
  }

  draw(stand: GlassStand): void {
    const { glass } = this.theme;
    const { from: left, to: right } = GLASS_X;
    const at = (x: number, up: number): [number, number, number] => onGlass(stand, x, up);
    const corners = [at(left, FOOT), at(right, FOOT), at(right, stand.height), at(left, stand.height)];
    this.sheet.put(corners);
    this.lines.clear();
    corners.forEach((corner, i) => this.lines.line(corner, corners[(i + 1) % 4], glass, 1.25, 0.85));
    // The drawing sign for glass: three short strokes in two corners.
    for (const [x, up] of [
      [left + 0.06, stand.height - 0.34],
      [right - 0.23, 0.1],
    ]) {
      for (let i = 0; i < 3; i++)
        this.lines.line(at(x + i * 0.045, up), at(x + i * 0.045 + 0.09, up + 0.125), glass, 1, 0.6);
    }
    this.lines.commit();
  }

  dispose(): void {
    this.sheet.dispose();
  }
}
