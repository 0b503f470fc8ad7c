import { MOVEMENT_GROUPS } from '../../model/movements';
import { beginGesture, endGesture, useDesk, type Dialled } from '../../store';
import { ghostDialled } from '../../store/derive/swings';
import type { ChosenPlan } from '../../store/document/chosenPlan';
import { choosePlan, clearPlan, editPlan } from '../../store/plan/planActions';
import type { Judged } from '../../solving/diagnosis/judged';
import { useAsked } from '../../store/solver/solverClient';
import type { StepPlan } from '../../solving/diagnosis/planOnSteps';
import type { PlanAnswer } from '../../solving/diagnosis/solverJobs';
import { USUAL_GIVE_CM } from '../../store/document/sighting';
import { setLocked, setWhy, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { LOOKING_FOR_CHANGE, NO_MORE_MARGIN, sayLanding, sayPlans, sayUses } from '../../words/why/whatToChange';
import { GROUP_NAMES } from '../dials/Movements';
import { Choice } from '../fields/Choice';
import { AsItIs, Lead, Source } from '../why/Lead';
import { NextStep } from '../lessons/NextStep';
import { PlanCard } from './PlanCard';
import { PlanFields } from './PlanFields';
import { PlanSummary } from './PlanSummary';
import { PLAN_SOURCE } from '../../words/why/planText';

/** The smallest changes that bring both checkpoints on plane: what moves, what else it does, what to feel and practise. */
export default function ChangePlan() {
  const answer = useAsked((asked) => asked.answer);
  const isBusy = useAsked((asked) => asked.isBusy);
  return (
    <div className="change-plan" data-busy={isBusy || undefined}>
      <AsItIs />
      <Chosen />
      {answer?.kind === 'refused' ? (
        <Lead text={answer.message} />
      ) : answer?.kind === 'plan' ? (
        <Plans answer={answer} />
      ) : (
        <Lead text={LOOKING_FOR_CHANGE} />
      )}
      <Locks />
      <NextStep from="plan" />
    </div>
  );
}

/** The plan that was chosen, whatever is on offer now, and what the coach says with it. */
function Chosen() {
  const plan = useDesk(({ document }) => document.plan);
  const isShown = useDesk(({ session }) => session.ghost === 'plan');
  if (!plan) return null;
  return (
    <section aria-labelledby="plan-chosen">
      <h3 id="plan-chosen">Chosen plan</h3>
      <PlanSummary plan={plan} />
      <div className="plan-acts">
        <button
          type="button"
          className="plain"
          aria-pressed={isShown}
          onClick={() => showGhost(isShown ? null : 'plan')}
        >
          Show the plan
        </button>
        <button type="button" className="plain" onClick={clearPlan}>
          Clear plan
        </button>
      </div>
      <details>
        <summary>Feel, drills, your words, next lesson</summary>
        <PlanFields
          plan={plan}
          disabled={false}
          onEdit={editPlan}
          onType={(label, first, part) => {
            if (first) beginGesture(label);
            editPlan(label, part);
          }}
          onDone={() => endGesture()}
        />
      </details>
    </section>
  );
}

/** Readings as a plan keeps them, cm. */
const toTarget = (readings: Judged): ChosenPlan['targetCm'] => {
  const toCm = (metres: number): number | null =>
    Number.isFinite(metres) ? Number((metres * 100).toFixed(2)) + 0 : null;
  return { leadArmParallel: toCm(readings.leadArmParallel), shaftParallel: toCm(readings.shaftParallel) };
};

/** The smallest change ends on the edge of a band and lands about half the time; one tap asks for more. */
function Aim({ plan }: { plan: StepPlan }) {
  const aim = useDesk(({ session }) => session.why.aim);
  const units = useDesk(({ document }) => document.units);
  const seen = useDesk(({ document }) => document.seen);
  const give = Math.max(
    seen.leadArmParallel?.plusMinusCm ?? USUAL_GIVE_CM,
    seen.shaftParallel?.plusMinusCm ?? USUAL_GIVE_CM,
  );
  return (
    <div className="plan-aim">
      <Choice
        label="Safety margin"
        value={aim}
        options={[
          { value: 'edge', text: 'Smallest change' },
          { value: 'inside', text: 'More margin' },
        ]}
        onChoose={(next) => setWhy({ aim: next })}
      />
      <p className="plan-holds">{sayLanding(plan.holds, give / 100, units)}</p>
      {plan.isMost && <p className="fine">{NO_MORE_MARGIN}</p>}
    </div>
  );
}

/** Movements the coach leaves alone. */
function Locks() {
  const locked = useDesk(({ session }) => session.why.locked);
  return (
    <div className="plan-choices">
      <fieldset className="choice">
        <legend>May change</legend>
        <div className="plan-locks">
          {MOVEMENT_GROUPS.map((group) => (
            <button
              key={group}
              type="button"
              className="plain"
              role="switch"
              aria-checked={!locked.includes(group)}
              onClick={() => setLocked(group, !locked.includes(group))}
            >
              {GROUP_NAMES[group]}
              {locked.includes(group) && <small>locked</small>}
            </button>
          ))}
        </div>
      </fieldset>
    </div>
  );
}

/** How a plan is named in the choice; the same movements are the same plan. */
const keyOf = ({ uses }: StepPlan): string => uses.join('+');

function Plans({ answer }: { answer: PlanAnswer }) {
  const { plans } = answer;
  const chosen = useDesk(({ session }) => session.why.plan);
  const movements = useDesk(({ document }) => document.movements);
  const units = useDesk(({ document }) => document.units);
  const ghost = useDesk(ghostDialled);
  const record = useDesk(({ document }) => document.plan);
  const plan = plans.find((one) => keyOf(one) === chosen) ?? plans[0];
  const text = sayPlans(answer, units, answer.aim);
  if (!plan) return <Lead text={text} spoken={text.replaceAll(' cm ', ' centimetres ')} />;
  const dialled = toDialled(plan.movements, movements);
  const isShown = ghost !== null && same(ghost, dialled);
  const offer = { from: movements, movements: dialled, targetCm: toTarget(plan.readings) };
  const isChosen = record !== null && same(record.movements, dialled) && same(record.from, movements);
  return (
    <>
      <Lead text={text} spoken={text.replaceAll(' cm ', ' centimetres ')} />
      <fieldset className="plan-list" aria-label="Plans, smallest change first">
        {plans.map((one) => (
          <button
            key={keyOf(one)}
            type="button"
            className="plain"
            aria-pressed={one === plan}
            onClick={() => setWhy({ plan: keyOf(one) })}
          >
            {sayUses(one.uses)}
          </button>
        ))}
      </fieldset>
      <Aim plan={plan} />
      <PlanCard plan={plan} answer={answer} />
      <div className="plan-acts">
        {!isChosen && (
          <button
            type="button"
            className="plain plan-apply"
            onClick={() => {
              choosePlan(offer);
              showGhost('plan');
            }}
          >
            Choose this plan
          </button>
        )}
        <button
          type="button"
          className="plain"
          aria-pressed={isShown}
          onClick={() => showGhost(isShown ? null : dialled)}
        >
          Show as comparison
        </button>
        <button type="button" className="plain" onClick={() => takeDialled(`Plan: ${sayUses(plan.uses)}`, dialled)}>
          Use this swing
        </button>
      </div>
      <Source>{PLAN_SOURCE}</Source>
    </>
  );
}

const same = (a: Dialled, b: Dialled): boolean => JSON.stringify(a) === JSON.stringify(b);
