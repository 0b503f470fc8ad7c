import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { codeOf } from '../../src/export/picture/qrCode';
import { toPracticeCode } from '../../src/practice/code';
import type { Practice } from '../../src/practice/practice';
import { writeFile } from '../../src/record/file/file';
import { DEFAULT_DOCUMENT } from '../../src/store/document/document';
import { makeLesson, makePlan, makePlayer } from '../unit/record-stand';
import { findFaults } from './axe';
import { openBookPage, press, startAfresh } from './lessonsPage';
import { launch, offOrigin, type Witness } from './support';

const player = makePlayer({ name: 'Robin' });
const plan = makePlan();
const now = { ...DEFAULT_DOCUMENT, plan };
const lessons = ['2026-11-25', '2026-12-09'].map((date) => makeLesson(player.id, { date, now }));
const drills = plan.drills.length;
const practised = (...dates: string[]): Practice => ({
  planId: plan.id,
  days: dates.map((date) => ({
    date,
    done: Array(drills).fill(true),
    counts: Array(drills).fill(12),
  })),
  felt: Array(drills).fill('sometimes'),
  words: 'The tray helped',
});
const first = toPracticeCode(practised('2026-11-26', '2026-11-27', '2026-12-01'));
const filmed = toPracticeCode(practised('2026-11-26', '2026-11-27', '2026-12-01', '2026-12-02'));
const pictured = toPracticeCode(practised('2026-12-10'));

/** A film of one still frame with the code, uncompressed: "YUV4MPEG2" as the yuv4mpeg(5) manual page of MJPEG tools has it. */
function filmOf(code: string): Uint8Array {
  const [width, height] = [640, 480];
  const squares = codeOf(code);
  const size = Math.floor(height / squares.length);
  const luma = new Uint8Array(width * height).fill(235);
  for (const [y, row] of squares.entries())
    for (const [x, isDark] of row.entries())
      if (isDark)
        for (let line = 0; line < size; line++) {
          const at = (y * size + line) * width + x * size;
          luma.fill(16, at, at + size);
        }
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, Buffer.alloc((width * height) / 2, 128)]);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420\n`), frame, frame]);
}

let browser: Browser | undefined;
let page: Page;
let witness: Witness;
const folder = mkdtempSync(join(tmpdir(), 'practice-'));
beforeAll(async () => {
  const film = join(folder, 'code.y4m');
  writeFileSync(film, filmOf(filmed));
  browser = await launch([
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ]);
  ({ page, witness } = await openBookPage(browser));
  await startAfresh(page);
  await press(page, 'Backup and hand-over');
  const text = writeFile([player, ...lessons], Date.UTC(2026, 11, 9));
  await page.getByLabel('Lesson book file').setInputFiles({
    name: 'book.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  await press(page, 'Take over');
  await press(page, 'Players');
  await press(page, 'Practice from the player');
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

const paste = async (code: string): Promise<void> => {
  await page.getByLabel('Code from the player').fill(code);
  await press(page, 'Take the code');
};
const said = () => page.locator('output.lesson-note');
const alert = () => page.locator('.lessons').getByRole('alert');

test('a pasted code is seen in its lesson and in progress; damaged or doubled it changes nothing', async () => {
  await paste(first.slice(0, -4));
  await expect.poll(() => alert().innerText()).toContain('it is damaged. Nothing was changed.');
  expect(await findFaults(page, ['.lessons'])).toEqual([]);
  await paste(first);
  await expect.poll(() => said().innerText()).toBe('Practice from the player: 3 days. Undo takes it back.');
  expect(await page.locator('.practice-kept').innerText()).toMatch(/3 days, 26 Nov to 1 Dec 2026[^]*The tray helped/);
  expect(await page.locator('.practice-kept tbody tr').first().innerText()).toMatch(/3\s+36\s+sometimes/);
  expect(await findFaults(page, ['.lessons'])).toEqual([]);
  await press(page, 'Practice from the player');
  await paste(first);
  await expect.poll(() => alert().innerText()).toBe('This practice is in the lesson already. Nothing was changed.');
});

test('the camera reads a later code, and is off afterwards; refused it says what else there is', async () => {
  await page.evaluate(() => {
    const { mediaDevices } = navigator;
    const ask = mediaDevices.getUserMedia.bind(mediaDevices);
    const streams: MediaStream[] = [];
    Object.assign(window, { streams });
    let isRefused = true;
    mediaDevices.getUserMedia = async (wish) => {
      if (isRefused) {
        isRefused = false;
        throw new DOMException('refused', 'NotAllowedError');
      }
      const stream = await ask(wish);
      streams.push(stream);
      return stream;
    };
  });
  await press(page, 'Use the camera');
  await expect.poll(() => alert().innerText()).toContain('Paste the code, or open a picture of it.');
  await press(page, 'Use the camera');
  await expect.poll(() => said().innerText()).toBe('Practice from the player: 1 day more. Undo takes it back.');
  const states = await page.evaluate(() =>
    (window as unknown as { streams: MediaStream[] }).streams.flatMap((one) =>
      one.getTracks().map(({ readyState }) => readyState),
    ),
  );
  expect(states).toEqual(['ended']);
});

test('a picture of a code is read, and progress shows the days between the lessons', async () => {
  await press(page, 'Practice from the player');
  const png = await page.evaluate((squares) => {
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = squares.length * 5;
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.fillStyle = '#000';
    for (const [y, row] of squares.entries())
      for (const [x, isDark] of row.entries()) if (isDark) pen.fillRect(x * 5, y * 5, 5, 5);
    return canvas.toDataURL('image/png').split(',')[1];
  }, codeOf(pictured));
  await page.getByLabel('File with the code, or a picture of it').setInputFiles({
    name: 'code.png',
    mimeType: 'image/png',
    buffer: Buffer.from(png, 'base64'),
  });
  await expect.poll(() => said().innerText()).toBe('Practice from the player: 1 day more. Undo takes it back.');
  await press(page, 'Robin');
  await press(page, 'Progress');
  const rows = page.locator('.progress-numbers tbody tr');
  await expect.poll(() => rows.locator('td:last-child').allInnerTexts()).toEqual(['4 days', '1 day']);
  expect(await page.locator('.plot-stroke').count()).toBe(2);
  expect(await findFaults(page, ['.lessons'])).toEqual([]);
  expect([offOrigin(witness), witness.errors, witness.violations]).toEqual([[], [], []]);
});
