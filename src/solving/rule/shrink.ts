import { STILL } from '../../model/movements';
import { HALF_RANGE, toDials } from '../diagnosis/judged';
import { dialRanges, nearestStep, TOP_FIELDS, TOP_LIMITS, topRange, type Steps } from './drawRange';
import { clubAway, heightAway, strangeness, type TriedPlayer } from './players';
import type { Trier, TriedSwing } from './trial';

/** What two tried swings may differ in, each with the values it takes on the way to the reference, nearest to it first. */
interface Part {
  /** Values nearer to the reference than that of `tried`, the reference's first. Each as a whole swing with that one part changed. */
  readonly nearer: (tried: TriedSwing) => TriedSwing[];
  /** Values spread over all it takes, the nearest to the reference's first, on a swing that is the reference otherwise. */
  readonly spread: (reference: TriedSwing) => TriedSwing[];
  readonly isPlain: (tried: TriedSwing) => boolean;
  /** How far it is from the reference's, half a usual range being 1. */
  readonly sizeOf: (tried: TriedSwing) => number;
}

/** A counterexample: a swing of which the rule speaks and fails, and how many of its parts differ from the reference. */
export interface Shrunk {
  readonly tried: TriedSwing;
  readonly differs: number;
}

/**
 * The simplest swing on which a rule fails: fewest differences from the usual player's reference, then the smallest. Swings with one
 * difference are looked for over all it can be; with more, those that failed in the trials are taken back part by part. Never
 * leaves the rule's conditions: a swing counts only if the rule speaks of it. Undefined where none of `failures` fails.
 * Hypothesis-style shrinking as in MacIver & Donaldson, Test-Case Reduction via Test-Case Generation (ECOOP 2020): take parts out first,
 * then make those left smaller.
 */
export function shrink(
  trier: Trier,
  players: readonly TriedPlayer[],
  failures: readonly TriedSwing[],
): Shrunk | undefined {
  const reference = plainest(trier, players);
  const parts = partsOf(trier, players, reference);
  const fails = (tried: TriedSwing): boolean => trier.tryOut(tried).outcome === 'failed';
  if (fails(reference)) return { tried: reference, differs: 0 };
  let best: Shrunk | undefined;
  for (const part of parts) {
    const far = part.spread(reference).find(fails);
    const found = far && (part.nearer(far).find(fails) ?? far);
    if (found && (!best || sizeOf(parts, found) < sizeOf(parts, best.tried))) best = { tried: found, differs: 1 };
  }
  if (best) return best;
  for (const failure of failures) {
    if (!fails(failure)) continue;
    const tried = reduce(failure, parts, fails);
    const differs = parts.filter(({ isPlain }) => !isPlain(tried)).length;
    const isSimpler =
      !best || differs < best.differs || (differs === best.differs && sizeOf(parts, tried) < sizeOf(parts, best.tried));
    if (isSimpler) best = { tried, differs };
  }
  return best;
}

const sizeOf = (parts: readonly Part[], tried: TriedSwing): number =>
  Math.hypot(...parts.map((part) => part.sizeOf(tried)));

/** Takes part by part back to the reference as far as it still fails, until none goes any farther. */
function reduce(failure: TriedSwing, parts: readonly Part[], fails: (tried: TriedSwing) => boolean): TriedSwing {
  let tried = failure;
  let hasMoved = true;
  // First whole parts: what is out need not be made smaller.
  while (hasMoved) {
    hasMoved = false;
    for (const part of parts) {
      if (part.isPlain(tried)) continue;
      const [plain] = part.nearer(tried);
      if (!plain || !fails(plain)) continue;
      tried = plain;
      hasMoved = true;
    }
  }
  hasMoved = true;
  while (hasMoved) {
    hasMoved = false;
    for (const part of parts) {
      const nearer = part.nearer(tried).find(fails);
      if (!nearer) continue;
      tried = nearer;
      hasMoved = true;
    }
  }
  return tried;
}

/** The usual player's reference, or what the rule's conditions leave that is nearest to it. */
function plainest(trier: Trier, players: readonly TriedPlayer[]): TriedSwing {
  const still = toDials(STILL);
  return {
    player: players.toSorted((a, b) => strangeness(a) - strangeness(b))[0],
    top: {
      handDepth: nearestStep(topRange(trier.rule, 'handDepth'), 0),
      handHeight: nearestStep(topRange(trier.rule, 'handHeight'), 0),
      turn: nearestStep(topRange(trier.rule, 'turn'), 0),
      wristSet: nearestStep(topRange(trier.rule, 'wristSet'), 0),
    },
    dials: Float64Array.from(dialRanges(trier.rule), (range, i) => nearestStep(range, still[i])),
  };
}

function partsOf(trier: Trier, players: readonly TriedPlayer[], reference: TriedSwing): Part[] {
  const { rule } = trier;
  return [
    playerPart(players, reference),
    ...TOP_FIELDS.map((field) =>
      stepPart(
        topRange(rule, field),
        TOP_LIMITS[field] / 2,
        reference.top[field],
        ({ top }) => top[field],
        (tried, value) => ({ ...tried, top: { ...tried.top, [field]: value } }),
      ),
    ),
    ...dialRanges(rule).map((range, i) =>
      stepPart(
        range,
        HALF_RANGE[i],
        reference.dials[i],
        ({ dials }) => dials[i],
        (tried, value) => ({ ...tried, dials: tried.dials.with(i, value) }),
      ),
    ),
  ];
}

/** Height, club and lag in one: only some of their combinations have a reference swing. */
function playerPart(players: readonly TriedPlayer[], reference: TriedSwing): Part {
  const apart = (player: TriedPlayer): number => {
    const { player: usual } = reference;
    const lag = Math.abs((player.lag ?? 0) - (usual.lag ?? 0)) / HALF_RANGE[0];
    return Math.hypot(heightAway(player) - heightAway(usual), clubAway(player) - clubAway(usual), lag);
  };
  const ordered = players.toSorted(
    (a, b) => differencesOf(a, reference.player) - differencesOf(b, reference.player) || apart(a) - apart(b),
  );
  const rank = (player: TriedPlayer): number => ordered.indexOf(player);
  return {
    nearer: (tried) => ordered.slice(0, Math.max(0, rank(tried.player))).map((player) => ({ ...tried, player })),
    spread: (plain) => ordered.slice(1).map((player) => ({ ...plain, player })),
    isPlain: ({ player }) => player === reference.player,
    sizeOf: ({ player }) => apart(player),
  };
}

const differencesOf = (a: TriedPlayer, b: TriedPlayer): number =>
  Number(a.stature !== b.stature) + Number(a.club !== b.club) + Number(a.lag !== b.lag);

const SAME = 1e-9;
/** Values looked at to either side of the reference's. */
const SPREAD = 6;

/** A number on steps: tried from the reference's outward, on the side of its own value first. */
function stepPart(
  { first, last, step }: Steps,
  half: number,
  plain: number,
  valueOf: (tried: TriedSwing) => number,
  withValue: (tried: TriedSwing, value: number) => TriedSwing,
): Part {
  const from = Math.round(plain / step);
  return {
    nearer(tried) {
      const now = Math.round(valueOf(tried) / step);
      const side = Math.sign(now - from);
      return Array.from({ length: Math.abs(now - from) }, (_, k) => withValue(tried, (from + side * k) * step));
    },
    spread: (reference) =>
      [first - from, last - from]
        .flatMap((way) => Array.from({ length: SPREAD }, (_, k) => Math.round((way * (k + 1)) / SPREAD)))
        .filter((k) => k !== 0)
        .toSorted((a, b) => Math.abs(a) - Math.abs(b))
        .map((k) => withValue(reference, (from + k) * step)),
    isPlain: (tried) => Math.abs(valueOf(tried) - plain) < SAME,
    sizeOf: (tried) => (valueOf(tried) - plain) / half,
  };
}
