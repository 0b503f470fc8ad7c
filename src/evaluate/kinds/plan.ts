import { exactOptional } from 'valibot';
import { numberIn, type FieldsOf } from '../../checking/schemas';
import { toDeg, type Rad } from '../../math/angle';
import { MOVEMENT_GROUPS } from '../../model/movements';
import { findShot } from '../../flight/shot';
import { readCheckpoints } from '../../reading/checkpoints';
import { withMovements, type Swing } from '../../reading/swing';
import type { Judged } from '../../solving/diagnosis/judged';
import { solvePlans, type Plan } from '../../solving/diagnosis/plan';
import { clubSchema, movementsSchema, playerSchema, toEdgeMovements, toMovements } from '../golfer';
import { allowSchema, armAngleSchema, bandsSchema, orLineError, toArmAngle, toBands } from '../judging';
import { groundOf, type Ground } from '../references';
import { deliverOn } from '../strike';
import { toCm } from '../units';

/** A player's swing now, what may change, and where both checkpoints are to come to lie. */
export const planFields = {
  player: playerSchema,
  club: clubSchema,
  now: movementsSchema,
  allow: exactOptional(allowSchema),
  bands: exactOptional(bandsSchema),
  insideCm: exactOptional(numberIn(0, 20)),
  checkpointArmDeg: exactOptional(armAngleSchema),
};

/** The smallest changes that reach the bands, each movement alone and together; `closest` says how far off it stays. */
export function runPlan(line: FieldsOf<typeof planFields>): object {
  const ground = groundOf(line.player, line.club);
  const armAngle = toArmAngle(line.checkpointArmDeg);
  const { status, plans } = orLineError(() =>
    solvePlans({
      swing: withMovements(ground.swing, toMovements(line.now)),
      allow: line.allow ?? MOVEMENT_GROUPS,
      bands: toBands(line.bands),
      armAngle,
      ...(line.insideCm !== undefined && { inside: line.insideCm / 100 }),
      sideEffects: (swing) => sideEffectsOf(ground, swing, armAngle),
    }),
  );
  return { status, plans: plans.map(toEdgePlan) };
}

const inCm = ({ leadArmParallel, shaftParallel }: Judged): object => ({
  bicepGapCm: toCm(leadArmParallel),
  headDepthCm: toCm(shaftParallel),
});

const toEdgePlan = ({
  uses,
  status,
  movements,
  change,
  effort,
  readings,
  short,
  sideEffects,
}: Plan<object>): object => ({
  uses,
  status,
  movements: toEdgeMovements(movements),
  change: toEdgeMovements(change),
  effort,
  readings: inCm(readings),
  short: inCm(short),
  sideEffects,
});

/** What else the planned swing does at the ball. */
function sideEffectsOf(ground: Ground, swing: Swing, armAngle: Rad): object {
  const delivery = deliverOn(ground, swing, readCheckpoints(swing, armAngle), armAngle);
  if ('missing' in delivery) return delivery;
  const shot = findShot(delivery, ground.club);
  return {
    pathDeg: toDeg(delivery.path),
    faceDeg: toDeg(delivery.face),
    attackDeg: toDeg(delivery.attack),
    headSpeedMps: delivery.headSpeed,
    flight:
      'missing' in shot
        ? { missing: shot.missing }
        : { startDeg: shot.flight.startDeg, curveM: shot.flight.curveM, carryM: shot.flight.carryM },
  };
}
