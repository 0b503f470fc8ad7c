import type { LeastSquaresResult, SolveStatus } from '../../math/leastSquares';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { JOINT_COUNT } from '../../model/joints';
import type { ReferenceSwing } from '../../model/keys';
import { createCurves, joinJoint, joinKeys } from '../../model/motion';
import { STILL } from '../../model/movements';
import { rigFor, type Swing } from '../../reading/swing';
import { fitDownswing, type Draft } from './downswingFit';
import { factsHold } from './tradeFacts';
import { fitBackswing, fitFinish } from './backswingFit';
import { seedReference } from './seed';
import { findShipped, findStart } from './shipped';

/** A reference swing and how well the search for it ended. */
export interface ReferenceFit {
  readonly status: SolveStatus;
  /** Root mean square of the weighted residuals of the downswing; 1 means one spread from every landmark. */
  readonly residual: number;
  /** Sum of their squares, trade facts included where they were asked for. */
  readonly cost: number;
  readonly evaluations: number;
  /**
   * True when the trade facts did not come out by themselves and were asked for in the fit: then they are no prediction. Of a shipped
   * swing it is not known here.
   */
  readonly factsAsked: boolean | undefined;
  readonly reference: ReferenceSwing;
}

/** Upper limits on damped steps: enough from the seed, few from a neighbouring player's solution. */
const STEPS = { downswing: 60, facts: 30, backswing: 40, finish: 40 };

/** The reference swing of a player and a club: the shipped one where there is one, otherwise solved from its neighbours'. */
export function solveReference(body: Body, club: Club): ReferenceFit {
  const known = findShipped(body, club);
  if (known)
    return { status: 'converged', residual: 0, cost: 0, evaluations: 0, factsAsked: undefined, reference: known };
  return solveReferenceFrom(body, club, findStart(body, club) ?? seedReference(body));
}

/**
 * Finds the reference swing of a player and a club by damped least squares: first the downswing, then the backswing to the ball
 * it struck, then the finish. `start` is a swing to begin from; a solution for another stature or club is a good one. Trade facts
 * that do not come out by themselves are asked for in a second round, unless `mayAskFacts` is false.
 */
export function solveReferenceFrom(body: Body, club: Club, start: ReferenceSwing, mayAskFacts = true): ReferenceFit {
  const draft = createDraft(body, club, start);
  let down = fitDownswing(draft, body, false, STEPS.downswing);
  let evaluations = down.evaluations;
  const factsAsked = mayAskFacts && !factsHold(draft.refresh());
  if (factsAsked) {
    down = fitDownswing(draft, body, true, STEPS.facts);
    evaluations += down.evaluations;
  }
  const back = fitBackswing(draft, body, STEPS.backswing);
  const finish = fitFinish(draft, body, STEPS.finish);
  const { reference } = draft.refresh();
  return {
    status: worst([down, back, finish]),
    residual: down.residual,
    cost: down.cost,
    factsAsked,
    evaluations: evaluations + back.evaluations + finish.evaluations,
    reference: { ...reference, ballPoint: [...draft.ballPoint], values: draft.values.slice() },
  };
}

const worst = (results: readonly LeastSquaresResult[]): SolveStatus =>
  results.map((r) => r.status).find((status) => status !== 'converged') ?? 'converged';

/** A draft joins only the joints whose keys changed since the last look: most of a finite difference touches one. */
function createDraft(body: Body, club: Club, start: ReferenceSwing): Draft {
  const values = start.values.slice();
  const joined = values.slice();
  const { times } = start;
  const curves = joinKeys({ times, values }, createCurves());
  const draft: Draft = {
    values,
    gripTurn: start.gripTurn,
    ballPoint: [...start.ballPoint],
    refresh(): Swing {
      for (let j = 0; j < JOINT_COUNT; j++) {
        if (!hasChanged(values, joined, j)) continue;
        joinJoint({ times, values }, j, curves);
        for (let k = j; k < values.length; k += JOINT_COUNT) joined[k] = values[k];
      }
      const { gripTurn, ballPoint } = draft;
      const reference = { times, values, gripTurn, ballPoint };
      return { rig: rigFor(body, club, reference), reference, curves, movements: STILL, tempo: 1 };
    },
  };
  return draft;
}

function hasChanged(values: Float64Array, joined: Float64Array, joint: number): boolean {
  for (let k = joint; k < values.length; k += JOINT_COUNT) if (values[k] !== joined[k]) return true;
  return false;
}
