import type { CheckpointId } from '../../reading/checkpoints';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';
import { LENGTHS, type Units } from '../numbers/units';
import { formatNumber } from '../numbers/numbers';

/** By how much two swings differ in the two judged readings, first less second, m. */
export interface Apart {
  readonly name: string;
  readonly leadArmParallel: number;
  readonly shaftParallel: number;
}

/** Closer than this is said to be the same: half of the smallest number on screen, in the shown unit. */
const SAME = 0.05;

/** The sentence over two compared swings, and how a screen reader says it: "This swing: 5 cm steeper at P5, the same at P6." */
export function sayApart(
  { name, leadArmParallel, shaftParallel }: Apart,
  units: Pick<Units, 'length'>,
): { readonly text: string; readonly spoken: string } {
  const { metres, symbol, spoken, decimals } = LENGTHS[units.length];
  if (!Number.isFinite(leadArmParallel) || !Number.isFinite(shaftParallel)) {
    const text = 'One of the two swings does not reach a checkpoint.';
    return { text, spoken: text };
  }
  const isSame = (value: number): boolean => Math.abs(value / metres) < SAME;
  const say = (value: number, unit: string, up: string, down: string): string => {
    const shown = value / metres;
    if (isSame(value)) return 'the same';
    // What rounds to nothing still differs: one more decimal says by how much.
    const places = Math.abs(shown) < 0.5 * 10 ** -decimals ? decimals + 1 : decimals;
    return `${formatNumber(Math.abs(shown), places)} ${unit} ${shown > 0 ? up : down}`;
  };
  const whole = (unit: string): string => {
    if (isSame(leadArmParallel) && isSame(shaftParallel)) return `${name}: the same at P5 and P6.`;
    const p5 = say(leadArmParallel, unit, 'steeper', 'shallower');
    const p6 = say(shaftParallel, unit, 'farther in front', 'farther behind');
    return `${name}: ${p5} at P5, ${p6} at P6.`;
  };
  return { text: whole(symbol), spoken: whole(spoken[1]) };
}

/** "12 ms before its P5": a swing stopped by the clock, not at its own checkpoint. Seconds, + past it. */
export function sayOffCheckpoint(id: CheckpointId, seconds: number): string {
  const { position } = CHECKPOINT_NAMES[id];
  const ms = Math.round(Math.abs(seconds) * 1000);
  return ms === 0 ? `At its ${position}` : `${ms} ms ${seconds > 0 ? 'past' : 'before'} its ${position}`;
}
