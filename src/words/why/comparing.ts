import type { CheckpointId } from '../../reading/checkpoints';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';
import { LENGTHS, type Units } from '../numbers/units';
import { showLength } from '../numbers/numbers';

/** By how much two swings differ in the two judged readings, first less second, m. */
export interface Apart {
  readonly name: string;
  readonly leadArmParallel: number;
  readonly shaftParallel: number;
}

/** Closer than this is said to be the same: half of the smallest number on screen, in the shown unit. */
const SAME = 0.05;

/** The sentence over two compared swings, and how a screen reader says it: "This swing: lead arm parallel 5 cm steeper, shaft parallel the same." */
export function sayApart(
  { name, leadArmParallel, shaftParallel }: Apart,
  units: Pick<Units, 'length'>,
): { readonly text: string; readonly spoken: string } {
  const { metres, decimals } = LENGTHS[units.length];
  if (!Number.isFinite(leadArmParallel) || !Number.isFinite(shaftParallel)) {
    const text = 'One of the two swings does not reach a checkpoint.';
    return { text, spoken: text };
  }
  const isSame = (value: number): boolean => Math.abs(value / metres) < SAME;
  const say = (value: number, how: 'text' | 'spoken', up: string, down: string): string => {
    if (isSame(value)) return 'the same';
    const usual = showLength(Math.abs(value), units);
    // What rounds to nothing still differs: one more decimal says by how much.
    const shown = usual.value === 0 ? showLength(Math.abs(value), units, decimals + 1) : usual;
    return `${shown[how]} ${value > 0 ? up : down}`;
  };
  const whole = (how: 'text' | 'spoken'): string => {
    if (isSame(leadArmParallel) && isSame(shaftParallel)) return `${name}: the same at both checkpoints.`;
    const arm = say(leadArmParallel, how, 'steeper', 'shallower');
    const shaft = say(shaftParallel, how, 'farther in front', 'farther behind');
    return `${name}: lead arm parallel ${arm}, shaft parallel ${shaft}.`;
  };
  return { text: whole('text'), spoken: whole('spoken') };
}

/** "12 ms before lead arm parallel": a swing stopped by the clock, not at its own checkpoint. Seconds, + past it. */
export function sayOffCheckpoint(id: CheckpointId, seconds: number): string {
  const { inSentence } = CHECKPOINT_NAMES[id];
  const ms = Math.round(Math.abs(seconds) * 1000);
  return ms === 0 ? `At ${inSentence}` : `${ms} ms ${seconds > 0 ? 'past' : 'before'} ${inSentence}`;
}
