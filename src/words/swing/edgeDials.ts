import type { MovementId } from '../../model/movements';
import { minus, sayRange } from '../numbers/ranges';
import type { Units } from '../numbers/units';
import { DIAL_NAMES, sayDial, sayPastUsual } from './dials';

/** A dial on screen: the movements of the model, and the pelvis on its own. */
type DialId = MovementId | 'pelvisRate' | 'pelvisDelay';

/** The pelvis on its own is dialled like the turn, under its own name. */
const LIKE: Partial<Record<DialId, MovementId>> = { pelvisRate: 'rotationRate', pelvisDelay: 'rotationDelay' };
const OWN: Partial<Record<DialId, { label: string; bracket: string }>> = {
  pelvisRate: { label: 'Hip turn', bracket: 'hips alone' },
  pelvisDelay: { label: 'Hip turn starts', bracket: 'hips alone' },
};

/** The movement whose words a dial uses: the pelvis alone speaks as rotation and tilt do. */
export const spokenLike = (id: DialId): MovementId => LIKE[id] ?? (id as MovementId);

/** Everything a dial says about itself at a value, in the unit of the slider. */
export function dialWords(id: DialId, value: number, units: Pick<Units, 'length'>) {
  const like = spokenLike(id);
  const said = sayDial(like, value, units);
  const { low, high } = DIAL_NAMES[like];
  return { ...said, ...OWN[id], low, high, past: sayPastUsual(like, value, units) };
}

/** How a dial's value is typed: what stands in the field, and back. */
export interface Typing {
  readonly unit: string;
  readonly decimals: number;
  readonly toField: (value: number) => number;
  readonly fromField: (typed: number) => number;
}

const CM_PER_INCH = 2.54;

/** How the value of a dial is typed and shown: unit, decimals, and the factor from the slider's own unit. */
export function typingOf(id: DialId, units: Pick<Units, 'length'>): Typing {
  const like = spokenLike(id);
  if (like === 'rotationRate') return scaled('%', 0, 100);
  if (like === 'rotationDelay') return scaled('ms', 0, 1);
  if (like === 'pelvisShift') return units.length === 'in' ? scaled('in', 1, 1 / CM_PER_INCH) : scaled('cm', 0, 1);
  return scaled('°', 0, 1);
}

function scaled(unit: string, decimals: number, factor: number): Typing {
  const tidy = (value: number): number => Number(value.toFixed(6));
  return {
    unit,
    decimals,
    toField: (value) => Number((value * factor).toFixed(decimals)),
    fromField: (typed) => tidy(typed / factor),
  };
}

/** Why a typed value cannot be taken, or undefined: what was typed, what is expected, what to do. */
export function typingProblem(
  { id, min, max }: { readonly id: DialId; readonly min: number; readonly max: number },
  typed: number,
  units: Pick<Units, 'length'>,
): string | undefined {
  const { unit, decimals, toField } = typingOf(id, units);
  const [low, high] = [toField(min), toField(max)];
  if (typed >= low && typed <= high) return undefined;
  const what = Number.isFinite(typed) ? `${minus(typed)} is outside` : 'not a number';
  return `${dialWords(id, min, units).label}: ${what}. Enter ${sayRange(low, high, unit, decimals)}.`;
}
