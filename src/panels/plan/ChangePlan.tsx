import { MOVEMENT_GROUPS } from '../../model/movements';
import { useDesk, type Dialled } from '../../store';
import { useAsked } from '../../store/solver/solverClient';
import type { StepPlan } from '../../solving/diagnosis/planOnSteps';
import type { PlanAnswer } from '../../solving/diagnosis/solverJobs';
import { USUAL_GIVE_CM } from '../../store/document/sighting';
import { setLocked, setWhy, showGhost, takeDialled, toDialled } from '../../store/desk/whyActions';
import { sayLanding, sayPlans, sayUses } from '../../words/why/whatToChange';
import { GROUP_NAMES } from '../dials/Movements';
import { Choice } from '../fields/Choice';
import { AsItIs, Lead, Source } from '../why/Lead';
import { PlanCard } from './PlanCard';

/** The smallest changes that bring both checkpoints on plane: what moves, what else it does, what to feel and practise. */
export default function ChangePlan() {
  const answer = useAsked((asked) => asked.answer);
  const isBusy = useAsked((asked) => asked.isBusy);
  return (
    <div className="change-plan" data-busy={isBusy || undefined}>
      <AsItIs />
      {answer?.kind === 'refused' ? (
        <Lead text={answer.message} />
      ) : answer?.kind === 'plan' ? (
        <Plans answer={answer} />
      ) : (
        <Lead text="Looking for the smallest change …" />
      )}
      <Locks />
    </div>
  );
}

/** The smallest change ends on the edge of a band and holds for half; one tap asks for more. */
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
        label="How surely it should land"
        value={aim}
        options={[
          { value: 'edge', text: 'Smallest change' },
          { value: 'inside', text: 'Sturdier, well inside' },
        ]}
        onChoose={(next) => setWhy({ aim: next })}
      />
      <p className="plan-holds">{sayLanding(plan.holds, give / 100, units)}</p>
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
  const ghost = useDesk(({ session }) => session.ghost);
  const plan = plans.find((one) => keyOf(one) === chosen) ?? plans[0];
  const text = sayPlans(answer, units, answer.aim);
  if (!plan) return <Lead text={text} spoken={text.replaceAll(' cm ', ' centimetres ')} />;
  const dialled = toDialled(plan.movements, movements);
  const isShown = ghost !== null && same(ghost, dialled);
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
        <button
          type="button"
          className="plain"
          aria-pressed={isShown}
          onClick={() => showGhost(isShown ? null : dialled)}
        >
          Show as ghost
        </button>
        <button
          type="button"
          className="plain plan-apply"
          onClick={() => takeDialled(`Plan: ${sayUses(plan.uses)}`, dialled)}
        >
          Apply
        </button>
      </div>
      <Source>Numbers computed by the model. Feel, practice and bands: rules of thumb.</Source>
    </>
  );
}

const same = (a: Dialled, b: Dialled): boolean => JSON.stringify(a) === JSON.stringify(b);
