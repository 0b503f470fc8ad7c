import { desk, put } from '../../store';
import { LINK_NOT_OPENED } from '../../words/showing/errorMessages';
import type * as Opening from './openDocument';

/** Loads the code that opens links and files and passes it to `work`. If it cannot be loaded, the desk shows a notice. */
export function loadOpeners(work: (opening: typeof Opening) => unknown): Promise<void> {
  return import('./openDocument').then(
    async (opening) => void (await work(opening)),
    () =>
      put({
        session: { ...desk.getState().session, guest: null },
        notice: LINK_NOT_OPENED,
      }),
  );
}

/**
 * Opens documents from outside: from the page's address, or from a file dropped on it. The code that reads them is
 * loaded when needed.
 */
export function acceptIncomingLinks(): void {
  // Links with a plan are written in version 2 and later: the desk is not put up for what the player's page will show.
  if (/^#s(?!1\.)\d/.test(location.hash)) put({ session: { ...desk.getState().session, guest: 'opening' } });
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
