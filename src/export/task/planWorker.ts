import { withMovements } from '../../reading/swing';
import type { Derived, Document } from '../../store';
import { createWorkerClient } from '../../store/solver/workerClient';
import { toArmAngle, toFaceReturned, toWeather } from '../../store/document/convert';
import type { StepPlan } from '../../solving/diagnosis/planOnSteps';
import type { Answer, Job, PlanAnswer, PlanJob } from '../../solving/diagnosis/solverJobs';

/**
 * The smallest change that brings both checkpoints well into their bands; one movement alone where that is enough,
 * because a player can think of one thing. Searched in a worker, so that the page stays responsive.
 */
export async function findPlanInWorker(derived: Derived, document: Document): Promise<StepPlan | undefined> {
  const { plans } = await planBeside({
    kind: 'plan',
    swing: withMovements(derived.swing, derived.movements),
    reference: derived.referenceSwing,
    allow: ['leadWrist', 'rotation', 'sideTilt'],
    bands: derived.bands,
    armAngle: toArmAngle(document),
    aim: 'inside',
    doubt: { leadArmParallel: 0, shaftParallel: 0 },
    rule: document.ball.rule,
    faceReturned: toFaceReturned(document.ball),
    weather: toWeather(document.ball, derived.player),
  });
  return plans.find(({ uses, status }) => status === 'reached' && uses.length === 1) ?? plans[0];
}

/** In a worker; on the page if there are no workers or this one failed to start. */
async function planBeside(job: PlanJob): Promise<PlanAnswer> {
  const answer = typeof Worker === 'undefined' ? undefined : await askWorker(job);
  if (answer?.kind === 'plan') return answer;
  if (answer?.kind === 'refused') throw new Error(answer.message);
  const { planFor } = await import('../../solving/diagnosis/solverJobs');
  return planFor(job);
}

async function askWorker(job: PlanJob): Promise<Answer | undefined> {
  const worker = createWorkerClient<Job, Answer>(
    () => new Worker(new URL('../../store/solver/solver.worker.ts', import.meta.url), { type: 'module' }),
  );
  let answer: Answer | undefined;
  await worker
    .ask(job, (one) => {
      answer = one;
    })
    .catch(() => undefined);
  worker.end();
  return answer;
}
