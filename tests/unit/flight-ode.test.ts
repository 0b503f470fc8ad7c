import { expect, test } from 'vitest';
import { createOde } from '../../src/math/ode';

/** A point going round the unit circle once in 2 pi seconds: (cos t, sin t), known at every instant. */
const circle = (tolerance: number) =>
  createOde(
    (y, out) => {
      out[0] = -y[1];
      out[1] = y[0];
    },
    2,
    tolerance,
    10,
  );

test.each([1e-4, 1e-6, 1e-8, 1e-10])(
  'ten times round the circle with tolerance %d comes back to where it started',
  (tolerance) => {
    const ode = circle(tolerance);
    ode.start([1, 0], 0.1);
    let worst = 0;
    let within = 0;
    while (ode.t < 20 * Math.PI) {
      expect(ode.step()).toBe(true);
      worst = Math.max(worst, Math.hypot(ode.y[0] - Math.cos(ode.t), ode.y[1] - Math.sin(ode.t)));
      for (const x of [0.25, 0.5, 0.75]) {
        const t = ode.t - ode.h * (1 - x);
        within = Math.max(within, Math.hypot(ode.at(x, 0) - Math.cos(t), ode.at(x, 1) - Math.sin(t)));
      }
    }
    // Errors of the steps add up over some hundred of them; the dense output is one order lower.
    expect(worst).toBeLessThan(300 * tolerance);
    expect(within).toBeLessThan(1000 * tolerance);
  },
);

test('the order is five: a tolerance 100,000 times finer takes about ten times as many steps', () => {
  const steps = (tolerance: number) => {
    const ode = circle(tolerance);
    ode.start([1, 0], 0.1);
    let count = 0;
    for (; ode.t < 20; count++) ode.step();
    return count;
  };
  const ratio = steps(1e-10) / steps(1e-5);
  expect(ratio).toBeGreaterThan(7);
  expect(ratio).toBeLessThan(14);
});

test('between steps the curve joins the ends exactly', () => {
  const ode = circle(1e-6);
  ode.start([1, 0], 0.1);
  ode.step();
  expect(ode.at(0, 0)).toBe(1);
  expect(ode.at(1, 1)).toBeCloseTo(ode.y[1], 15);
});

test('a slope that is not finite ends in a refusal, not in a hang', () => {
  const ode = createOde((_, out) => (out[0] = NaN), 1, 1e-6, 1);
  ode.start([0], 0.1);
  expect(ode.step()).toBe(false);
});
