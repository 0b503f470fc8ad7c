/** A part of the app did not come over the network. */
export class ChunkLoadError extends Error {
  override readonly name = 'NotFetched';
}

/**
 * Says of a part that does not come that it was not fetched. Asking for it again may be of no use while the page stands: a browser
 * may remember which modules did not come, as Chromium does.
 */
export const loadingChunk =
  <T>(load: () => Promise<T>): (() => Promise<T>) =>
  () =>
    load().catch((cause: unknown) => {
      throw new ChunkLoadError(cause instanceof Error ? cause.message : String(cause), { cause });
    });
