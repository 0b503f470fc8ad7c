import { nullable, unknown } from 'valibot';
import { isKept, keptText } from '../../checking/kept';
import { read } from '../../checking/read';
import { eachOf, fields, isFields, listUpTo, numberIn, oneOf } from '../../checking/schemas';
import { crc32 } from '../../math/crc32';
import { MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { PLAN_LIMITS, type PlanDrill } from '../../store/document/chosenPlan';
import { CAUTIONS } from '../../words/swing/status';
import { GROUPS } from '../../words/why/whatToChange';
import { NOTHING_COMPUTED } from './recordTypes';

type Raw = Readonly<Record<string, unknown>>;

/** What a lesson of version 1 kept of a plan: a target on its own, the movements worked on, and drills as they were typed. */
const OLD_PARTS = fields({
  target: nullable(
    fields({
      movements: unknown(),
      computedCm: fields(eachOf(CHECKPOINT_IDS, () => nullable(numberIn(-1000, 1000)))),
    }),
  ),
  plan: listUpTo(oneOf(MOVEMENT_GROUPS), MOVEMENT_GROUPS.length),
  drills: listUpTo(keptText(200), 12),
});

/**
 * A lesson of version 1 as one of version 2: target, movements worked on and drills become the chosen plan in its desk. A plan holds three
 * drills; the others, and the movements, go on in the notes. What is damaged is left where it was, for the reader to name.
 */
export function withPlanInDesk(old: Raw): Record<string, unknown> {
  const { target, plan, drills, ...rest } = old;
  const found = read(OLD_PARTS, { target, plan, drills });
  const { now, notes } = rest;
  if ('fault' in found || !isFields(now) || typeof notes !== 'string') return { ...old };
  const { target: goal, plan: workedOn, drills: typed } = found.value;
  if (!goal && workedOn.length === 0 && typed.length === 0) return rest;
  const chosen = {
    id: planIdOf(old['id']),
    from: now['movements'],
    movements: goal?.movements ?? now['movements'],
    targetCm: goal?.computedCm ?? NOTHING_COMPUTED,
    feel: '',
    drills: typed.slice(0, PLAN_LIMITS.drills).map(toDrill),
    cautions: [...CAUTIONS],
    words: '',
    nextDate: null,
    names: { player: null, coach: null },
  };
  return { ...rest, now: { ...now, plan: chosen }, notes: withLines(notes, workedOn, typed.slice(PLAN_LIMITS.drills)) };
}

/** A long drill keeps its first words as its name. */
function toDrill(text: string): PlanDrill {
  const most = PLAN_LIMITS.drillName;
  if (text.length <= most) return { name: text, how: '', often: '' };
  const space = text.lastIndexOf(' ', most);
  const at = space > 0 ? space : most;
  const [name, how] = [text.slice(0, at), text.slice(at).trim()];
  // Cutting must not split a character in two.
  return isKept(name) && isKept(how)
    ? { name, how, often: '' }
    : { name: text.slice(0, at - 1), how: text.slice(at - 1), often: '' };
}

function withLines(notes: string, workedOn: readonly MovementGroup[], drills: readonly string[]): string {
  const worked = workedOn.map((id) => GROUPS[id].toLowerCase()).join(', ');
  return [notes, worked && `Worked on: ${worked}.`, ...drills].filter((line) => line !== '').join('\n');
}

/** The same id whenever the same old lesson is read, and nothing of the lesson can be read out of it. */
function planIdOf(lessonId: unknown): string {
  const sum = (salt: string): string =>
    crc32(new TextEncoder().encode(salt + String(lessonId)))
      .toString(16)
      .padStart(8, '0');
  return sum('plan ') + sum('of lesson ');
}
