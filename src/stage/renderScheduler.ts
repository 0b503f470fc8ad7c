/**
 * Frames that are asked for. However often one is asked for before it comes, it comes once; one that could not be drawn is tried again in
 * the next. Nobody asks: nothing runs.
 */
export class RenderScheduler {
  private asked: number | undefined;

  /** `draw` answers whether it drew. */
  constructor(private readonly draw: () => boolean) {}

  ask(): void {
    this.asked ??= requestAnimationFrame(this.turn);
  }

  cancel(): void {
    if (this.asked !== undefined) cancelAnimationFrame(this.asked);
    this.asked = undefined;
  }

  private readonly turn = (): void => {
    // What is asked for while it draws is another frame.
    this.asked = undefined;
    if (!this.draw()) this.ask();
  };
}
