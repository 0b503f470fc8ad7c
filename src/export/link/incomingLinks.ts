import { put } from '../../store';
import type * as Opening from './openDocument';

/** Fetches what opens links and files, and hands it to `work`. That it does not come is said on the desk. */
export function loadOpeners(work: (opening: typeof Opening) => unknown): Promise<void> {
  return import('./openDocument').then(
    async (opening) => void (await work(opening)),
    () =>
      put({
        notice:
          'What opens it is fetched when it is needed, and did not arrive. Nothing was changed. Once there is a network, load the page again.',
      }),
  );
}

/**
 * The ways in from outside: a link that carries a document, a file dropped on the page. What reads them is fetched when something
 * comes.
 */
export function acceptIncomingLinks(): void {
  const followLink = (): void => {
    if (location.hash.length > 1) void loadOpeners(({ openLink }) => openLink());
  };
  followLink();
  window.addEventListener('hashchange', followLink);

  const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
  window.addEventListener('dragover', (event) => {
    if (hasFiles(event)) event.preventDefault();
  });
  window.addEventListener('drop', (event) => {
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    void loadOpeners(({ openFile }) => openFile(file));
  });
}
