import type { Color } from 'three';
import { AT, createPose, type Pose } from '../../model/chain';
import { drawnPose, type Swing } from '../../reading/swing';
import type { BatchedLines } from './lineBatch';

/** Dash, gap, dash, gap ... in metres along a shaft. */
export const SHAFT_DASHES = {
  reference: [0.055, 0.03],
  ghost: [0.06, 0.02, 0.012, 0.02, 0.012, 0.02],
} as const;
/** Dashes of the longest shaft, and some. */
export const SHAFT_LINES = 60;
const PX = 3;
/** Shafts closer than this (m, at the head and at the hands) would only thicken the drawn one. */
const SAME = 0.006;

/** The shaft of another swing as a broken line. */
export class BrokenShaft {
  /** Of the other swing as it was drawn last. */
  readonly pose: Pose = createPose();
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly lines: BatchedLines,
    private readonly dashes: readonly number[],
    private readonly colour: Color,
  ) {}

  /** Draws the shaft of a swing at a time (s) unless it lies on the one shown. Answers whether it did; of no swing it does not. */
  draw(other: { readonly swing: Swing; readonly t: number } | undefined, shown: Pose): boolean {
    const { lines } = this;
    lines.clear();
    const isDrawn = other !== undefined && this.drawDashes(other.swing, other.t, shown);
    lines.commit();
    return isDrawn;
  }

  private drawDashes(swing: Swing, t: number, shown: Pose): boolean {
    drawnPose(swing, t, this.pose);
    const { length, gripInset } = swing.rig.club;
    const away = (at: number): number =>
      Math.hypot(this.pose[at] - shown[at], this.pose[at + 1] - shown[at + 1], this.pose[at + 2] - shown[at + 2]);
    if (away(AT.head) < SAME && away(AT.leadGrip) < SAME) return false;
    const { dashes } = this;
    let from = -gripInset;
    for (let i = 0; from < length - gripInset; i++) {
      const to = Math.min(length - gripInset, from + dashes[i % dashes.length]);
      if (i % 2 === 0) this.lines.line(this.along(this.a, from), this.along(this.b, to), this.colour, PX);
      from = to;
    }
    return true;
  }

  private along(out: Float64Array, distance: number): Float64Array {
    for (let i = 0; i < 3; i++) out[i] = this.pose[AT.leadGrip + i] + distance * this.pose[AT.shaftDirection + i];
    return out;
  }
}
