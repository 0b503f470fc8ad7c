/** A part of the app did not come over the network. */
export class NotFetched extends Error {
  override readonly name = 'NotFetched';
}

/**
 * Says of a part that does not come that it was not fetched. Asking for it again is of no use while the page stands: browsers remember
 * which modules did not come.
 */
export const fetching =
  <T>(load: () => Promise<T>): (() => Promise<T>) =>
  () =>
    load().catch((cause: unknown) => {
      throw new NotFetched(cause instanceof Error ? cause.message : String(cause), { cause });
    });
