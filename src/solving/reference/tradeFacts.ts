import { rad } from '../../math/angle';
import { createPose } from '../../model/chain';
import { STILL, type Movements } from '../../model/movements';
import { findLeadArmParallel, findShaftParallel } from '../../reading/checkpoints';
import { bicepGap, headDepth, shaftPlane } from '../../reading/readings';
import { swingPose, withMovements, type Swing } from '../../reading/swing';
import type { Residuals } from './fitting';

const pose = createPose();

/** One trade fact: a movement over its range, and by how much each reading must change from step to step. */
interface Fact {
  readonly steps: readonly Partial<Movements>[];
  /** +1: readings rise from step to step; -1: they fall. */
  readonly sense: 1 | -1;
  /** Least changes: gap (m), shaft plane (rad, 0: not asked), head depth (m). */
  readonly least: readonly [number, number, number];
}

/** A movement that lowers every reading from step to step; degrees. */
const lowering = (dial: 'trailTilt' | 'leadWristFlexion', steps: readonly number[], least: Fact['least']): Fact => ({
  steps: steps.map((d) => ({ [dial]: rad(d) })),
  sense: -1,
  least,
});

const FACTS: readonly Fact[] = [
  lowering('trailTilt', [-10, -5, 0, 5, 10], [0.0012, rad(0.3), 0.01]),
  { steps: [-30, 0, 30].map((ms) => ({ rotationDelay: ms / 1000 })), sense: -1, least: [0.004, 0, 0.02] },
  { steps: [0.7, 1, 1.3].map((rotationRate) => ({ rotationRate })), sense: 1, least: [0.01, 0, 0.03] },
  lowering('leadWristFlexion', [-30, 0, 30], [0.006, rad(1), 0.03]),
  // Past the usual range, to the ends of the sliders.
  lowering('trailTilt', [-15, -10], [0.0003, rad(0.1), 0.002]),
  lowering('trailTilt', [10, 12.5, 15], [0.0003, rad(0.1), 0.002]),
  lowering('leadWristFlexion', [-40, -30], [0.0005, rad(0.1), 0.002]),
  lowering('leadWristFlexion', [30, 35, 40], [0.0005, rad(0.1), 0.002]),
];

type Tell = (excess: number, spread: number, least: number) => void;

/** Tells by how much a trade fact falls short from step to step, and in what spread. */
function tellFact(swing: Swing, { steps, sense, least }: Fact, tell: Tell): void {
  let before: readonly number[] | undefined;
  for (const step of steps) {
    const after = judged(withMovements(swing, { ...STILL, ...step }));
    if (before) {
      tell(least[0] - sense * (after[0] - before[0]), 0.0004, least[0]);
      if (least[1] > 0) tell(least[1] - sense * (after[1] - before[1]), rad(0.1), least[1]);
      tell(least[2] - sense * (after[2] - before[2]), 0.002, least[2]);
    }
    before = after;
  }
}

/** What `tellFact` tells. */
const tellings = ({ steps, least }: Fact): number => (steps.length - 1) * (least[1] > 0 ? 3 : 2);

/** A fact that holds with this share of its least change to spare holds a difference away as well. */
const TO_SPARE = 0.1;

/**
 * Asks for every trade fact, for one search. Most hold with room to spare, and are not worked out again for a difference (`isNear`, as
 * in `solveLeastSquares`).
 */
export function createFactGoals(): (swing: Swing, to: Residuals, isNear: boolean) => void {
  const isSlack = FACTS.map(() => false);
  return (swing, to, isNear) =>
    FACTS.forEach((fact, f) => {
      if (isNear && isSlack[f]) {
        for (let i = tellings(fact); i > 0; i--) to.avoid(-1, 1);
        return;
      }
      let holds = true;
      tellFact(swing, fact, (excess, spread, least) => {
        to.avoid(excess, spread);
        if (!(excess < -TO_SPARE * least)) holds = false;
      });
      if (!isNear) isSlack[f] = holds;
    });
}

/** Gap and shaft plane at lead arm parallel, head depth at shaft parallel; NaN where a checkpoint is not reached. */
function judged(swing: Swing): readonly [number, number, number] {
  const armAt = findLeadArmParallel(swing);
  if ('missing' in armAt) return [NaN, NaN, NaN];
  swingPose(swing, armAt.t, pose);
  const gap = bicepGap(pose);
  const plane = shaftPlane(pose);
  const shaftAt = findShaftParallel(swing, armAt.t);
  if ('missing' in shaftAt) return [gap, plane, NaN];
  swingPose(swing, shaftAt.t, pose);
  return [gap, plane, headDepth(pose)];
}

/**
 * True when every trade fact holds in sign, each step by at least half of the change the fit would ask for: then the
 * facts are left out of the fit.
 */
export function factsHold(swing: Swing): boolean {
  let hold = true;
  for (const fact of FACTS) {
    tellFact(swing, fact, (excess, _spread, least) => {
      if (!(excess <= 0.5 * least)) hold = false;
    });
  }
  return hold;
}
