import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { DRAW_NOTHING, openDrawer } from './deskPage';

/** A file that came out of the drawer, as saved. */
export interface Saved {
  readonly name: string;
  /** Format and size, as listed. */
  readonly said: string;
  readonly bytes: Buffer;
}

/**
 * For `init`: the worker that films runs the page's `fault` before anything of its own. The worker is started from code that the page's
 * policy would not let in, so the context has to bypass it.
 */
export const putFaultFirst = (): void => {
  const Real = Worker;
  globalThis.Worker = class extends Real {
    constructor(url: string | URL, options?: WorkerOptions) {
      const code = `${String(Reflect.get(globalThis, 'fault'))}
        const early = [];
        self.onmessage = (event) => early.push(event);
        await import(${JSON.stringify(String(url))});
        early.forEach((event) => self.onmessage(event));`;
      const blob = new Blob([code], { type: 'text/javascript' });
      super(String(url).includes('clip.worker') ? URL.createObjectURL(blob) : url, options);
    }
  };
};

/** A `fault` by which clips are made as ever, and no pixel of the figure is filled: for tests that do not look at it. */
export const FILM_NOTHING = `(${String(DRAW_NOTHING)})();`;

/** Opens the Clip drawer and waits for it. */
export async function openClip(page: Page): Promise<void> {
  await openDrawer(page, 'clip');
  await page.getByRole('heading', { name: 'Clip', exact: true }).waitFor();
}

/** A clip of about a second and a half, 320 x 180, 25 frames a second: the swing at its own speed, nothing else. */
export async function wishShort(page: Page): Promise<void> {
  await page.getByLabel('Size').selectOption('draft');
  await page.getByLabel('Frames a second').selectOption('25');
  await page.getByLabel('Swings', { exact: true }).selectOption('one');
  await page.getByLabel('Slow downswing').selectOption('none');
  await page.getByLabel('Title card').setChecked(false);
  await page.getByLabel('End card with code').setChecked(false);
}

/** Taps a button that makes a file, waits for the file and saves it. */
export async function makeByTouch(page: Page, button: string): Promise<Saved> {
  const files = page.locator('.files li');
  const before = await files.count();
  await page.getByRole('button', { name: button, exact: true }).tap();
  await page.waitForFunction(
    (count) => document.querySelectorAll('.files li').length > count || document.querySelector('.work-excuse') !== null,
    before,
    { timeout: 60_000 },
  );
  const excuse = await page.locator('.work-excuse').allInnerTexts();
  if (excuse.length > 0) throw new Error(excuse.join());
  const newest = files.first();
  const said = await newest.locator('.fine').innerText();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    newest.getByRole('link', { name: 'Save' }).tap(),
  ]);
  return { name: download.suggestedFilename(), said, bytes: await readFile(await download.path()) };
}

/** Drops a file on the page, as from a folder of the device. */
export async function dropFile(page: Page, { name, bytes }: Pick<Saved, 'name' | 'bytes'>): Promise<void> {
  await page.evaluate(
    ({ fileName, base64 }) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], fileName));
      for (const type of ['dragover', 'drop']) {
        document.body.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
      }
    },
    { fileName: name, base64: bytes.toString('base64') },
  );
}

/** Pictures of a film at these instants, as the browser's own player shows them: rows of RGBA. */
export async function playFrames(
  page: Page,
  { bytes }: Saved,
  type: string,
  seconds: readonly number[],
  fps: number,
): Promise<Picture[]> {
  const found = await page.evaluate(
    async ({ base64, mime, instants, frame }) => {
      const blob = new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type: mime });
      const video = document.createElement('video');
      video.muted = true;
      video.src = URL.createObjectURL(blob);
      await new Promise((resolve, reject) => {
        video.onloadeddata = resolve;
        video.onerror = () => reject(new Error(video.error?.message ?? 'the player refuses the film'));
      });
      const canvas = document.createElement('canvas');
      canvas.width = video.videoWidth;
      canvas.height = video.videoHeight;
      const pen = canvas.getContext('2d', { willReadFrequently: true })!;
      const pictures: { width: number; height: number; png: string }[] = [];
      for (const instant of instants) {
        // Found is not yet shown: on a busy machine the picture comes a while after the player says that it stands at the instant.
        await new Promise<void>((resolve) => {
          const look = (_: number, { mediaTime }: VideoFrameCallbackMetadata): void => {
            const early = (instant - mediaTime) / frame;
            if (early > -0.5 && early < 1) resolve();
            else video.requestVideoFrameCallback(look);
          };
          video.requestVideoFrameCallback(look);
          video.currentTime = instant;
        });
        pen.drawImage(video, 0, 0);
        pictures.push({ width: canvas.width, height: canvas.height, png: canvas.toDataURL('image/png') });
      }
      URL.revokeObjectURL(video.src);
      return pictures;
    },
    { base64: bytes.toString('base64'), mime: type, instants: [...seconds], frame: 1 / fps },
  );
  return found.map(({ png }) => decodePng(png));
}

/** A picture as rows of RGBA. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export function decodePng(dataUrl: string): Picture {
  return PNG.sync.read(Buffer.from(dataUrl.slice(dataUrl.indexOf(',') + 1), 'base64'));
}

/** Frames of the clip in the drawer, drawn by the page itself and never encoded. */
export async function drawFrames(page: Page, frames: readonly number[]): Promise<Picture[]> {
  const urls = await page.evaluate(
    (wanted) =>
      (globalThis as unknown as { slantwiseFrames: (frames: readonly number[]) => Promise<string[]> }).slantwiseFrames(
        wanted,
      ),
    [...frames],
  );
  return urls.map(decodePng);
}

/** Peak signal-to-noise ratio of two pictures, dB (ITU-T J.340 for 8 bits), over red, green and blue. */
export function psnr(a: Picture, b: Picture): number {
  if (a.width !== b.width || a.height !== b.height) throw new Error('The pictures differ in size.');
  let sum = 0;
  for (let i = 0; i < a.data.length; i++) if (i % 4 !== 3) sum += (a.data[i] - b.data[i]) ** 2;
  return 10 * Math.log10(255 ** 2 / (sum / ((a.data.length / 4) * 3)));
}
