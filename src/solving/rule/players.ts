import type { Rad } from '../../math/angle';
import { createRandom } from '../../math/normal';
import { bodyOf, type Body } from '../../model/body';
import { createRig } from '../../model/chain';
import { CLUB_IDS, CLUBS, clubOf, type Club, type ClubId } from '../../model/club';
import { applyTopSetUp, type TopSetUp } from '../../model/setUp';
import { createSwing } from '../../reading/swing';
import { readBase, type SwingBase } from '../playOut';
import type { ReferenceSwing } from '../../model/keys';
import { solveReference } from '../reference/reference';
import { shippedSwings } from '../reference/shipped';
import { USUAL_STATURE_M } from '../reference/usual';
import { judgeFit } from '../reference/usable';
import { TOP_FIELDS, topRange } from './drawRange';
import type { Rule } from './rule';

/** A player with a club, as far as a rule tells players apart. */
export interface TriedPlayer {
  /** m */
  readonly stature: number;
  readonly club: ClubId;
  /** Angle between lead arm and shaft that the reference is asked for, rad; absent: as it comes. */
  readonly lag?: Rad;
}

/** Reference swings by player: shipped ones at once, others solved when they are first asked for. */
export interface ReferenceBook {
  /** The reference with body and club; undefined where none was found. Some tenths of a second for one that is not shipped. */
  readonly find: (player: TriedPlayer) => Known | undefined;
}
interface Known {
  readonly body: Body;
  readonly club: Club;
  readonly reference: ReferenceSwing;
}

/** An empty book. Whoever keeps it keeps what was solved. */
export function createReferenceBook(): ReferenceBook {
  const known = new Map<string, Known | undefined>();
  return {
    find(player) {
      const key = `${player.stature} ${player.club} ${player.lag ?? ''}`;
      if (!known.has(key)) known.set(key, solveFor(player));
      return known.get(key);
    },
  };
}

function solveFor({ stature, club: id, lag }: TriedPlayer): Known | undefined {
  const body = bodyOf({ statureM: stature, handed: 'right' });
  const plain = clubOf(CLUBS[id]);
  const club: Club = lag === undefined ? plain : { ...plain, lag };
  const found = judgeFit(solveReference(body, club));
  return 'refused' in found ? undefined : { body, club, reference: found.reference };
}

/** A player's swing with his own top of the backswing, nothing dialled; undefined where there is no reference. */
export function standOn(book: ReferenceBook, player: TriedPlayer, top: TopSetUp, armAngle: Rad): SwingBase | undefined {
  const found = book.find(player);
  if (!found) return undefined;
  const { body, club } = found;
  const { reference } = applyTopSetUp(createRig(body, club), found.reference, top);
  return readBase(createSwing(body, club, reference), armAngle);
}

/** Most players of whom a reference swing is looked for; those that ship cost nothing and are all tried. */
const MOST_SOLVED = 12;
/** Lags tried in a range, evenly inside it. */
const LAGS = 4;
/** The middle one, and no other, where no shipped player is as tall as the rule says. */
const HALF = 0.5;

/**
 * The players that a rule is tried with: every height and club that ships and that the rule speaks of. A height between those that ship,
 * or a lag, needs a search for each player: then `MOST_SOLVED` of them, drawn by the seed.
 */
export function playersFor({ who }: Rule, seed: number): readonly TriedPlayer[] {
  const statures = staturesIn(who.stature);
  const clubs = CLUB_IDS.filter((id) => who.clubs?.includes(id) ?? true);
  const plain = statures.flatMap((stature) => clubs.map((club): TriedPlayer => ({ stature, club })));
  const { lag } = who;
  if (lag) {
    const step = (lag.high - lag.low) / LAGS;
    const lags = step > 0 ? Array.from({ length: LAGS }, (_, i) => lag.low + (i + HALF) * step) : [lag.low];
    // Every lag stays in the draw, each with players of its own.
    const most = Math.floor(MOST_SOLVED / lags.length);
    const random = createRandom(seed);
    return lags.flatMap((one) => drawPlayers(plain, most, random).map((player) => ({ ...player, lag: one })));
  }
  const ships = statures.every((stature) => shippedStatures().includes(stature));
  return ships ? plain : drawPlayers(plain, MOST_SOLVED, createRandom(seed));
}

const shippedStatures = (): number[] => [...new Set(shippedSwings().map(({ statureM }) => statureM))];

function staturesIn(range: Rule['who']['stature']): number[] {
  const all = shippedStatures().toSorted((a, b) => a - b);
  if (!range) return all;
  const inside = all.filter((stature) => stature >= range.low && stature <= range.high);
  return inside.length > 0 ? inside : [Math.round((range.low + range.high) * HALF * 100) / 100];
}

/** So many players, each at most once: the most usual one, and others in an order that the random numbers give. */
function drawPlayers(from: readonly TriedPlayer[], count: number, random: () => number): TriedPlayer[] {
  const [usual, ...left] = from.toSorted((a, b) => strangeness(a) - strangeness(b));
  const others = Array.from(
    { length: Math.min(count, from.length) - 1 },
    () => left.splice(Math.floor(random() * left.length), 1)[0],
  );
  return [usual, ...others];
}

const USUAL_CLUB = '7-iron';

/** How far a height is from the usual player's, the spread of heights being 1. */
export const heightAway = ({ stature }: TriedPlayer): number => (stature - USUAL_STATURE_M) / 0.15;
/** How far a club is from the usual one, three clubs along the bag being 1; + shorter. */
export const clubAway = ({ club }: TriedPlayer): number => (CLUB_IDS.indexOf(club) - CLUB_IDS.indexOf(USUAL_CLUB)) / 3;
/** How far a player with a club is from the usual player with a 7-iron. */
export const strangeness = (player: TriedPlayer): number => Math.hypot(heightAway(player), clubAway(player));

/** How likely a field of the top that a rule says nothing about stays as the reference has it. */
const PLAIN = 0.5;

/** A top of the backswing for a rule, drawn from random numbers. */
export function drawTop(rule: Rule, random: () => number): TopSetUp {
  const top: { -readonly [field in keyof TopSetUp]: TopSetUp[field] } = {
    handDepth: 0,
    handHeight: 0,
    turn: 0,
    wristSet: 0,
  };
  for (const field of TOP_FIELDS) {
    const { first, last, step } = topRange(rule, field);
    const [isPlain, value] = [random() < PLAIN, (first + Math.floor(random() * (last - first + 1))) * step];
    top[field] = isPlain && !rule.who.top?.[field] ? 0 : value;
  }
  return top;
}
