import type { BatchedLines } from '../lines/lineBatch';
import type { Theme } from './theme';
import { TintedQuad } from './tintedQuad';

/** The target line with its rule and arrowhead. */
export class TargetLine {
  readonly arrowhead: TintedQuad;

  constructor(
    private readonly theme: Theme,
    private readonly lines: BatchedLines,
  ) {
    this.arrowhead = new TintedQuad(theme.ink, 1);
  }

  /** Draws it through a ball, m. */
  draw(ball: ArrayLike<number>): void {
    const { ink } = this.theme;
    const [x, z] = [ball[0], ball[2]];
    const y = 0.0012;
    this.lines.clear();
    this.lines.line([-1.9, y, z], [x - 0.05, y, z], ink, 1.15);
    this.lines.line([x + 0.05, y, z], [2.4, y, z], ink, 1.15);
    for (let i = -18; i <= 22; i++) {
      if (i === 0) continue;
      const at = x + i * 0.1;
      const long = i % 5 === 0 ? 0.046 : 0.02;
      this.lines.line([at, y, z + 0.008], [at, y, z + 0.008 + long], ink, 0.9, 0.75);
    }
    this.lines.commit();
    const tip = x + 0.98;
    this.arrowhead.put([
      [tip, y, z],
      [tip - 0.15, y, z + 0.034],
      [tip - 0.115, y, z],
      [tip - 0.15, y, z - 0.034],
    ]);
  }

  dispose(): void {
    this.arrowhead.dispose();
  }
}
