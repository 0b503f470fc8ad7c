import { DIALS } from '../../model/movements';
import type { Rad } from '../../math/angle';
import { DEFAULT_ARM_ANGLE, type CheckpointId } from '../../reading/checkpoints';
import type { Swing } from '../../reading/swing';
import type { Sightings } from './verdictShare';
import { createJudge, DIAL_INDEX, toDials, withDials } from './judged';
import { solveMatch, type Explanation, type Match, type MatchQuestion } from './match';

/** An explanation on the steps of the dials. */
export interface StepExplanation extends Explanation {
  /** The solution between the steps that this one stands nearest to. */
  readonly exact: Explanation;
}
export interface StepMatch extends Match {
  readonly explanations: readonly StepExplanation[];
}

/** Explanations on the steps of the dials: what is offered can be dialled, and reads what it says. */
export function matchOnSteps(question: MatchQuestion): StepMatch {
  const match = solveMatch(question);
  const { swing, seen, armAngle = DEFAULT_ARM_ANGLE } = question;
  return { ...match, explanations: match.explanations.map((one) => toSteps(one, swing, seen, armAngle)) };
}

function toSteps(explanation: Explanation, swing: Swing, seen: Sightings, armAngle: Rad): StepExplanation {
  const dials = toDials(explanation.movements);
  for (const id of explanation.dials) {
    const i = DIAL_INDEX[id];
    const { step, min, max } = DIALS[i];
    dials[i] = Math.min(max, Math.max(min, Math.round(dials[i] / step) * step));
  }
  const movements = withDials(explanation.movements, dials);
  const readings = new Float64Array(2);
  createJudge({ ...swing, movements }, armAngle).read(dials, readings);
  const read = { leadArmParallel: readings[0], shaftParallel: readings[1] };
  const off = (id: CheckpointId): number => {
    const sighting = seen[id];
    return sighting ? (read[id] - sighting.value) / sighting.plusMinus : 0;
  };
  const left = [off('leadArmParallel'), off('shaftParallel')];
  return {
    ...explanation,
    movements,
    readings: read,
    misfit: Math.hypot(...left),
    status: left.every((each) => Math.abs(each) <= 1) ? 'fits' : 'closest',
    exact: explanation,
  };
}
