import { toDeg } from '../../math/angle';
import type { Movements } from '../../model/movements';
import type { CheckpointId, ReadingId } from '../../reading/checkpoints';
import type { Contributions, Part, Shares } from '../../solving/diagnosis/contributions';
import type { BallReading } from '../../solving/diagnosis/question';
import { formatNumber, formatSigned, roundTo, sayNumber } from '../numbers/numbers';
import { LENGTHS, SPEEDS, type Units } from '../numbers/units';

/** While the desk is doubled: said over numbers that are not. */
export const NUMBERS_NOT_EXAGGERATED = 'The numbers here show the swing as it is, not exaggerated.';

/** Where a reading of the ledger is read. */
export type LedgerPlace = CheckpointId | 'ball';
/** Everything that can be shared out: the readings at both checkpoints, the path they imply, and what reaches the ball. */
export type LedgerReadingId = ReadingId | 'impliedPath' | BallReading;

/** A reading the ledger shares out: its name, its measure, and what its two directions are called. */
interface LedgerWords {
  readonly title: string;
  readonly measure: 'length' | 'angle' | 'speed' | 'share';
  /** What is measured, as the note under the bars says it. */
  readonly note: string;
  readonly more: readonly [up: string, down: string];
  readonly tooMuch: readonly [up: string, down: string];
}

const words = (
  title: string,
  measure: LedgerWords['measure'],
  note: string,
  more: readonly [string, string],
  tooMuch: readonly [string, string] = more,
): LedgerWords => ({ title, measure, note, more, tooMuch });

const RIGHT_LEFT = ['more in-to-out', 'more out-to-in'] as const;
const OPEN_CLOSED = ['more open', 'more closed'] as const;

/** Words of every reading. The first of two ways is the one in which the number grows. */
export const LEDGER_WORDS: Readonly<Record<LedgerReadingId, LedgerWords>> = {
  bicepGap: words(
    'Shaft line above the bicep',
    'length',
    'Shaft line above the trail bicep',
    ['steeper', 'shallower'],
    ['too steep', 'too shallow'],
  ),
  headDepth: words(
    'Head in front of the hands',
    'length',
    'Head in front of the hands',
    ['farther in front', 'farther behind'],
    ['too far in front', 'too far behind'],
  ),
  shaftPlane: words('Shaft plane', 'angle', 'Plane of the shaft seen down the line', ['steeper', 'flatter']),
  shaftPitch: words('Shaft off level', 'angle', 'Shaft against the ground, head above hands', [
    'head higher',
    'head lower',
  ]),
  bicepCrossing: words(
    'Where it crosses the upper arm',
    'share',
    'Crossing of the upper arm, shoulder 0, elbow 100 %',
    ['nearer the elbow', 'nearer the shoulder'],
  ),
  shaftAim: words('Shaft aim', 'angle', 'Aim of the shaft, in-to-out', RIGHT_LEFT),
  planeDirection: words('Direction of the plane', 'angle', 'Direction of the club\u2019s plane, in-to-out', RIGHT_LEFT),
  planeTilt: words('Tilt of the plane', 'angle', 'Tilt of the club\u2019s plane to the ground', ['steeper', 'flatter']),
  impliedPath: words('Path this implies', 'angle', 'Path at the ball that this implies, in-to-out', RIGHT_LEFT),
  gripEndLine: words('Grip-end line', 'length', 'Where the grip end points, beyond the ball', [
    'farther beyond the ball',
    'farther inside',
  ]),
  faceToVertical: words('Face', 'angle', 'Face turned down from vertical', ['more closed', 'more open']),
  armToShaft: words('Lead arm to shaft', 'angle', 'Angle between lead arm and shaft', ['wider', 'narrower']),
  thoraxTurn: words('Chest turned open', 'angle', 'Turn of the chest toward the target', OPEN_CLOSED),
  pelvisTurn: words('Hips turned open', 'angle', 'Turn of the hips toward the target', OPEN_CLOSED),
  handHeight: words('Hand height', 'length', 'Hands above the ground', ['higher', 'lower']),
  handDepth: words('Hands from the body', 'length', 'Hands out from the ankles', ['farther out', 'farther in']),
  reachRatio: words('Reach of the trail arm', 'share', 'Trail arm, share of its full reach', ['longer', 'shorter']),
  reachShortfall: words('Trail arm short of the grip', 'length', 'Trail arm short of the grip', [
    'shorter',
    'less short',
  ]),
  path: words('Path', 'angle', 'Path of the head, in-to-out', RIGHT_LEFT),
  face: words('Face', 'angle', 'Face against the target line, open', OPEN_CLOSED),
  faceToPath: words('Face to path', 'angle', 'Face against the path, open', OPEN_CLOSED),
  attack: words('Attack', 'angle', 'Attack, up', ['more up', 'more down']),
  dynamicLoft: words('Dynamic loft', 'angle', 'Loft the ball meets', ['more loft', 'less loft']),
  shaftLean: words('Shaft lean', 'angle', 'Shaft leaning forward', ['more forward', 'less forward']),
  headSpeed: words('Head speed', 'speed', 'Speed of the head', ['faster', 'slower']),
  lowPoint: words('Low point', 'length', 'Lowest point of the head, ahead of the ball', [
    'farther ahead',
    'farther back',
  ]),
};

const PLACES: Readonly<Record<LedgerPlace, string>> = {
  leadArmParallel: 'at lead arm parallel',
  shaftParallel: 'at shaft parallel',
  ball: 'at the ball',
};
/** "Shaft line above the trail bicep, at lead arm parallel." */
export const sayLedgerNote = (at: LedgerPlace, id: LedgerReadingId): string =>
  `${LEDGER_WORDS[id].note}, ${PLACES[at]}.`;

/** One measure in the unit on screen: how a model value gets there, and what stands behind the number. */
export interface Measure {
  readonly toShown: (value: number) => number;
  readonly unit: string;
  readonly spoken: string;
  /** Decimals of the bars; a sentence takes fewer where the total is large. */
  readonly decimals: number;
}

/** Units of the ledger; a speed is asked for by few. */
export type LedgerUnits = Pick<Units, 'length'> & Partial<Pick<Units, 'speed'>>;

/** How a reading of the ledger is shown: conversion, unit, decimals. */
export function measureOf(id: LedgerReadingId, units: LedgerUnits): Measure {
  switch (LEDGER_WORDS[id].measure) {
    case 'angle':
      return { toShown: toDeg, unit: '°', spoken: 'degrees', decimals: 1 };
    case 'share':
      return { toShown: (share) => share * 100, unit: ' %', spoken: 'percent', decimals: 1 };
    case 'speed': {
      const symbol = units.speed ?? 'm/s';
      const { metresPerSecond, spoken } = SPEEDS[symbol];
      return { toShown: (value) => value / metresPerSecond, unit: ` ${symbol}`, spoken, decimals: 1 };
    }
    case 'length': {
      const { metres, symbol, spoken } = LENGTHS[units.length];
      return { toShown: (value) => value / metres, unit: ` ${symbol}`, spoken: spoken[1], decimals: 1 };
    }
  }
}

/**
 * Rounds shares so that they add up to a total that is rounded already: each takes its whole part, the rest goes to the largest
 * remainders. A share of exactly nothing stays nothing. Source: the method of largest remainders (Hamilton).
 */
export function apportion(shares: readonly number[], total: number, decimals: number): number[] {
  const grain = 10 ** -decimals;
  const exact = shares.map((share) => share / grain);
  const given = exact.map((share) => Math.floor(share));
  const open = shares.map((_, i) => i).filter((i) => shares[i] !== 0);
  let rest = Math.round(total / grain) - given.reduce((sum, each) => sum + each, 0);
  while (rest !== 0 && open.length > 0) {
    const sign = Math.sign(rest);
    const next = open.reduce((a, b) => (sign * (exact[b] - given[b]) > sign * (exact[a] - given[a]) ? b : a));
    given[next] += sign;
    rest -= sign;
  }
  return given.map((each) => roundTo(each * grain, decimals));
}

/** What two swings differ by, for the words of a cause. */
export interface Between {
  readonly from: Movements;
  readonly to: Movements;
  /** The first is the reference: then a wrist is cupped, not merely more cupped. */
  readonly isFromReference: boolean;
}

/** The cause of a share: "the cupped wrist", "turning early", "too little side bend". */
export function sayCause(part: Part, { from, to, isFromReference: plain }: Between): string {
  if (part === 'setUp') return 'the set-up';
  if (part === 'leadWrist') {
    const cupped = to.leadWristFlexion < from.leadWristFlexion;
    return plain ? `the ${cupped ? 'cupped' : 'bowed'} wrist` : `${cupped ? 'cupping' : 'bowing'} the wrist more`;
  }
  if (part === 'sideTilt') {
    if (to.trailSideBend === from.trailSideBend) return 'the hip slide';
    const less = to.trailSideBend < from.trailSideBend;
    return plain ? `too ${less ? 'little' : 'much'} side bend` : `${less ? 'less' : 'more'} side bend`;
  }
  const rate = Math.sign(to.rotationRate - from.rotationRate);
  const delay = Math.sign(to.rotationDelay - from.rotationDelay);
  const when = delay === 0 ? '' : delay < 0 ? (plain ? 'early' : 'earlier') : plain ? 'late' : 'later';
  const speed = rate === 0 ? '' : rate > 0 ? (plain ? 'too much' : 'more') : plain ? 'too little' : 'less';
  const how = [when, speed].filter(Boolean).join(' and ');
  return how === '' ? 'the pelvis turn' : `turning ${how}`;
}

/** From this many units on a sentence speaks in whole ones. */
const WHOLE_FROM = 3;

/** What the sentence of the ledger is made from. */
export interface LedgerOf extends Between {
  readonly reading: LedgerReadingId;
  readonly shared: Contributions;
  readonly parts: readonly Part[];
  readonly units: LedgerUnits;
  /** The reading of the second swing lies outside its band, on the side to which it moved. */
  readonly isTooFar: boolean;
}

const SAME = 'Both swings read the same here: there is nothing to share out.';

/**
 * "Of 9 cm too steep: 5 from the cupped wrist, 3 from turning early, 1 from too little side bend." The largest share first; the numbers
 * add up as they are printed. What works the other way is taken off.
 */
export function sayLedger(of: LedgerOf): { readonly text: string; readonly spoken: string } {
  const { reading, shared, parts, units, isTooFar } = of;
  const { toShown, unit, spoken } = measureOf(reading, units);
  const difference = toShown(shared.to) - toShown(shared.from);
  const decimals = Math.abs(difference) >= WHOLE_FROM ? 0 : 1;
  const total = roundTo(difference, decimals);
  const shares = apportion(
    parts.map((part) => toShown(shared.parts[part])),
    total,
    decimals,
  );
  const { more, tooMuch } = LEDGER_WORDS[reading];
  const sign = total < 0 ? -1 : 1;
  const rows = parts
    .map((part, i) => ({ part, amount: shares[i] * sign, exact: shared.parts[part] * sign }))
    .filter(({ amount }) => amount !== 0)
    .toSorted((a, b) => b.exact - a.exact);
  const number = (value: number): string => formatNumber(Math.abs(value), decimals);
  if (rows.length === 0) return { text: SAME, spoken: SAME };
  const causes = rows.map(({ part, amount }) => {
    const cause = sayCause(part, of);
    return amount > 0 ? `${number(amount)} from ${cause}` : `less ${number(amount)} from ${cause}`;
  });
  if (total === 0) {
    const text = `They cancel out: ${causes.join(', ')}.`;
    return { text, spoken: text };
  }
  const way = (isTooFar ? tooMuch : more)[sign > 0 ? 0 : 1];
  const say = (of_: string): string => `Of ${number(total)}${of_} ${way}: ${causes.join(', ')}.`;
  if (rows.length === 1 && rows[0].amount === Math.abs(total)) {
    const all = (of_: string): string => `All ${number(total)}${of_} ${way} come from ${sayCause(rows[0].part, of)}.`;
    return { text: all(unit), spoken: all(` ${spoken}`) };
  }
  return { text: say(unit), spoken: say(` ${spoken}`) };
}

/** The numbers beside the bars, in the unit on screen. Shares add up from the first reading to the second as printed. */
export interface LedgerNumbers {
  readonly from: string;
  readonly to: string;
  readonly parts: Readonly<
    Partial<Record<Part, { readonly share: string; readonly alone: string; readonly last: string }>>
  >;
  /** "Together they add 0.5 cm more than each alone." */
  readonly together: string;
}

/** The numbers of a ledger as printed: rounded so that the parts add up to the printed change. */
export function numberLedger({ reading, shared, parts, units }: LedgerOf): LedgerNumbers {
  const { toShown, unit, decimals } = measureOf(reading, units);
  const round = (value: number): number => roundTo(toShown(value), decimals);
  const [from, to] = [round(shared.from), round(shared.to)];
  const shares = apportion(
    parts.map((part) => toShown(shared.parts[part])),
    to - from,
    decimals,
  );
  const signed = (values: Shares, part: Part): string => formatSigned(toShown(values[part]), decimals);
  const apart = parts.reduce((sum, part) => sum + toShown(shared.alone[part]), 0);
  const extra = roundTo(toShown(shared.to) - toShown(shared.from) - apart, decimals);
  return {
    from: `${formatNumber(from, decimals)}${unit}`,
    to: `${formatNumber(to, decimals)}${unit}`,
    parts: Object.fromEntries(
      parts.map((part, i) => [
        part,
        {
          share: formatSigned(shares[i], decimals),
          alone: signed(shared.alone, part),
          last: signed(shared.last, part),
        },
      ]),
    ),
    together: sayTogether(extra, unit, decimals, parts.length),
  };
}

function sayTogether(extra: number, unit: string, decimals: number, count: number): string {
  if (count < 2) return '';
  if (extra === 0) return 'Together they do what each does alone.';
  const size = `${formatNumber(Math.abs(extra), decimals)}${unit}`;
  return `Together they make ${size} ${extra > 0 ? 'more' : 'less'} than each alone, added up.`;
}

/** A bar for a screen reader: "Lead wrist, cupped 16 degrees: plus 1.9 centimetres. Alone plus 1.6, last plus 2.9." */
export const sayBar = (
  name: string,
  phrase: string,
  { share, alone, last }: { readonly share: string; readonly alone: string; readonly last: string },
  { spoken }: Measure,
): string => `${name}, ${phrase}: ${sayNumber(share)} ${spoken}. Alone ${sayNumber(alone)}, last ${sayNumber(last)}.`;

export const MISSING_MIXTURE = 'A mixture of the two swings never gets this far. Choose swings that lie closer.';

export const NO_SUCH_NUMBER = 'A mixture of the two swings has no such number. Choose another reading.';

export const SHARES_ADD_UP = 'Shares add up exactly.';
