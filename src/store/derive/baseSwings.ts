import type { Body, Player } from '../../model/body';
import { createRig } from '../../model/chain';
import type { Club } from '../../model/club';
import type { ReferenceSwing } from '../../model/keys';
import { STILL } from '../../model/movements';
import { applyTopSetUp } from '../../model/setUp';
import { createSwing, type Swing } from '../../reading/swing';
import { toBodyAndClub, toTopSetUp } from '../document/convert';
import type { ClubChoice, SetUp } from '../document/document';
import { forgetFailures, referenceFor } from './references';

/** A player with a club and the reference swing that was found for them. */
export interface Ground {
  readonly player: Player;
  readonly choice: ClubChoice;
  readonly body: Body;
  readonly club: Club;
  readonly reference: ReferenceSwing;
}
/** A ground with the player's own top of the backswing and tempo, nothing dialled. */
export interface Base {
  readonly ground: Ground;
  readonly swing: Swing;
  /** How far the hands stay from where the set-up asks them to be at the top, m. */
  readonly topShortfall: number;
}
/** Why there is no reference swing to stand on, in words. */
export interface NoGround {
  readonly isSolving: boolean;
  readonly problem: string;
}

/** Players, tops and tempos kept at hand: more than two that are compared and the mixtures of them. */
const KEPT = 16;
const grounds = new Map<string, Ground>();
const bases = new Map<string, Base>();

/** Keeps a map small: the oldest goes first. */
function keep<V>(map: Map<string, V>, key: string, value: V): V {
  const [oldest] = map.keys();
  if (map.size >= KEPT && oldest !== undefined) map.delete(oldest);
  map.set(key, value);
  return value;
}

/** Player and club with their reference swing: the same objects every time, so that nothing is built twice. */
export function groundOf(player: Player, choice: ClubChoice): Ground | NoGround {
  const key = JSON.stringify([player, choice]);
  const known = grounds.get(key);
  if (known) return known;
  try {
    const { body, club } = toBodyAndClub({ player, club: choice });
    const found = referenceFor(body, club);
    if ('reference' in found) {
      return keep(grounds, key, { player, choice, body, club, reference: found.reference });
    }
    if ('failed' in found) forgetFailures();
    return 'failed' in found
      ? { isSolving: false, problem: found.failed }
      : { isSolving: true, problem: 'The first reference swing is still being found.' };
  } catch (error) {
    return { isSolving: false, problem: error instanceof Error ? error.message : String(error) };
  }
}

/** The swing of a ground with this top and tempo, nothing dialled: the same object every time. */
export function baseOn(ground: Ground, setUp: SetUp): Base {
  const { player, choice, body, club, reference: solved } = ground;
  const key = JSON.stringify([player, choice, setUp]);
  const known = bases.get(key);
  if (known) return known;
  const { reference, shortfall } = applyTopSetUp(createRig(body, club), solved, toTopSetUp(setUp));
  const swing = createSwing(body, club, reference, STILL, setUp.downswingMs / 1000);
  return keep(bases, key, { ground: { ...ground, reference }, swing, topShortfall: shortfall });
}

/** Player, club, top and tempo in one. */
export function baseOf(of: {
  readonly player: Player;
  readonly club: ClubChoice;
  readonly setUp: SetUp;
}): Base | NoGround {
  const ground = groundOf(of.player, of.club);
  return 'problem' in ground ? ground : baseOn(ground, of.setUp);
}
