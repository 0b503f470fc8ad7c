import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { readCheckpoints, type Checkpoints, type Readings } from '../../src/reading/checkpoints';
import { strikeOf, type ReferenceStrike } from '../../src/reading/delivery/delivery';
import { createSwing, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';

/** A player with a club, his reference swing, and what is read on it. */
export interface Case {
  readonly name: string;
  readonly statureM: number;
  readonly club: ClubId;
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  readonly strike: ReferenceStrike;
}

export function caseOf(statureM: number, club: ClubId): Case {
  const body = bodyOf({ statureM, handed: 'right' });
  const spec = clubOf(CLUBS[club]);
  const swing = createSwing(body, spec, solveReference(body, spec).reference);
  const checkpoints = readCheckpoints(swing);
  return { name: `${statureM} m, ${club}`, statureM, club, swing, checkpoints, strike: strikeOf(swing, checkpoints)! };
}

/** Readings of a checkpoint that is known to be reached. */
export function read(checkpoints: Checkpoints, id: keyof Checkpoints): Readings {
  const at = checkpoints[id];
  if ('missing' in at) throw new Error(`${id} is not reached: ${at.missing}`);
  return at.readings;
}

/** `count` + 1 evenly spaced values from `from` to `to`. */
export const spread = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
