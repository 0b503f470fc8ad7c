import type { Figure } from '../../figure/figure';
import { K } from '../../model/keys';
import type { Swing } from '../../reading/swing';
import { framePoints, pointsAt, type FramePoints } from '../../scene/camera/framePoints';
import { openBetween, type Framing } from '../../scene/camera/framing';
import { fitView, holdsAll, type Direction, type Insets, type View } from '../../scene/camera/view';
import type { PixelSize } from './formats';
import { withoutGlass } from './framingBounds';

/** Points of a swing, m: all that move in it, and those over which no words may stand, instant by instant (s). */
export interface FilledPoints {
  readonly all: FramePoints;
  readonly body: FramePoints['through'];
  /** The instant of the exit. */
  readonly exit: number;
}

/** Instants at which the body is looked at, and steps in which a view is looked for. */
const [INSTANTS, STEPS] = [32, 12] as const;

/** The figure from address to finish, and its club where it stands still before and after. */
export function pointsToFill(swing: Swing, figure: Figure, ball: Float64Array): FilledPoints {
  const { times } = swing.curves;
  const [from, to] = [times[K.address], times[K.finish]];
  const body = Array.from({ length: INSTANTS + 1 }, (_, i) => {
    const t = from + ((to - from) * i) / INSTANTS;
    return { t, points: Float64Array.from(pointsAt(swing, figure, ball, t, i === 0 || i === INSTANTS)) };
  });
  return { all: withoutGlass(framePoints(swing, figure, ball, ball[2])), body, exit: times[K.exit] };
}

/**
 * As near as possible with the body clear of the words (`insets.top`), opening for the follow-through. The club may swing up behind the words,
 * but no higher than `highest`, px from the top of the picture: below several lines of words the figure would be small otherwise.
 */
export function fillFrame(
  direction: Direction,
  { all, body, exit }: FilledPoints,
  size: PixelSize,
  insets: Insets,
  highest: number,
): Framing {
  const { width, height } = size;
  const struck = body.filter(({ t }) => t <= exit);
  const near = nearest(direction, all.struck, struck, size, insets, highest);
  const far = nearest(direction, all.whole, body, size, insets, highest);
  const behind = { ...insets, top: Math.min(highest, insets.top) };
  return openBetween(
    near,
    far,
    all.opens,
    (viewAt) =>
      body.every(({ t, points }) => holdsAll(viewAt(t), points, width, height, insets)) &&
      all.through.every(({ t, points }) => holdsAll(viewAt(t), points, width, height, behind)),
  );
}

function nearest(
  direction: Direction,
  all: Float64Array,
  body: FilledPoints['body'],
  { width, height }: PixelSize,
  insets: Insets,
  highest: number,
): View {
  const under = (top: number): View => fitView(direction, all, width, height, { ...insets, top });
  const isClear = (view: View): boolean => body.every(({ points }) => holdsAll(view, points, width, height, insets));
  let [clear, covered] = [insets.top, Math.min(highest, insets.top)];
  if (isClear(under(covered))) return under(covered);
  for (let step = 0; step < STEPS; step++) {
    const top = (clear + covered) / 2;
    if (isClear(under(top))) clear = top;
    else covered = top;
  }
  return under(clear);
}
