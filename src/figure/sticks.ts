import { AT, createPose, type Pose } from '../model/chain';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { K } from '../model/keys';
import { swingPose, type Swing } from '../reading/swing';
import { createFigure } from './figure';
import { LIMBS } from './limbs';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from './partIds';
import { placeFigure } from './place';
import { heelLiftAt, placeBall } from './stance';

type Point = readonly [number, number, number];

/** A body and its club in lines. World frame of the right-handed player, m. */
export interface Sticks {
  readonly lines: readonly (readonly Point[])[];
  readonly head: Point;
  readonly headRadius: number;
  /** From the grip to the head. */
  readonly club: readonly [Point, Point];
  readonly ball: Point;
  /** Height of a picture with room for the club overhead. */
  readonly reach: number;
}

/** A swing in lines at a time (s, reference) in its pose there. The ball lies where the reference swing meets it. */
export function drawSticks(
  of: { readonly swing: Swing; readonly referenceSwing: Swing; readonly body: Body; readonly club: Club },
  pose: Pose,
  t: number,
): Sticks {
  const { swing, referenceSwing, body, club } = of;
  const atImpact = createPose();
  swingPose(referenceSwing, referenceSwing.reference.times[K.impact], atImpact);
  const ball = placeBall(club, atImpact, new Float64Array(3));
  const out = createPlacement();
  placeFigure(createFigure(body, club), pose, { ballPoint: ball, heelLift: heelLiftAt(swing, t) }, out);
  const at = (id: PartId, up = 0): Point => {
    const i = PART[id] * MATRIX_SIZE;
    return [out[i + 9] + out[i + 3] * up, out[i + 10] + out[i + 4] * up, out[i + 11] + out[i + 5] * up];
  };
  return {
    lines: LIMBS.map((limb) => limb.map((id) => at(id))),
    head: at('headEgg', 0.066 * body.stature),
    headRadius: 0.058 * body.stature,
    reach: 1.45 * body.stature,
    club: [at('grip'), [pose[AT.head], pose[AT.head + 1], pose[AT.head + 2]]],
    ball: [ball[0], ball[1], ball[2]],
  };
}
