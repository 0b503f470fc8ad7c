import { CHECKPOINTS, type CheckpointId } from '../../reading/checkpointTable';
import { exactOptional, type InferOutput } from 'valibot';
import { fields, numberIn, type FieldsOf } from '../../checking/schemas';
import { dialOf } from '../../model/movements';
import { verdictWords } from '../../reading/verdicts';
import type { VerdictShare, Sightings } from '../../solving/diagnosis/verdictShare';
import { matchOnSteps, type StepExplanation } from '../../solving/diagnosis/matchOnSteps';
import { clubSchema, playerSchema, toEdgeMovements } from '../golfer';
import { allowSchema, armAngleSchema, bandsSchema, orLineError, toArmAngle, toBands } from '../judging';
import { groundOf } from '../references';
import { inCm } from '../../edge/units';

const seen = numberIn(-200, 200);
const giveOrTake = numberIn(0, 200);

/** What a coach saw at one or both checkpoints, each with his own give or take. */
export const seenSchema = fields({
  leadArmParallel: exactOptional(fields({ bicepGapCm: seen, plusMinusCm: giveOrTake })),
  shaftParallel: exactOptional(fields({ headDepthCm: seen, plusMinusCm: giveOrTake })),
});

/** What was seen, in metres. */
export const toSightings = ({ leadArmParallel: p5, shaftParallel: p6 }: InferOutput<typeof seenSchema>): Sightings => ({
  ...(p5 && { leadArmParallel: { value: p5.bicepGapCm / 100, plusMinus: p5.plusMinusCm / 100 } }),
  ...(p6 && { shaftParallel: { value: p6.headDepthCm / 100, plusMinus: p6.plusMinusCm / 100 } }),
});

export const matchFields = {
  player: playerSchema,
  club: clubSchema,
  seen: seenSchema,
  allow: exactOptional(allowSchema),
  bands: exactOptional(bandsSchema),
  checkpointArmDeg: exactOptional(armAngleSchema),
};

/** What would look like this, the most likely first, and in what share of the give or take each verdict stands. */
export function runMatch(line: FieldsOf<typeof matchFields>): object {
  const { explanations, holds } = orLineError(() =>
    matchOnSteps({
      swing: groundOf(line.player, line.club).swing,
      seen: toSightings(line.seen),
      ...(line.allow && { allow: line.allow }),
      bands: toBands(line.bands),
      armAngle: toArmAngle(line.checkpointArmDeg),
    }),
  );
  return {
    explanations: explanations.map(toEdgeExplanation),
    holds: {
      ...(holds.leadArmParallel && shareByVerdict(holds.leadArmParallel, 'leadArmParallel')),
      ...(holds.shaftParallel && shareByVerdict(holds.shaftParallel, 'shaftParallel')),
    },
  };
}

const shareByVerdict = ({ verdict, share }: VerdictShare, at: CheckpointId): Record<string, number> => ({
  [`${verdictWords(at, verdict)} at ${CHECKPOINTS[at].position}`]: share,
});

function toEdgeExplanation({
  uses,
  dials,
  status,
  movements,
  misfit,
  effort,
  readings,
  plusMinus,
  exact,
}: StepExplanation): object {
  return {
    uses,
    moves: dials.map((id) => dialOf(id).field),
    status,
    movements: toEdgeMovements(movements),
    misfit,
    effort,
    readings: inCm(readings),
    ...(plusMinus !== undefined && { plusMinus: plusMinus / dialOf(dials[0]).edgeUnit }),
    exact: { movements: toEdgeMovements(exact.movements), misfit: exact.misfit, readings: inCm(exact.readings) },
  };
}
