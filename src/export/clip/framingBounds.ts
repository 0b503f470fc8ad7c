import type { FramePoints } from '../../scene/camera/framePoints';

/** Numbers at the start of `struck` and `whole`: the ball and the foot of the glass. */
const BALL_AND_GLASS = 9;

/** The same points, but the glass may run out of the picture: figure and club come out larger. */
export const withoutGlass = (of: FramePoints): FramePoints => ({
  ...of,
  struck: of.struck.subarray(BALL_AND_GLASS),
  whole: of.whole.subarray(BALL_AND_GLASS),
});

function join(parts: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** What pictures of several swings must hold, as one: swings side by side are seen from the same place. */
export const joinFramed = (swings: readonly FramePoints[]): FramePoints => ({
  struck: join(swings.map(({ struck }) => struck)),
  through: swings.flatMap(({ through }) => through),
  whole: join(swings.map(({ whole }) => whole)),
  opens: swings[0].opens,
});
