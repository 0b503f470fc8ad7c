/** Hands a text or a picture to the browser as a download. Needs no store and no network. */
export function saveFile(name: string, content: BlobPart, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // Some browsers read the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
