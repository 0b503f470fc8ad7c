import type { Color } from 'three';
import type { Figure } from '../../figure/figure';
import { LIMBS } from '../../figure/sticks/limbs';
import { createPlacement, MATRIX_SIZE, PART } from '../../figure/partIds';
import { placeFigure } from '../../figure/place';
import { heelLiftAt } from '../../figure/stance';
import { AT, createPose } from '../../model/chain';
import { drawnPose, type Swing } from '../../reading/swing';
import type { BatchedLines } from './lineBatch';

/** Most bodies of a fan; more are not drawn. */
export const FAN_BODIES = 9;
const LIMB_LINES = LIMBS.reduce((sum, limb) => sum + limb.length - 1, 0);
/** Lines of a full fan: the limbs of each body, and its shaft. */
export const FAN_LINES = FAN_BODIES * (LIMB_LINES + 1);
/** Limbs that lie on those of the body that stands there, m, would only thicken it. */
const SAME = 0.015;
const PEN = { limb: 1, shaft: 1.6 } as const;
/** Share of full ink: nine bodies lie over one another. */
const SHARE = { limb: 0.5, shaft: 0.75 } as const;

/** Other bodies of one player in thin lines, each with its shaft. */
export class BodyFan {
  private readonly pose = createPose();
  private readonly placement = createPlacement();
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly lines: BatchedLines,
    private readonly colour: Color,
  ) {}

  /**
   * Draws each swing at its own time, reference s, over a ball at `ballPoint` (m, world), where it differs from the body that stands there
   * (`shown`). Of none it leaves nothing.
   */
  draw(
    bodies: readonly { readonly swing: Swing; readonly t: number }[],
    figure: Figure,
    ballPoint: Float64Array,
    shown: Float64Array,
  ): void {
    const { lines } = this;
    lines.clear();
    for (const { swing, t } of bodies.slice(0, FAN_BODIES)) {
      drawnPose(swing, t, this.pose);
      placeFigure(figure, this.pose, { ballPoint, heelLift: heelLiftAt(swing, t) }, this.placement);
      this.drawLimbs(shown);
      this.drawShaft(swing);
    }
    lines.commit();
  }

  private drawLimbs(shown: Float64Array): void {
    for (const limb of LIMBS) {
      for (let i = 1; i < limb.length; i++) {
        const [from, to] = [PART[limb[i - 1]], PART[limb[i]]];
        if (this.isSame(from, shown) && this.isSame(to, shown)) continue;
        this.jointOf(from, this.a);
        this.jointOf(to, this.b);
        this.lines.line(this.a, this.b, this.colour, PEN.limb, SHARE.limb);
      }
    }
  }

  private drawShaft({ rig: { club } }: Swing): void {
    const { a, b, pose } = this;
    for (let i = 0; i < 3; i++) {
      a[i] = pose[AT.leadGrip + i] - club.gripInset * pose[AT.shaftDirection + i];
      b[i] = pose[AT.head + i];
    }
    this.lines.line(a, b, this.colour, PEN.shaft, SHARE.shaft);
  }

  private isSame(part: number, shown: Float64Array): boolean {
    const at = part * MATRIX_SIZE + 9;
    const off = (i: number): number => this.placement[at + i] - shown[at + i];
    return Math.hypot(off(0), off(1), off(2)) < SAME;
  }

  private jointOf(part: number, out: Float64Array): void {
    for (let i = 0; i < 3; i++) out[i] = this.placement[part * MATRIX_SIZE + 9 + i];
  }
}
