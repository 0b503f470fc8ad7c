/** Whether this browser lets a part of a page fill the screen: some phones do not. */
export const canFillScreen = (): boolean => document.fullscreenEnabled === true;

/** Lets an element fill the screen, or gives the screen back. A browser that refuses leaves the page as it is. */
export async function toggleFullScreen(element: HTMLElement): Promise<void> {
  if (!canFillScreen()) return;
  try {
    await (document.fullscreenElement ? document.exitFullscreen() : element.requestFullscreen());
  } catch {
    // Refused: there was no tap or key, or the device forbids it.
  }
}
