/** A lazily loaded part of the app could not be fetched. */
export class ChunkLoadError extends Error {
  override readonly name = 'NotFetched';
}

/**
 * Turns a failed dynamic import into a `ChunkLoadError`. Retrying may not help until the page is reloaded, because
 * browsers may cache the failure, as Chromium does.
 */
export const loadingChunk =
  <T>(load: () => Promise<T>): (() => Promise<T>) =>
  () =>
    load().catch((cause: unknown) => {
      throw new ChunkLoadError(cause instanceof Error ? cause.message : String(cause), { cause });
    });
