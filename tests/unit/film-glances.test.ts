import { expect, test } from 'vitest';
import type { Glance } from '../../src/video/frames/glance';
import { createGlances } from '../../src/video/frames/glances';
import { VideoRefused } from '../../src/video/video';

/** A film whose glances come when they are let go of, and what was asked for. */
function openSlow(frames = 100, missing: readonly number[] = []) {
  const asked: (readonly number[])[] = [];
  const glance = createGlances({ kind: 'video', w: 1080, h: 1920, frames }, async (indices, _, hear) => {
    asked.push(indices);
    for (const index of indices) {
      await Promise.resolve();
      if (missing.includes(index)) return hear(indices[0], new VideoRefused('damaged'));
      hear(index, { w: index, h: 1, pixels: new Uint8ClampedArray(4) } satisfies Glance);
    }
    return undefined;
  });
  const at = async (index: number): Promise<number | undefined> => (await glance(index))?.w;
  return { asked, glance, at };
}

test('a jump fetches one frame, a step two ahead, and a step back within what is kept nothing', async () => {
  const { asked, at, glance } = openSlow();
  expect(await at(40)).toBe(40);
  expect(asked).toEqual([[40]]);
  for (let index = 41; index <= 60; index++) expect(await at(index)).toBe(index);
  expect(asked.at(-1)).toEqual([62]);
  const before = asked.length;
  // At once: no promise.
  for (let index = 59; index >= 57; index--) expect(glance(index)).toMatchObject({ w: index });
  expect(asked.length).toBe(before);
});

test('going back without end, the next run is asked for before it is wanted', async () => {
  const { glance, at } = openSlow();
  for (let index = 50; index <= 80; index++) await at(index);
  let waits = 0;
  for (let index = 79; index >= 40; index--) {
    const found = glance(index);
    if (found instanceof Promise) waits++;
    expect((await found)?.w).toBe(index);
    await new Promise((resolve) => setTimeout(resolve));
  }
  expect(waits).toBe(0);
});

test('a frame that cannot be decoded is refused where it is asked for, and not where it lies ahead', async () => {
  const { at } = openSlow(100, [13]);
  for (const index of [10, 11, 12]) expect(await at(index)).toBe(index);
  await expect(at(13)).rejects.toThrow(VideoRefused);
  expect(await at(14)).toBe(14);
});

test('nothing beyond the ends of a film is asked for', async () => {
  const { asked, at } = openSlow(3);
  for (const index of [0, 1, 2, 1, 0]) expect(await at(index)).toBe(index);
  expect(asked.flat().every((index) => index >= 0 && index < 3)).toBe(true);
});

test('memory is used again, and never that of the glance on the screen', async () => {
  let given = 0;
  const glance = createGlances({ kind: 'video', w: 1080, h: 1920, frames: 3000 }, async (indices, spare, hear) => {
    given += spare.length;
    // As when they go over to a worker: here they are gone.
    structuredClone(spare, { transfer: [...spare] });
    for (const index of indices) hear(index, { w: index, h: 1, pixels: new Uint8ClampedArray(4) });
  });
  const shown = (await glance(310))!;
  for (let jump = 0; jump < 40; jump++) await glance((jump * 977) % 3000, shown);
  expect(given).toBeGreaterThan(20);
  expect(shown.pixels).toHaveLength(4);
});

test('a glance that was fetched ahead is shown when it comes, though another question was sent for it', async () => {
  const hears: ((index: number, heard: Glance) => void)[] = [];
  const ends: (() => void)[] = [];
  const glance = createGlances({ kind: 'video', w: 1080, h: 1920, frames: 100 }, (_, __, hear) => {
    hears.push(hear);
    return new Promise<void>((resolve) => ends.push(resolve));
  });
  const [first, second] = [glance(1), glance(2)];
  const here: Glance = { w: 2, h: 1, pixels: new Uint8ClampedArray(4) };
  hears[0](2, here);
  expect(await second).toBe(here);
  for (const end of ends) end();
  expect(await first).toBeUndefined();
});
