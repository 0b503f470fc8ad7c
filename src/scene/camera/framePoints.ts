import type { Figure } from '../../figure/figure';
import { createPlacement, PART, type PartId } from '../../figure/partIds';
import { placeFigure } from '../../figure/place';
import { heelLiftAt } from '../../figure/stance';
import { AT, createPose } from '../../model/chain';
import { K } from '../../model/keys';
import { drawnPose, type Swing } from '../../reading/swing';
import { GLASS_X } from '../setting/glass';

const SAMPLES = { back: 10, down: 18, exit: 2, through: 24 } as const;
const PARTS: readonly PartId[] = [
  'footLead',
  'footTrail',
  'elbowLead',
  'elbowTrail',
  'pelvis',
  'kneeLead',
  'fistTrail',
];
/** Room round the figure's joints for its flesh, fractions of stature; round the club's head, m. */
const FLESH = 0.04;
const HEAD_ROOM = 0.05;

/** Points of a swing that pictures of it must hold. World frame, m, three numbers each. */
export interface FramePoints {
  /** The ball, the foot of the glass sheet, figure and club from address to impact, and the figure on to the exit. */
  readonly struck: Float64Array;
  /** Figure and club from impact on, instant by instant (s). */
  readonly through: readonly { readonly t: number; readonly points: Float64Array }[];
  /** All of these. */
  readonly whole: Float64Array;
  /** From when on a picture may open up, and when it has to be open at the earliest and at the latest, s. */
  readonly opens: { readonly from: number; readonly earliest: number; readonly latest: number };
}

const pose = createPose();
const out = createPlacement();

/** Points that hold the figure at an instant (s), with its club's head if asked for: three numbers each, m. */
export function pointsAt(swing: Swing, figure: Figure, ball: Float64Array, t: number, withClub: boolean): number[] {
  const { k } = figure.measures;
  const points: number[] = [];
  const round = (x: number, y: number, z: number, r: number): void => {
    points.push(x - r, y, z, x + r, y, z, x, Math.max(0, y - r), z, x, y + r, z, x, y, z - r, x, y, z + r);
  };
  drawnPose(swing, t, pose);
  placeFigure(figure, pose, { ballPoint: ball, heelLift: heelLiftAt(swing, t) }, out);
  for (const id of PARTS) {
    const part = PART[id] * 12 + 9;
    round(out[part], out[part + 1], out[part + 2], FLESH * k);
  }
  const head = PART.headEgg * 12;
  const crown = 0.132 * k;
  round(
    out[head + 9] + out[head + 3] * crown,
    out[head + 10] + out[head + 4] * crown,
    out[head + 11] + out[head + 5] * crown,
    0.03,
  );
  if (withClub) round(pose[AT.head], pose[AT.head + 1], pose[AT.head + 2], HEAD_ROOM);
  return points;
}

/** The points of a swing with its ball; the foot of the glass sheet stands on the ground at `glassFootZ`. */
export function framePoints(swing: Swing, figure: Figure, ball: Float64Array, glassFootZ: number): FramePoints {
  const { times } = swing.reference;
  const at = (t: number, withClub: boolean): number[] => pointsAt(swing, figure, ball, t, withClub);
  const instants = (from: number, to: number, count: number): number[] =>
    Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

  const impact = times[K.impact];
  const struck = [...ball, GLASS_X.from, 0, glassFootZ, GLASS_X.to, 0, glassFootZ];
  for (const t of instants(times[K.address], times[K.top], SAMPLES.back)) struck.push(...at(t, true));
  for (const t of instants(times[K.top], impact, SAMPLES.down)) struck.push(...at(t, true));
  for (const t of instants(impact, times[K.exit], SAMPLES.exit)) struck.push(...at(t, false));
  const span = times[K.finish] - impact;
  const through = instants(0, 1, SAMPLES.through).map((share) => {
    // Dense where the club is fast.
    const t = impact + span * share * share;
    return { t, points: Float64Array.from(at(t, true)) };
  });
  return {
    struck: Float64Array.from(struck),
    through,
    whole: Float64Array.from([...struck, ...through.flatMap(({ points }) => [...points])]),
    opens: { from: times[K.shaftParallel], earliest: times[K.exit], latest: times[K.finish] },
  };
}
