import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { desk, holdAt, pause, play, setPlayhead, setSetUp, setSpeed, swingSpan } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';

let frames: FrameRequestCallback[] = [];
/** The browser draws a frame at this time of its clock, ms. */
function frame(nowMs: number): void {
  const due = frames;
  frames = [];
  for (const callback of due) callback(nowMs);
}
const t = (): number => desk.getState().session.t;
const playing = (): boolean => desk.getState().session.playing;

beforeEach(() => {
  clearDesk();
  frames = [];
  vi.stubGlobal('requestAnimationFrame', (callback: FrameRequestCallback) => frames.push(callback));
});
afterEach(() => {
  pause();
  vi.unstubAllGlobals();
});

describe('playing', () => {
  test('goes by the clock, not by the count of frames: dropped frames change nothing', () => {
    setPlayhead(0);
    play();
    frame(1000);
    frame(1016);
    frame(1400);
    expect(t()).toBeCloseTo(0.4 * 0.25, 9);
  });

  test('at 1/10 the same second shows 0.1 s of the swing; a slower tempo shows less of it', () => {
    setSpeed(0.1);
    setPlayhead(0);
    play();
    frame(0);
    frame(1000);
    expect(t()).toBeCloseTo(0.1, 9);
    pause();
    setSetUp({ ...desk.getState().document.setUp, downswingMs: 310 });
    setPlayhead(0);
    play();
    frame(0);
    frame(1000);
    expect(t()).toBeCloseTo(0.1 / (310 / 250), 9);
  });

  test('stops at the finish and asks for no more frames', () => {
    setSpeed(1);
    setPlayhead(0.2);
    play();
    frame(0);
    frame(3000);
    expect(t()).toBe(swingSpan().to);
    expect(playing()).toBe(false);
    expect(frames).toHaveLength(0);
  });

  test('never runs longer than five seconds by itself', () => {
    setSpeed(0.1);
    holdAt('P1');
    play();
    frame(0);
    for (let ms = 16; ms <= 6000; ms += 16) frame(ms);
    expect(playing()).toBe(false);
    expect(t()).toBeCloseTo(swingSpan().from + 0.5, 6);
  });

  test('from the finish it starts over, early enough to end inside five seconds, the top at the latest', () => {
    const starts = ([1, 0.25, 0.1] as const).map((speed) => {
      setSpeed(speed);
      holdAt('P10');
      play();
      const from = t();
      pause();
      return from;
    });
    expect(starts[0]).toBe(swingSpan().from);
    expect(starts[1]).toBeCloseTo(swingSpan().to - 5 * 0.25, 9);
    expect(starts[2]).toBe(0);
  });

  test('taking the playhead by hand stops it', () => {
    setPlayhead(0);
    play();
    frame(0);
    setPlayhead(0.1);
    frame(500);
    expect(t()).toBe(0.1);
    expect(playing()).toBe(false);
  });

  test('stop and start within one frame leaves one clock running', () => {
    setPlayhead(0);
    play();
    pause();
    play();
    frame(0);
    frame(1000);
    expect(t()).toBeCloseTo(0.25, 9);
    expect(frames).toHaveLength(1);
  });

  test('with reduced motion it shows position after position and nothing between', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    holdAt('P4');
    play();
    const seen = new Set<number>();
    frame(0);
    for (let ms = 16; ms <= 4000; ms += 16) {
      frame(ms);
      seen.add(t());
    }
    // From P4: itself and the six positions after it.
    expect(seen.size).toBe(7);
    expect(playing()).toBe(false);
  });
});
