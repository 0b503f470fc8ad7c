import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RenderScheduler } from '../../src/stage/renderScheduler';

// The browser's frames, one at a time by hand.
let due = new Map<number, () => void>();
let given = 0;
const frame = (): void => {
  const now = due;
  due = new Map();
  for (const work of now.values()) work();
};
beforeEach(() => {
  due.clear();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => {
    due.set(++given, work);
    return given;
  });
  vi.stubGlobal('cancelAnimationFrame', (id: number) => due.delete(id));
});
afterEach(() => vi.unstubAllGlobals());

describe('frames of the stage', () => {
  test('come once however often they are asked for, and then no more', () => {
    const draw = vi.fn(() => true);
    const frames = new RenderScheduler(draw);
    frames.ask();
    frames.ask();
    expect(draw).not.toHaveBeenCalled();
    expect(due.size).toBe(1);
    frame();
    expect(draw).toHaveBeenCalledTimes(1);
    expect(due.size).toBe(0);
  });

  test('are tried again until they are drawn', () => {
    const answers = [false, false, true];
    const draw = vi.fn(() => answers.shift()!);
    const frames = new RenderScheduler(draw);
    frames.ask();
    for (let i = 0; i < 5; i++) frame();
    expect(draw).toHaveBeenCalledTimes(3);
  });

  test('asked for while one is drawn are the next', () => {
    const drawn: number[] = [];
    const frames = new RenderScheduler(() => {
      drawn.push(drawn.length);
      if (drawn.length < 3) frames.ask();
      return true;
    });
    frames.ask();
    frame();
    expect(drawn).toEqual([0]);
    for (let i = 0; i < 5; i++) frame();
    expect(drawn).toEqual([0, 1, 2]);
  });

  test('do not come once they are called off, and can be asked for again', () => {
    const draw = vi.fn(() => true);
    const frames = new RenderScheduler(draw);
    frames.ask();
    frames.cancel();
    frame();
    expect(draw).not.toHaveBeenCalled();
    frames.ask();
    frame();
    expect(draw).toHaveBeenCalledTimes(1);
  });
});
