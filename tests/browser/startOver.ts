import type { Page } from 'playwright-core';
import { drawn } from './deskPage';

/** Takes a desk that another test has used back to how it opened: everything undone, drawers and sheets shut, time at lead arm parallel. */
export async function startOver(page: Page): Promise<void> {
  await page.mouse.up();
  await page.evaluate(async () => {
    (document.activeElement as HTMLElement | null)?.blur();
    for (const sheet of document.querySelectorAll<HTMLElement>('[popover]:popover-open')) sheet.hidePopover();
    document.querySelector<HTMLElement>(':is([id^="tab-"], [id^="more-"])[aria-expanded="true"]')?.click();
    // A second tap on a plate would turn it over.
    for (const title of [...document.querySelectorAll<HTMLElement>('.plate-header button')].reverse()) title.click();
    const undo = document.querySelector<HTMLElement>('.turn')!;
    while (undo.getAttribute('aria-disabled') !== 'true') {
      undo.click();
      // React shows what a click did when the script pauses.
      await Promise.resolve();
    }
  });
  await drawn(page);
}
