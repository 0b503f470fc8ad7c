import type { Color } from 'three';
import { AT, createPose, type Pose } from '../../model/chain';
import { swingPose, type Swing } from '../../reading/swing';
import type { BatchedLines, LineBatch } from './lineBatch';
import type { Theme } from '../setting/theme';

/** Dash, gap, dash, gap ... in metres along a shaft. */
const REFERENCE_DASH = [0.055, 0.03];
const GHOST_DASH = [0.06, 0.02, 0.012, 0.02, 0.012, 0.02];
/** Dashes of two of the longest shafts, and some. */
const LINES = 120;
/** Shafts closer than this (m, at the head and at the hands) would only thicken the drawn one. */
const SAME = 0.006;

/** Shafts of other swings as broken lines: the reference in verdigris dashes, the ghost in plum dash-dot-dot. */
export class BrokenShafts {
  private readonly lines: BatchedLines;
  private readonly pose: Pose = createPose();
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly theme: Theme,
    sheet: LineBatch,
  ) {
    this.lines = sheet.take(LINES);
  }

  clear(): void {
    this.lines.clear();
  }

  /** Draws the shaft of another swing at time `t` (s) unless it lies on the one shown. Answers whether it did. */
  draw(kind: 'reference' | 'ghost', swing: Swing, t: number, shown: Pose): boolean {
    swingPose(swing, t, this.pose);
    const { length, gripInset } = swing.rig.club;
    const away = (at: number): number =>
      Math.hypot(this.pose[at] - shown[at], this.pose[at + 1] - shown[at + 1], this.pose[at + 2] - shown[at + 2]);
    if (away(AT.head) < SAME && away(AT.leadGrip) < SAME) return false;
    const [pattern, colour, px]: [number[], Color, number] =
      kind === 'reference' ? [REFERENCE_DASH, this.theme.reference, 3] : [GHOST_DASH, this.theme.ghost, 3];
    let from = -gripInset;
    for (let i = 0; from < length - gripInset; i++) {
      const to = Math.min(length - gripInset, from + pattern[i % pattern.length]);
      if (i % 2 === 0) this.lines.line(this.along(this.a, from), this.along(this.b, to), colour, px);
      from = to;
    }
    return true;
  }

  commit(): void {
    this.lines.commit();
  }

  private along(out: Float64Array, distance: number): Float64Array {
    for (let i = 0; i < 3; i++) out[i] = this.pose[AT.leadGrip + i] + distance * this.pose[AT.shaftDirection + i];
    return out;
  }
}
