import type { CheckpointId } from '../../reading/checkpointTable';
import type { Dialled } from './dialled';

/** One exercise of a plan, in words. A coach may write his own: then there is often only a name. */
export interface PlanDrill {
  readonly name: string;
  readonly how: string;
  readonly often: string;
}

/** Names that the coach chose to hand out with the plan; null: not handed out. */
export interface PlanNames {
  readonly player: string | null;
  readonly coach: string | null;
}

/**
 * The one plan that was chosen for a player: everything that is drawn, printed, filmed or sent of a plan is read from here. It stays as it
 * is while the desk is dialled.
 */
export interface ChosenPlan {
  /** Random letters and digits: tells plans apart, and says nothing about whose it is or when it was made. */
  readonly id: string;
  /** The swing it starts from: how the player's swing was explained when the plan was chosen. */
  readonly from: Dialled;
  /** The swing it leads to. What changes, and by how much, is the difference. */
  readonly movements: Dialled;
  /** Judged readings of that swing when the plan was chosen, cm; null where a checkpoint is not reached. */
  readonly targetCm: { readonly [id in CheckpointId]: number | null };
  readonly feel: string;
  readonly drills: readonly PlanDrill[];
  readonly cautions: readonly string[];
  /** The coach's own words to the player. */
  readonly words: string;
  /** Day of the next lesson, "2026-12-02". */
  readonly nextDate: string | null;
  readonly names: PlanNames;
}

/** Longest texts of a plan, characters, and most entries of its lists. A link with all of them at their longest still opens. */
export const PLAN_LIMITS = {
  feel: 200,
  drills: 3,
  drillName: 80,
  drillHow: 240,
  drillOften: 80,
  cautions: 10,
  caution: 120,
  words: 600,
  name: 60,
} as const;

/** Letters and digits of a plan's id. */
export const PLAN_ID = /^[0-9a-z]{12,24}$/;
