import { heelLiftAt } from '../../figure/stance';
import { createPose } from '../../model/chain';
import { drawBody, plateFigureOf } from '../../plates/figure/figurePainter';
import { drawnPose } from '../../reading/swing';
import type { Derived } from '../../store';
import { findDrillPlace } from '../../words/why/drillPlaces';
import type { ShownSwing } from '../task/exportSnapshot';

/** A body in contours, seen down the line: paths from far to near, and the box that shows it from the knees up. */
export interface DrillFigure {
  readonly box: string;
  readonly paths: readonly string[];
}

/** Units per metre, and where the stance stands: all of a swing lies on the plate's sheet. */
const [SCALE, X0, Y0] = [120, 130, 280];
/** A contour's numbers are tenths of a unit. The drawing ends this high above the ground (m), and has this much air. */
const TENTHS = 10;
const [FOOT, AIR] = [0.42, 30];

/** The position a drill is practised at, in the swing that is wanted; nothing where the place is not known or not reached. */
export function drawDrill(name: string, { body, club, player }: Derived, after: ShownSwing): DrillFigure | undefined {
  const place = findDrillPlace(name);
  const t = place && after.positions[place];
  if (t === undefined || t === null) return undefined;
  const { swing } = after;
  const pose = createPose();
  drawnPose(swing, t, pose);
  const stance = { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, t) };
  const side = player.handed === 'left' ? -1 : 1;
  // A left-handed player's ball lies to the left.
  const frame = { side, scale: SCALE, x0: side === 1 ? X0 : 320 - X0, y0: Y0 } as const;
  const paths = drawBody(plateFigureOf(body, club), pose, stance, frame, 'drawn').map(({ outline }) => outline.contour);
  return { box: boxOf(paths), paths };
}

/** View box around contours, cut at the knees. */
function boxOf(paths: readonly string[]): string {
  const foot = -FOOT * SCALE * TENTHS;
  let [left, right, top] = [Infinity, -Infinity, Infinity];
  for (const path of paths) {
    const numbers = path.match(/-?\d+/g)!.map(Number);
    for (let i = 0; i < numbers.length; i += 2) {
      if (numbers[i + 1] > foot) continue;
      left = Math.min(left, numbers[i]);
      right = Math.max(right, numbers[i]);
      top = Math.min(top, numbers[i + 1]);
    }
  }
  return `${left - AIR} ${top - AIR} ${right - left + 2 * AIR} ${foot - top + AIR}`;
}
