import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { setDrawer } from '../../src/store';
import { answerDrawers } from '../../src/store/effects/answerDrawers';
import { isAnswerFirst, noteAnswered, noteAsked } from '../../src/store/solver/answering';

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  noteAnswered();
  vi.useRealTimers();
});

test('a picture waits for the answer of the drawer, and not for one that has come', () => {
  expect(isAnswerFirst()).toBe(false);
  noteAsked();
  expect(isAnswerFirst()).toBe(true);
  noteAnswered();
  expect(isAnswerFirst()).toBe(false);
});

test('it waits 60 ms at the most, however often is asked meanwhile', () => {
  noteAsked();
  for (let step = 0; step < 5; step++) {
    vi.advanceTimersByTime(11);
    noteAsked();
    expect(isAnswerFirst()).toBe(true);
  }
  vi.advanceTimersByTime(6);
  noteAsked();
  expect(isAnswerFirst()).toBe(false);
});

test('a drawer that asks makes the picture wait from the tap on, though its solvers are still to be fetched', () => {
  const end = answerDrawers();
  setDrawer('ball');
  expect(isAnswerFirst()).toBe(false);
  setDrawer('map');
  expect(isAnswerFirst()).toBe(true);
  setDrawer(null);
  end();
});
