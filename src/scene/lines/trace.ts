import type { Color, Vector2 } from 'three';
import { AT, createPose, placeHead } from '../../model/chain';
import { createJointVector } from '../../model/joints';
import { K } from '../../model/keys';
import { impactOf, swingJoints, type Swing } from '../../reading/swing';
import type { BatchedLines } from './lineBatch';
import { Ribbon } from './ribbon';
import { traceColour, type Theme } from '../setting/theme';

const SAMPLES = 91;
/** Samples stand closer toward impact, where the head is fastest: at this share of an even step less. */
const CROWDED = 0.8;
/** Of each sample: how far of the time from the top to impact has passed. */
const SHARES = Float64Array.from({ length: SAMPLES }, (_, i) => {
  const u = i / (SAMPLES - 1);
  return u * (1 + CROWDED * (1 - u));
});
/** The hands' line and the ticks. */
export const TRACE_LINES = SAMPLES + 40;
/** Room for where the head has been, three numbers a sample, m. */
export const createHeadTrace = (): Float64Array => new Float64Array(SAMPLES * 3);
/** A place on the head's trace, `share` of its samples from the top to impact, m, written into `out`. */
export function placeOnTrace(heads: Float64Array, share: number, out: Float64Array): Float64Array {
  const i = Math.round(share * (SAMPLES - 1)) * 3;
  for (let axis = 0; axis < 3; axis++) out[axis] = heads[i + axis];
  return out;
}
/** Half the width of the ribbon, m: it grows with the head's speed. */
const HALF = { top: 0.007, impact: 0.017 } as const;
/** Pens of the hands' line, css px. */
const HANDS_PEN = { top: 1, impact: 2.4 } as const;
/** A tick across the ribbon every 25 ms of the player's own time. */
const TICK_S = 0.025;

/** Where head and hands have been from the top to impact, redrawn when the swing changes and not when time does. */
export class Traces {
  readonly ribbon: Ribbon;
  private readonly shafts = new Float64Array(SAMPLES * 3);
  private readonly hands = new Float64Array(SAMPLES * 3);
  private readonly joints = createJointVector();
  private readonly pose = createPose();
  /** Of the hands' line, piece by piece. */
  private readonly colours: readonly Color[];
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly theme: Theme,
    size: Vector2,
    private readonly lines: BatchedLines,
    /** The head's path is also written here, for what has to keep clear of it. */
    readonly heads = createHeadTrace(),
  ) {
    this.ribbon = new Ribbon(SHARES, size, theme);
    this.colours = Array.from({ length: (SAMPLES - 1) / 2 }, (_, i) => traceColour(theme, SHARES[2 * i]));
  }

  draw(swing: Swing): void {
    const { times } = swing.reference;
    const from = times[K.top];
    const span = impactOf(swing) - from;
    const between = swing.rig.handGap / 2;
    for (let i = 0; i < SAMPLES; i++) {
      this.placeClub(swing, from + span * SHARES[i]);
      for (let axis = 0; axis < 3; axis++) {
        this.heads[i * 3 + axis] = this.pose[AT.head + axis];
        this.shafts[i * 3 + axis] = this.pose[AT.shaftDirection + axis];
        this.hands[i * 3 + axis] = this.pose[AT.leadGrip + axis] + between * this.pose[AT.shaftDirection + axis];
      }
    }
    this.ribbon.lay(this.heads, this.shafts, HALF);
    this.lines.clear();
    for (let i = 0; i < SAMPLES - 1; i += 2) {
      const pen = HANDS_PEN.top + (HANDS_PEN.impact - HANDS_PEN.top) * SHARES[i];
      this.lines.line(this.handAt(i, this.a), this.handAt(i + 2, this.b), this.colours[i / 2], pen, 0.85);
    }
    const duration = span * swing.tempo;
    for (let s = 0; s <= duration + 1e-9; s += TICK_S) this.tick(swing, from + s / swing.tempo);
    this.lines.commit();
  }

  /** Takes the hands' line and the ticks away; the ribbon is a mesh of its own. */
  hide(): void {
    this.lines.clear();
    this.lines.commit();
  }

  /** Only the club: the rest of a pose costs more than twice as much and leaves no trace. */
  private placeClub(swing: Swing, t: number): void {
    swingJoints(swing, t, this.joints);
    placeHead(swing.rig, this.joints, this.pose);
  }

  private handAt(i: number, out: Float64Array): Float64Array {
    for (let axis = 0; axis < 3; axis++) out[axis] = this.hands[i * 3 + axis];
    return out;
  }

  private tick(swing: Swing, t: number): void {
    this.placeClub(swing, t);
    for (let axis = 0; axis < 3; axis++) {
      const along = this.pose[AT.shaftDirection + axis];
      this.a[axis] = this.pose[AT.head + axis] - along * 0.034;
      this.b[axis] = this.pose[AT.head + axis];
    }
    this.lines.line(this.a, this.b, this.theme.ink, 1.4);
  }

  dispose(): void {
    this.ribbon.dispose();
  }
}
