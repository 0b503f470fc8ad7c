import { dialOf, type MovementId } from '../../model/movements';
import { findCautions, findPractice, sayChange, type Drill } from './practice';
import type { Units } from '../numbers/units';

/** How far one dial goes, new less old, model units. */
export interface DialChange {
  readonly id: MovementId;
  readonly change: number;
}

/** Drills that a player can keep in mind. */
const MOST_DRILLS = 3;

/** How a change as a whole is practised: the feel of what changes most, drills for each part, and what to mind. */
export interface PlanPractice {
  /** Empty when nothing changes. */
  readonly feel: string;
  readonly drills: readonly Drill[];
  readonly cautions: readonly string[];
}

/** The practice of a change of several dials. The movement that changes most, by its usual range, comes first. */
export function practiceOf(changes: readonly DialChange[]): PlanPractice {
  const found = byEffort(changes).flatMap(({ id, change }) => findPractice(id, change) ?? []);
  const drills = found.length === 1 ? found[0].drills : found.map(({ drills: [first] }) => first);
  return { feel: found[0]?.feel ?? '', drills: drills.slice(0, MOST_DRILLS), cautions: findCautions(found) };
}

/** What is to change, one sentence a dial. */
export const sayPlanChanges = (changes: readonly DialChange[], units: Pick<Units, 'length'>): readonly string[] =>
  changes.flatMap(({ id, change }) => sayChange(id, change, units) ?? []);

function byEffort(changes: readonly DialChange[]): readonly DialChange[] {
  const effort = ({ id, change }: DialChange): number => {
    const { usualMin, usualMax } = dialOf(id);
    return Math.abs(change) / (usualMax - usualMin);
  };
  return changes.toSorted((a, b) => effort(b) - effort(a));
}

/** The task in a few words, for a headline: of what changes most. `from` and `change` in model units; the wrist's word follows its sign. */
export function sayTask(changes: readonly DialChange[], from: Readonly<Record<MovementId, number>>): string {
  const [most] = byEffort(changes).filter(({ change }) => Math.abs(change) > 1e-9);
  if (!most) return 'Keep it as it is';
  const { id, change } = most;
  const up = change > 0;
  switch (id) {
    case 'leadWristFlexion':
      if (up) return from[id] < -1e-9 ? 'Less cup in the lead wrist' : 'More bow in the lead wrist';
      return from[id] > 1e-9 ? 'Less bow in the lead wrist' : 'More cup in the lead wrist';
    case 'rotationRate':
      return `Turn the body ${up ? 'more' : 'less'} in the downswing`;
    case 'rotationDelay':
      return `Start the turn ${up ? 'later' : 'earlier'}`;
    case 'trailSideBend':
      return `Side bend ${up ? 'away from' : 'toward'} the target`;
    case 'pelvisShift':
      return `${up ? 'More' : 'Less'} hip slide to the target`;
  }
}

/** The task in two words, for a flag in the drawing of progress. Units as in `sayTask`. */
export function sayFlag(changes: readonly DialChange[], from: Readonly<Record<MovementId, number>>): string {
  const [most] = byEffort(changes).filter(({ change }) => Math.abs(change) > 1e-9);
  if (!most) return 'Keep it';
  const { id, change } = most;
  const up = change > 0;
  switch (id) {
    case 'leadWristFlexion':
      return up ? (from[id] < -1e-9 ? 'Less cup' : 'More bow') : from[id] > 1e-9 ? 'Less bow' : 'More cup';
    case 'rotationRate':
      return up ? 'Turn more' : 'Turn less';
    case 'rotationDelay':
      return up ? 'Later turn' : 'Early turn';
    case 'trailSideBend':
      return up ? 'Side bend' : 'Less bend';
    case 'pelvisShift':
      return up ? 'Hip slide' : 'Less slide';
  }
}

export const PLAN_SOURCE = 'Numbers computed by the model. Feel, practice and bands: rules of thumb.';
