/** How far a piece of work has come. */
export interface Progress {
  /** What is being done, in words. */
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
  /** Seconds that are likely left; unknown at the start. */
  readonly secondsLeft: number | undefined;
}

/** Progress and cancellation of long work. */
export interface TaskControl {
  readonly signal: AbortSignal;
  readonly tell: (progress: Progress) => void;
}

/** Thrown where the user stopped the work. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}

/** A file that was made. */
export interface Made {
  readonly name: string;
  /** "MP4 (H.264), 1280 × 720, 12.4 s" */
  readonly format: string;
  readonly blob: Blob;
}

/** Yields to the page, so that input and drawing come first. Uses a message because timers are throttled in a hidden page. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** "slantwise-steep-7-iron": lower case, safe for any file system. */
export const fileName = (...parts: readonly string[]): string =>
  ['slantwise', ...parts]
    .map((part) =>
      part
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, ''),
    )
    .filter(Boolean)
    .join('-')
    .slice(0, 80);

/** Seconds left, from how long the work has taken so far; the clock stays outside of what is made. */
export function createEstimate(now: () => number): (share: number) => number | undefined {
  const started = now();
  return (share) => {
    const gone = (now() - started) / 1000;
    return share > 0.02 && gone > 0.4 ? (gone * (1 - share)) / share : undefined;
  };
}
