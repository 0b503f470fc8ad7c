import type { InferOutput } from 'valibot';
import type { Rad } from '../math/angle';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import { createRig } from '../model/chain';
import { K } from '../model/keys';
import { applyTopSetUp, type TopSetUp } from '../model/setUp';
import { DEFAULT_ARM_ANGLE } from '../reading/checkpoints';
import { createSwing, headVelocityAt, type Swing } from '../reading/swing';
import { solveReference } from '../solving/reference/reference';
import { judgeFit, type Usable } from '../solving/reference/usable';
import { readBase, type SwingBase } from '../solving/playOut';
import { createCache } from './cache';
import { toBody, toClub, type clubSchema, type playerSchema } from './golfer';
import { LineError } from './lineError';

/** The reference swing of a player with a club, and what it is compared with. */
export interface Ground {
  readonly swing: Swing;
  readonly club: Club;
  /** Path of the reference at impact, rad. Positive: in-to-out. */
  readonly path: Rad;
  /** The reference read at a reading angle (rad): what every dialled swing is held against. */
  base(armAngle: Rad): SwingBase;
}

/** The reference that ships for this player and club, or one solved for them. Some tenths of a second the first time. */
const referenceOf = (body: Body, club: Club): Usable => judgeFit(solveReference(body, club));

/** Why there is no ground, in words. */
type Refusal = Extract<Usable, { readonly refused: string }>;

const velocity = new Float64Array(3);

function createGround(
  player: InferOutput<typeof playerSchema>,
  clubGiven: InferOutput<typeof clubSchema>,
): Ground | Refusal {
  const body = toBody(player, 'player');
  const club = toClub(clubGiven, player.lagDeg);
  const found = referenceOf(body, club);
  if ('refused' in found) return found;
  const swing = createSwing(body, club, found.reference);
  headVelocityAt(swing, swing.curves.times[K.impact], velocity);
  // Lines that follow each other mostly share the reading angle: the last answer is enough.
  const read = (armAngle: Rad) => ({ armAngle, base: readBase(swing, armAngle) });
  let known = read(DEFAULT_ARM_ANGLE);
  return {
    swing,
    club,
    path: Math.atan2(velocity[2], velocity[0]),
    base: (armAngle) => (armAngle === known.armAngle ? known : (known = read(armAngle))).base,
  };
}

/** Players and clubs whose reference is kept. A solved one takes some 10 kB and some tenths of a second. */
const KEPT = 256;
const recall = createCache<Ground | Refusal>(KEPT);

/**
 * The player, club and reference of a line: solved once for each. The hand a player plays with makes no difference. A
 * player for whom no swing was found costs one search as well, not one a line.
 */
export function groundOf(player: InferOutput<typeof playerSchema>, club: InferOutput<typeof clubSchema>): Ground {
  const key = JSON.stringify([player.statureM, player.segmentsM, player.lagDeg, club]);
  const ground = recall(key, () => createGround(player, club));
  if ('refused' in ground) throw new LineError('player', ground.refused);
  return ground;
}

/** A ground with the player's own top of the backswing, nothing dialled. */
export function withTop({ swing, club }: Ground, top: TopSetUp, armAngle: Rad): SwingBase {
  const { body } = swing.rig;
  const { reference } = applyTopSetUp(createRig(body, club), swing.reference, top);
  return readBase(createSwing(body, club, reference), armAngle);
}
