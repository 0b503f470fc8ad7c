import { exactOptional } from 'valibot';
import { numberIn, type FieldsOf } from '../../checking/schemas';
import { toDeg } from '../../math/angle';
import { MOVEMENT_GROUPS } from '../../model/movements';
import { withMovements } from '../../reading/swing';
import { planOnSteps, planWithMargin, type Effects, type StepPlan } from '../../solving/diagnosis/planOnSteps';
import { clubSchema, movementsSchema, playerSchema, toEdgeMovements, toMovements } from '../golfer';
import {
  allowSchema,
  armAngleSchema,
  bandsSchema,
  faceReturnedSchema,
  orLineError,
  toArmAngle,
  toBands,
} from '../judging';
import { groundOf } from '../references';
import { toEdgeEnds } from '../strike';
import { inCm } from '../../edge/units';

/** A player's swing now, what may change, and where both checkpoints are to come to lie. */
export const planFields = {
  player: playerSchema,
  club: clubSchema,
  now: movementsSchema,
  allow: exactOptional(allowSchema),
  bands: exactOptional(bandsSchema),
  insideCm: exactOptional(numberIn(0, 20)),
  /** More margin: plans that land most often within this ±, cm, at both checkpoints. */
  marginCm: exactOptional(numberIn(0.1, 20)),
  checkpointArmDeg: exactOptional(armAngleSchema),
  faceReturned: exactOptional(faceReturnedSchema),
};

/**
 * The smallest changes that reach the bands, each movement alone and together; `closest` says how far off it stays. Each plan is the one
 * that the screen offers, on the steps of the dials; `exact` is the solution between the steps.
 */
export function runPlan(line: FieldsOf<typeof planFields>): object {
  const ground = groundOf(line.player, line.club);
  const armAngle = toArmAngle(line.checkpointArmDeg);
  const { status, plans } = orLineError(() =>
    (line.marginCm === undefined ? planOnSteps : planWithMargin)({
      swing: withMovements(ground.swing, toMovements(line.now)),
      base: ground.base(armAngle),
      allow: line.allow ?? MOVEMENT_GROUPS,
      bands: toBands(line.bands),
      armAngle,
      ...(line.faceReturned !== undefined && { faceReturned: line.faceReturned }),
      ...(line.insideCm !== undefined && { inside: line.insideCm / 100 }),
      ...(line.marginCm !== undefined && {
        doubt: { leadArmParallel: line.marginCm / 100, shaftParallel: line.marginCm / 100 },
      }),
    }),
  );
  return { status, plans: plans.map(toEdgePlan) };
}

const toEdgePlan = ({ uses, movements, effects, exact, ...rest }: StepPlan): object => ({
  uses,
  status: rest.status,
  movements: toEdgeMovements(movements),
  change: toEdgeMovements(rest.change),
  effort: rest.effort,
  readings: inCm(rest.readings),
  short: inCm(rest.short),
  sideEffects: toEdgeEffects(effects),
  exact: {
    status: exact.status,
    movements: toEdgeMovements(exact.movements),
    change: toEdgeMovements(exact.change),
    effort: exact.effort,
    readings: inCm(exact.readings),
    short: inCm(exact.short),
  },
});

/** What else the planned swing does at the ball. */
function toEdgeEffects({ delivery, shot }: Effects): object {
  if ('missing' in delivery) return delivery;
  return {
    pathDeg: toDeg(delivery.path),
    faceDeg: toDeg(delivery.face),
    faceLeftDeg: toDeg(delivery.faceLeft),
    faceReturnedDeg: toDeg(delivery.faceReturned),
    attackDeg: toDeg(delivery.attack),
    headSpeedMps: delivery.headSpeed,
    flight:
      'missing' in shot
        ? { missing: shot.missing }
        : {
            startDeg: shot.flight.startDeg,
            curveM: shot.flight.curveM,
            carryM: shot.flight.carryM,
            ...toEdgeEnds(shot),
          },
  };
}
