import { toDeg } from '../math/angle';

export type Handed = 'right' | 'left';
type Start = 'push' | 'straight' | 'pull';
type Curve = 'hook' | 'draw' | 'straight' | 'fade' | 'slice';

/** Trade words for a shot: where it starts and how it curves. Common practice, no source (mark T). */
export type ShapeId =
  Exclude<Curve, 'straight'> | 'straight' | 'push' | 'pull' | `${'push' | 'pull'}-${Exclude<Curve, 'straight'>}`;

/** From where on a start or a curve has a name. `bendDeg` is the angle at the ball between start line and landing. */
const SHAPE_LIMITS = { startDeg: { on: 1, far: 4 }, bendDeg: { straight: 1, strong: 5 } } as const;

/**
 * The one table of the trade's words (common practice, mark T). Starts and curves are the player's own: toward the
 * trail side (right for a right-handed player) is push and fade or slice, the other way pull and draw or hook.
 */
export const SHAPES: Record<Start, Record<Curve, ShapeId>> = {
  push: { hook: 'push-hook', draw: 'push-draw', straight: 'push', fade: 'push-fade', slice: 'push-slice' },
  straight: { hook: 'hook', draw: 'draw', straight: 'straight', fade: 'fade', slice: 'slice' },
  pull: { hook: 'pull-hook', draw: 'pull-draw', straight: 'pull', fade: 'pull-fade', slice: 'pull-slice' },
};

/** A shot as seen on the range from behind the player: positive is to the right for everyone. */
export interface SeenShot {
  readonly startDeg: number;
  readonly curveM: number;
  readonly carryM: number;
  readonly handed: Handed;
}

/** The trade's word for the shot, and the middle of a sentence: "starts a little right, curves left". */
export function shapeFor({ startDeg, curveM, carryM, handed }: SeenShot): {
  readonly id: ShapeId;
  readonly words: string;
} {
  const bendDeg: number = carryM > 0 ? toDeg(Math.asin(Math.max(-1, Math.min(1, curveM / carryM)))) : 0;
  const side = handed === 'right' ? 1 : -1;
  const id = SHAPES[startName(startDeg * side)][curveName(bendDeg * side)];
  return { id, words: `${startWords(startDeg)}, ${curveWords(bendDeg)}` };
}

function startName(towardTrailDeg: number): Start {
  if (Math.abs(towardTrailDeg) <= SHAPE_LIMITS.startDeg.on) return 'straight';
  return towardTrailDeg > 0 ? 'push' : 'pull';
}

function curveName(towardTrailDeg: number): Curve {
  const { straight, strong } = SHAPE_LIMITS.bendDeg;
  if (Math.abs(towardTrailDeg) <= straight) return 'straight';
  if (towardTrailDeg > 0) return towardTrailDeg > strong ? 'slice' : 'fade';
  return towardTrailDeg < -strong ? 'hook' : 'draw';
}

function startWords(startDeg: number): string {
  const { on, far } = SHAPE_LIMITS.startDeg;
  const away = Math.abs(startDeg);
  if (away <= on) return 'starts on line';
  return `starts ${away <= far ? 'a little ' : ''}${startDeg > 0 ? 'right' : 'left'}`;
}

function curveWords(bendDeg: number): string {
  const { straight, strong } = SHAPE_LIMITS.bendDeg;
  const away = Math.abs(bendDeg);
  if (away <= straight) return 'flies straight';
  return `curves ${away > strong ? 'hard ' : ''}${bendDeg > 0 ? 'right' : 'left'}`;
}
