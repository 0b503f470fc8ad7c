/**
 * The ways in from outside: a link that carries a document, a file dropped on the page. What reads them is fetched when something
 * comes.
 */
export function openDoors(): void {
  const opening = () => import('./opening');
  const followLink = (): void => {
    if (location.hash.length > 1) void opening().then(({ openLink }) => openLink());
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
    void opening().then(({ openFile }) => openFile(file));
  });
}
