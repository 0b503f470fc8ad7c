import type { Rad } from '../math/angle';
import { J, type JointVector } from './joints';

/**
 * Bends the rib cage to its trail side by `angle` (rad, + to the trail side), about its own front-back axis, and writes the same posture back
 * as trunk tilt, trunk bend and thorax turn: Rz(tilt) Rx(bend) Ry(turn) Rz(angle) = Rz(tilt') Rx(bend') Ry(turn'). Exact; the mid-shoulder
 * point goes along, because the trunk axis is the rib cage's own. The turn goes on from the one before, past half a turn as well.
 * Not defined for a trunk bent a right angle forward, far outside the joint's range. Allocates nothing.
 */
export function bendToTrailSide(angle: Rad, q: JointVector): void {
  if (angle === 0) return;
  const sinBend = Math.sin(q[J.trunkBend]);
  const cosBend = Math.cos(q[J.trunkBend]);
  const sinTurn = Math.sin(q[J.thoraxTurn]);
  const cosTurn = Math.cos(q[J.thoraxTurn]);
  const sin = Math.sin(angle);
  const cos = Math.cos(angle);
  // The tilt stands first and comes through unchanged: below is the rest, Rx(bend) Ry(turn) Rz(angle), in a frame that tilts along.
  const up = cosBend * cos - sinBend * sinTurn * sin;
  const front = sinBend * cos + cosBend * sinTurn * sin;
  const sinTurned = cosBend * sinTurn * cos - sinBend * sin;
  const cosTurned = cosBend * cosTurn;
  q[J.trunkTilt] += Math.atan2(cosTurn * sin, up);
  q[J.trunkBend] = Math.asin(Math.max(-1, Math.min(1, front)));
  q[J.thoraxTurn] += Math.atan2(sinTurned * cosTurn - cosTurned * sinTurn, cosTurned * cosTurn + sinTurned * sinTurn);
}

/**
 * The side bend (rad) that leans the trunk, seen face-on, by `lean` (rad, + away from the target) from a trunk bent forward by `bend` and a
 * chest turned by `turn`. The reverse of what `bendToTrailSide` adds to the tilt.
 * @internal The migration of old documents uses its ratio on the shipped swings, which a test works out with it.
 */
export function sideBendOfLean(lean: Rad, bend: Rad, turn: Rad): Rad {
  return Math.atan2(
    Math.sin(lean) * Math.cos(bend),
    Math.cos(lean) * Math.cos(turn) + Math.sin(lean) * Math.sin(bend) * Math.sin(turn),
  );
}
