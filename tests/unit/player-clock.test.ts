import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createClock } from '../../src/player/clock';
import type { Positions } from '../../src/store';

const POSITIONS = {
  P1: -0.75,
  P2: -0.5,
  P3: -0.3,
  P4: 0,
  P5: 0.15,
  P6: 0.2,
  P7: 0.25,
  P8: 0.3,
  P9: 0.4,
  P10: 0.7,
} as Positions;
const FRAME_MS = 16;

/** Frames as they are asked for, by a clock of the test's own. */
let frames: ((nowMs: number) => void)[];
let nowMs: number;
function runFrames(most: number): number {
  let count = 0;
  for (; frames.length > 0 && count < most; count++) {
    nowMs += FRAME_MS;
    frames.splice(0).forEach((work) => work(nowMs));
  }
  return count;
}
const wantStillness = (isWanted: boolean): void => void vi.stubGlobal('matchMedia', () => ({ matches: isWanted }));

beforeEach(() => {
  [frames, nowMs] = [[], 1000];
  vi.stubGlobal('requestAnimationFrame', (work: (at: number) => void) => frames.push(work));
  wantStillness(false);
});
afterEach(() => vi.unstubAllGlobals());

describe("the clock of the player's page", () => {
  test('plays from the top to just after impact, over and over for five seconds, and ends at lead arm parallel', () => {
    const clock = createClock(POSITIONS, 1);
    const seen: number[] = [];
    clock.subscribe(() => seen.push(clock.get().t));
    clock.play(0.25);
    const count = runFrames(10_000);
    expect((count * FRAME_MS) / 1000).toBeGreaterThan(4.9);
    expect((count * FRAME_MS) / 1000).toBeLessThan(5.1);
    expect(clock.get()).toEqual({ t: 0.15, playing: false });
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...seen)).toBeGreaterThan(0.25);
    // A quarter of 5 s over 0.28 s of swing: four times from the start again.
    expect(seen.filter((t, i) => i > 0 && t < seen[i - 1] - 0.2)).toHaveLength(4);
    expect(frames).toEqual([]);
  });

  test('steps from position to position where movement is not wanted', () => {
    wantStillness(true);
    const clock = createClock(POSITIONS, 1);
    const seen = new Set<number>();
    clock.subscribe(() => seen.add(clock.get().t));
    clock.play(0.25);
    runFrames(10_000);
    expect([...seen]).toEqual([0, 0.15, 0.2, 0.25]);
    expect(clock.get()).toEqual({ t: 0.15, playing: false });
  });

  test('stops where it is, or where it is put, and asks for no more frames', () => {
    const clock = createClock(POSITIONS, 1);
    clock.play(1);
    runFrames(5);
    const { t } = clock.get();
    clock.pause();
    expect(clock.get()).toEqual({ t, playing: false });
    expect(runFrames(10)).toBeLessThanOrEqual(1);
    clock.play(1);
    clock.set(0.2);
    expect(runFrames(10)).toBeLessThanOrEqual(1);
    expect(clock.get()).toEqual({ t: 0.2, playing: false });
  });
});
