import { rad } from '../../math/angle';
import type { LeastSquaresResult, SolveStatus } from '../../math/leastSquares';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { JOINT_COUNT } from '../../model/joints';
import type { ReferenceSwing } from '../../model/keys';
import { createCurves, joinJoint, joinKeys } from '../../model/motion';
import { STILL } from '../../model/movements';
import { rigFor, type Swing } from '../../reading/swing';
import { fitDownswing, type Draft } from './downswingFit';
import { fitBackswing, fitFinish } from './backswingFit';
import { seedReference } from './seed';
import { findShipped, findStart } from './shipped';

/** A reference swing and how well the search for it ended. */
export interface ReferenceFit {
  readonly status: SolveStatus;
  /** Root mean square of the weighted residuals of the downswing; 1 means one spread from every landmark. */
  readonly residual: number;
  /** Sum of their squares. */
  readonly cost: number;
  readonly evaluations: number;
  readonly reference: ReferenceSwing;
}

/** Upper limits on damped steps: enough from the seed, few from a neighbouring player's solution. */
const STEPS = { downswing: 60, backswing: 40, finish: 40 };

/** The reference swing of a player and a club: the shipped one where there is one, otherwise solved from its neighbours'. */
export function solveReference(body: Body, club: Club): ReferenceFit {
  const known = findShipped(body, club);
  if (known) return { status: 'converged', residual: 0, cost: 0, evaluations: 0, reference: known };
  return solveReferenceFrom(body, club, findStart(body, club) ?? seedReference(body));
}

/**
 * Finds the reference swing of a player and a club by damped least squares: first the downswing, then the backswing to the ball
 * it struck, then the finish. `start` is a swing to begin from; a solution for another stature or club is a good one. No cause and effect
 * of the trade is asked for: what a movement does comes out of the geometry.
 */
export function solveReferenceFrom(body: Body, club: Club, start: ReferenceSwing): ReferenceFit {
  const draft = createDraft(body, club, start);
  const down = fitDownswing(draft, body, STEPS.downswing);
  const back = fitBackswing(draft, body, STEPS.backswing);
  const finish = fitFinish(draft, body, STEPS.finish);
  const { reference } = draft.refresh();
  return {
    status: worst([down, back, finish]),
    residual: down.residual,
    cost: down.cost,
    evaluations: down.evaluations + back.evaluations + finish.evaluations,
    reference: { ...reference, ballPoint: [...draft.ballPoint], values: draft.values.slice() },
  };
}

const worst = (results: readonly LeastSquaresResult[]): SolveStatus =>
  results.map((r) => r.status).find((status) => status !== 'converged') ?? 'converged';

/** About the lag that references come to by themselves, rad: where the search for another one starts from. */
const NATURAL_LAG = rad(113);

/** A draft joins only the joints whose keys changed since the last look: most of a finite difference touches one. */
function createDraft(body: Body, club: Club, start: ReferenceSwing): Draft {
  const values = start.values.slice();
  const joined = values.slice();
  const { times } = start;
  const curves = joinKeys({ times, values }, createCurves());
  const draft: Draft = {
    values,
    gripTurn: start.gripTurn,
    gripAngle: club.lag === undefined ? 0 : start.gripAngle || NATURAL_LAG - club.lag,
    lie: club.isOffTheRack ? 0 : start.lie,
    ballPoint: [...start.ballPoint],
    refresh(): Swing {
      for (let j = 0; j < JOINT_COUNT; j++) {
        if (!hasChanged(values, joined, j)) continue;
        joinJoint({ times, values }, j, curves);
        for (let k = j; k < values.length; k += JOINT_COUNT) joined[k] = values[k];
      }
      const { gripTurn, gripAngle, lie, ballPoint } = draft;
      const reference = { times, values, gripTurn, gripAngle, lie, ballPoint };
      return { rig: rigFor(body, club, reference), reference, curves, movements: STILL, tempo: 1 };
    },
  };
  return draft;
}

function hasChanged(values: Float64Array, joined: Float64Array, joint: number): boolean {
  for (let k = joint; k < values.length; k += JOINT_COUNT) if (values[k] !== joined[k]) return true;
  return false;
}
