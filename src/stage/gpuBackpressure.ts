/** Pictures that may be on their way to the screen at once: one being drawn, one behind it. */
const MOST = 2;

type Fences = Pick<
  WebGL2RenderingContext,
  | 'fenceSync'
  | 'getSyncParameter'
  | 'deleteSync'
  | 'flush'
  | 'SYNC_GPU_COMMANDS_COMPLETE'
  | 'SYNC_STATUS'
  | 'UNSIGNALED'
>;

/**
 * Holds the next picture back while the graphics processor still has two to draw. What it buys: a browser takes any number of
 * pictures, so where drawing is slow they queued up for seconds. The figure lagged behind the slider instead of skipping steps, and
 * a drawer opened over the stage froze the page. Held back, the picture is at most two behind.
 */
export class GpuBackpressure {
  private fences: WebGLSync[] = [];
  private isSent = false;

  constructor(private readonly gl: Fences) {}

  /** Whether a picture drawn now would have to wait. A lost context answers no, and a fence of its time is forgotten. */
  isBusy(): boolean {
    const { gl } = this;
    while (this.fences.length > 0 && gl.getSyncParameter(this.fences[0], gl.SYNC_STATUS) !== gl.UNSIGNALED) {
      gl.deleteSync(this.fences.shift()!);
    }
    if (this.fences.length < MOST) return false;
    // A browser sends a picture off by itself when it shows it. One that it does not show would wait with its fence for the next
    // picture, which waits for the fence. Sending takes time, so that nobody else asks for it.
    if (!this.isSent) gl.flush();
    this.isSent = true;
    return true;
  }

  /** A picture has just been handed over. */
  mark(): void {
    const fence = this.gl.fenceSync(this.gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    if (fence) this.fences.push(fence);
    this.isSent = false;
  }
}
