import { smoothRise } from '../../math/spline';
import type { FramePoints } from './framePoints';
import { fitView, holdsAll, type Direction, type Insets, type View } from './view';

/** How finely the end of the opening is looked for. */
const STEPS = 32;

/** A fitted view as a function of the playhead. The same instant always answers the same view; up to shaft parallel it is one. */
export interface Framing {
  /** The view at a time, s. */
  readonly at: (t: number) => View;
}

/** Between two views along one direction. The eye goes straight: what both of them hold stays in the picture on the way. */
function between(near: View, far: View, share: number): View {
  const mix = (p: number, q: number): number => p + (q - p) * share;
  const [a, b] = [near.target, far.target];
  return {
    ...near,
    target: [mix(a[0], b[0]), mix(a[1], b[1]), mix(a[2], b[2])],
    distance: mix(near.distance, far.distance),
  };
}

/**
 * Frames a swing from one direction: as near as backswing and downswing allow up to shaft parallel, then opening smoothly so
 * that the club stays in the picture to the finish. It opens as gently as the picture's shape lets it.
 */
export function frameSwing(
  direction: Direction,
  points: FramePoints,
  width: number,
  height: number,
  insets: Insets,
): Framing {
  const near = fitView(direction, points.struck, width, height, insets);
  const far = fitView(direction, points.whole, width, height, insets);
  return openBetween(near, far, points.opens, (viewAt) =>
    points.through.every(({ t, points: all }) => holdsAll(viewAt(t), all, width, height, insets)),
  );
}

/**
 * Goes from a near view of a swing to a far one, both along one direction, after shaft parallel: as late as `holds` allows, which is asked
 * about the views at all times (s).
 */
export function openBetween(
  near: View,
  far: View,
  opens: FramePoints['opens'],
  holds: (viewAt: (t: number) => View) => boolean,
): Framing {
  const shareBy = (t: number, openAt: number): number => smoothRise((t - opens.from) / (openAt - opens.from));
  const viewBy =
    (openAt: number) =>
    (t: number): View => {
      const share = shareBy(t, openAt);
      return share === 0 ? near : share === 1 ? far : between(near, far, share);
    };
  let openAt = opens.latest;
  for (let step = STEPS; step > 0 && !holds(viewBy(openAt)); step--) {
    openAt = opens.earliest + ((opens.latest - opens.earliest) * (step - 1)) / STEPS;
  }
  return { at: viewBy(openAt) };
}
