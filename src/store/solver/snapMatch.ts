import { DIALS } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Swing } from '../../reading/swing';
import type { Sightings } from '../../solving/diagnosis/sightingHold';
import { createJudge, DIAL_INDEX, toDials, withDials } from '../../solving/diagnosis/judged';
import { solveMatch, type Explanation, type Match } from '../../solving/diagnosis/match';
import type { MatchJob } from './solverJobs';

/** Explanations on the steps of the dials: what is offered can be dialled, and reads what it says. */
export function matchOnSteps(job: MatchJob): Match {
  const match = solveMatch(job);
  return { ...match, explanations: match.explanations.map((one) => toSteps(one, job.swing, job.seen, job.armAngle)) };
}

function toSteps(explanation: Explanation, swing: Swing, seen: Sightings, armAngle: number): Explanation {
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
  };
}
