import { Vector2 } from 'three';
import { expect, test } from 'vitest';
import { K } from '../../src/model/keys';
import { headAt } from '../../src/reading/swing';
import { LineBatch } from '../../src/scene/lines/lineBatch';
import { SCENE_TOKENS, themeOf, type SceneTokens } from '../../src/scene/setting/theme';
import { Traces } from '../../src/scene/lines/trace';
import { current, setMovement } from '../../src/store';

const tokens = Object.fromEntries(SCENE_TOKENS.map((name) => [name, '#336677'])) as SceneTokens;

test('the head trace is a curve to the eye even of the latest swing: its pieces leave the path by less than 5 mm', () => {
  setMovement('leadWristFlexion', 40);
  setMovement('rotationRate', 0.6);
  setMovement('rotationDelay', 40);
  setMovement('trailSideBend', 15);
  setMovement('pelvisShift', 8);
  const { swing } = current();
  const size = new Vector2(600, 400);
  const traces = new Traces(themeOf('light', tokens), size, new LineBatch(500, size).take(500));
  traces.draw(swing);
  const { heads } = traces;
  const place = (i: number): number[] => [...heads.subarray(3 * i, 3 * i + 3)];
  /** Distance of `p` from the piece of the trace that begins at sample `i`, m. */
  const off = (p: ArrayLike<number>, i: number): number => {
    const [a, b] = [place(i), place(i + 1)];
    const dot = (u: number[], v: number[]): number => u.reduce((sum, x, axis) => sum + x * v[axis], 0);
    const ab = b.map((x, axis) => x - a[axis]);
    const ap = a.map((x, axis) => p[axis] - x);
    const share = Math.min(1, Math.max(0, dot(ap, ab) / (dot(ab, ab) || 1)));
    return Math.hypot(...ap.map((x, axis) => x - share * ab[axis]));
  };
  const pieces = Array.from({ length: heads.length / 3 - 1 }, (_, i) => i);
  const [from, to] = [swing.reference.times[K.top], swing.reference.times[K.impact]];
  const head = new Float64Array(3);
  let most = 0;
  for (let step = 0; step <= 1000; step++) {
    headAt(swing, from + ((to - from) * step) / 1000, head);
    most = Math.max(most, Math.min(...pieces.map((i) => off(head, i))));
  }
  expect(most).toBeLessThan(0.005);
});
