import type { Body, Player } from '../../model/body';
import { createRig } from '../../model/chain';
import type { Club } from '../../model/club';
import type { ReferenceSwing } from '../../model/keys';
import { STILL } from '../../model/movements';
import { applyTopSetUp } from '../../model/setUp';
import { createSwing, type Swing } from '../../reading/swing';
import { findUsual } from '../../solving/reference/usual';
import { toBodyAndClub, toTopSetUp } from '../document/convert';
import type { ClubChoice, SetUp } from '../document/document';
import { referenceKey, type References } from './references';

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

/**
 * Grounds and bases kept at hand, so that the same player, club, top and tempo are the same objects every time: what differs between two
 * swings is told by their objects. Each answer follows from the arguments alone.
 */
export interface BaseSwings {
  /** Player and club with their reference swing. */
  readonly groundOf: (player: Player, choice: ClubChoice, references: References) => Ground | NoGround;
  /** The swing of a ground with this top and tempo, nothing dialled. */
  readonly baseOn: (ground: Ground, setUp: SetUp) => Base;
  /** Player, club, top and tempo in one. */
  readonly baseOf: (
    of: { readonly player: Player; readonly club: ClubChoice; readonly setUp: SetUp },
    references: References,
  ) => Base | NoGround;
}

/** Players, tops and tempos kept at hand: more than two that are compared and the mixtures of them. */
const KEPT = 16;

/** Keeps a map small: the oldest goes first. */
function keep<V>(map: Map<string, V>, key: string, value: V): V {
  const [oldest] = map.keys();
  if (!map.has(key) && map.size >= KEPT && oldest !== undefined) map.delete(oldest);
  map.set(key, value);
  return value;
}

/** Body and club of a player, and where their reference swing is. */
interface Golfer {
  readonly body: Body;
  readonly club: Club;
  readonly key: string;
  readonly usual: ReferenceSwing | undefined;
}
function golferOf(player: Player, choice: ClubChoice): Golfer {
  const { body, club } = toBodyAndClub({ player, club: choice });
  return { body, club, key: referenceKey(body, club), usual: findUsual(body, club) };
}

/** Empty caches of grounds and bases. */
export function createBaseSwings(): BaseSwings {
  const golfers = new Map<string, Golfer>();
  const grounds = new Map<string, Ground>();
  const bases = new Map<string, { readonly from: ReferenceSwing; readonly base: Base }>();

  const groundOf: BaseSwings['groundOf'] = (player, choice, references) => {
    const key = JSON.stringify([player, choice]);
    try {
      const golfer = golfers.get(key) ?? keep(golfers, key, golferOf(player, choice));
      const found = golfer.usual ? { reference: golfer.usual } : references.get(golfer.key);
      if (!found) return { isSolving: true, problem: 'The first reference swing is still being found.' };
      if ('failed' in found) return { isSolving: false, problem: found.failed };
      const known = grounds.get(key);
      if (known?.reference === found.reference) return known;
      const { body, club } = golfer;
      return keep(grounds, key, { player, choice, body, club, reference: found.reference });
    } catch (error) {
      return { isSolving: false, problem: error instanceof Error ? error.message : String(error) };
    }
  };

  const baseOn: BaseSwings['baseOn'] = (ground, setUp) => {
    const { player, choice, body, club, reference: solved } = ground;
    const key = JSON.stringify([player, choice, setUp]);
    const known = bases.get(key);
    if (known?.from === solved) return known.base;
    const { reference, shortfall } = applyTopSetUp(createRig(body, club), solved, toTopSetUp(setUp));
    const swing = createSwing(body, club, reference, STILL, setUp.downswingMs / 1000);
    const base: Base = { ground: { ...ground, reference }, swing, topShortfall: shortfall };
    return keep(bases, key, { from: solved, base }).base;
  };

  return {
    groundOf,
    baseOn,
    baseOf({ player, club, setUp }, references) {
      const ground = groundOf(player, club, references);
      return 'problem' in ground ? ground : baseOn(ground, setUp);
    },
  };
}
