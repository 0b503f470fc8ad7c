import { DIALS, MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { practiceOf, type DialChange } from '../../words/why/planText';
import { PLAN_LIMITS, type ChosenPlan } from '../document/chosenPlan';
import { toMovements } from '../document/convert';
import type { Dialled } from '../document/dialled';

/** How far each dial goes from one swing to another, model units; in the order of the dials, those that stay with 0. */
export function changesBetween(from: Dialled, to: Dialled): readonly DialChange[] {
  const [before, after] = [toMovements(from), toMovements(to)];
  return DIALS.map(({ id }) => ({ id, change: after[id] - before[id] }));
}

/** The movements that a plan changes. */
export function groupsOf({ from, movements }: Pick<ChosenPlan, 'from' | 'movements'>): readonly MovementGroup[] {
  const moved = changesBetween(from, movements).filter(({ change }) => Math.abs(change) > 1e-9);
  return MOVEMENT_GROUPS.filter((group) =>
    DIALS.some((dial) => dial.group === group && moved.some(({ id }) => id === dial.id)),
  );
}

/** What a plan is made from: where it starts, where it leads and what that reads, cm. */
export type PlanOffer = Pick<ChosenPlan, 'from' | 'movements' | 'targetCm'>;

/**
 * The record of a plan that is being chosen. Feel, drills and cautions are those of what changes; names, the next day and the coach's own words
 * stay what they were in the plan before.
 */
export function draftPlan(id: string, { from, movements, targetCm }: PlanOffer, before: ChosenPlan | null): ChosenPlan {
  const { feel, drills, cautions } = practiceOf(changesBetween(from, movements));
  return {
    id,
    from,
    movements,
    targetCm,
    feel,
    drills: drills.map(({ name, how, often }) => ({ name, how: how.join(' '), often })),
    cautions: cautions.slice(0, PLAN_LIMITS.cautions),
    words: before?.words ?? '',
    nextDate: before?.nextDate ?? null,
    names: before?.names ?? { player: null, coach: null },
  };
}
