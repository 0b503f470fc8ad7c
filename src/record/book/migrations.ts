import { withPlanInDesk } from './planOfLesson';
import { RECORD_VERSION } from './recordTypes';

/** Turns a record of one version into the next: a fresh object, or undefined when it cannot be. */
export type Step = (old: Readonly<Record<string, unknown>>) => Record<string, unknown> | undefined;

/**
 * The steps that bring old records forward: the first from version 1 to 2, and so on. Every version ever written stays
 * readable, so a step is only ever added. `tests/fixtures` holds a frozen file of each version.
 */
const STEPS: readonly Step[] = [
  // The target, the movements worked on and the drills of a lesson became the one chosen plan of its desk.
  (old) => ({ ...(old['kind'] === 'lesson' ? withPlanInDesk(old) : old), version: 2 }),
  // A lesson may keep what was marked on a film, and stills of it.
  (old) => ({ ...old, version: 3 }),
];

/** Migrates a record of an older version; anything else is returned unchanged, for the reader to check. */
export function migrate(value: unknown, steps: readonly Step[] = STEPS, today: number = RECORD_VERSION): unknown {
  let record = value;
  for (let hops = 0; hops < steps.length; hops++) {
    if (typeof record !== 'object' || record === null || Array.isArray(record)) return record;
    const { version } = record as { version?: unknown };
    if (typeof version !== 'number' || !Number.isInteger(version) || version < 1 || version >= today) return record;
    const step = steps[version - 1];
    record = step?.(record as Record<string, unknown>);
  }
  return record;
}
