import { useDesk } from '../../store';
import type { ChosenPlan } from '../../store/document/chosenPlan';
import { changesBetween } from '../../store/plan/draftPlan';
import { sayBoth } from '../../words/book/readings';
import { NOTHING_TO_CHANGE } from '../../words';
import { sayPlanChanges } from '../../words/why/planText';
import './plan.css';

/** The chosen plan in words: what changes, and where that leads. */
export function PlanSummary({ plan }: { plan: ChosenPlan }) {
  const units = useDesk(({ document }) => document.units);
  const changes = sayPlanChanges(changesBetween(plan.from, plan.movements), units);
  return (
    <div className="plan-chosen">
      <ul>
        {(changes.length > 0 ? changes : [NOTHING_TO_CHANGE]).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="fine">Target: {sayBoth(null, plan.targetCm, units)}, computed by the model.</p>
    </div>
  );
}
