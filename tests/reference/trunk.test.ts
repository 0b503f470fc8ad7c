import { expect, test } from 'vitest';
import { rad, toDeg } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, J } from '../../src/model/joints';

// Two orders of the same three rotations. Published side bend is taken after the turn (Cheetham 2014, mark B: 31 deg at impact);
// the model leans first. Worked numbers, mark C: lean 21, bend 33, turn 27 -> side bend 31, printed to the degree.
test('a trunk leaning 21 and bent 33 deg, seen from a chest turned 27 deg open, bends 31 deg to the trail side', () => {
  const q = createJointVector();
  q[J.trunkTilt] = rad(21);
  q[J.trunkBend] = rad(33);
  q[J.thoraxTurn] = rad(27);
  const p = createPose();
  placePose(createRig(bodyOf({ statureM: 1.78, handed: 'right' }), clubOf(CLUBS['7-iron'])), q, p);
  const axis = [...p.subarray(AT.trunkAxes + 3, AT.trunkAxes + 6)];
  // The lead side of someone whose chest has turned 27 deg toward the target.
  const lead = [Math.cos(rad(27)), 0, -Math.sin(rad(27))];
  const toLead = axis[0] * lead[0] + axis[1] * lead[1] + axis[2] * lead[2];
  expect(Math.abs(toDeg(Math.asin(-toLead)) - 31)).toBeLessThan(0.5);
});
