import type { Movements } from '../../model/movements';
import { withMovements, type Swing } from '../../reading/swing';
import type { Answer, Question } from './question';

/** What a difference is shared out among: the three movements, and everything else that two swings may differ in. */
export const PARTS = ['leadWrist', 'rotation', 'sideTilt', 'setUp'] as const;
export type Part = (typeof PARTS)[number];
export type Shares = Readonly<Record<Part, number>>;

/** Who contributed how much, in the unit of the question. */
export interface Contributions {
  readonly from: number;
  readonly to: number;
  /** Shapley values: they sum to `to - from` and do not depend on any order. A part that is equal in both swings has exactly 0. */
  readonly parts: Shares;
  /** The change when only this part goes from one swing to the other. */
  readonly alone: Shares;
  /** The change when this part goes last, all others having gone before. */
  readonly last: Shares;
  readonly evaluations: number;
}

/** A mixture of the two swings in which the question has no answer. */
export interface NoContributions {
  readonly missing: Extract<Answer, { missing: unknown }>['missing'];
  /** The parts that had already gone from the first swing to the second. */
  readonly gone: readonly Part[];
  readonly evaluations: number;
}

/** Weight of a coalition of this many others, |S|! (n - |S| - 1)! / n!, for four parts. */
const WEIGHT = [1 / 4, 1 / 12, 1 / 12, 1 / 4];
const ALL = (1 << PARTS.length) - 1;

/**
 * Shares the difference between two swings out among their parts, for any question. Exact: every mixture of the two swings is
 * asked once. Parts that do not differ are left out of the mixtures, which changes no share.
 * Source: L. S. Shapley, A Value for n-person Games, Contributions to the Theory of Games II (1953).
 */
export function solveContributions(from: Swing, to: Swing, ask: Question): Contributions | NoContributions {
  const differs = differingParts(from, to);
  const value = new Float64Array(ALL + 1);
  let evaluations = 0;
  for (let gone = 0; gone <= ALL; gone++) {
    const known = gone & differs;
    if (known !== gone) {
      value[gone] = value[known];
      continue;
    }
    const answer = ask(mix(from, to, gone));
    evaluations++;
    if ('missing' in answer) {
      return { missing: answer.missing, gone: PARTS.filter((_, i) => gone & (1 << i)), evaluations };
    }
    value[gone] = answer.value;
  }
  return {
    from: value[0],
    to: value[ALL],
    parts: eachPart((bit) => {
      let sum = 0;
      for (let others = 0; others <= ALL; others++) {
        if (!(others & bit)) sum += WEIGHT[countBits(others)] * (value[others | bit] - value[others]);
      }
      return sum;
    }),
    alone: eachPart((bit) => value[bit] - value[0]),
    last: eachPart((bit) => value[ALL] - value[ALL & ~bit]),
    evaluations,
  };
}

/**
 * The swing `from` with some parts already gone over to `to`: what a bar of the ledger plays. No parts: `from`. All parts: `to`.
 */
export const mixSwings = (from: Swing, to: Swing, gone: readonly Part[]): Swing =>
  mix(
    from,
    to,
    PARTS.reduce((set, part, i) => (gone.includes(part) ? set | (1 << i) : set), 0),
  );

/** The swing in which the parts of the bit set `gone` are those of `to` and the others those of `from`. */
function mix(from: Swing, to: Swing, gone: number): Swing {
  const wrist = (gone & 1 ? to : from).movements;
  const rotation = (gone & 2 ? to : from).movements;
  const tilt = (gone & 4 ? to : from).movements;
  return withMovements(gone & 8 ? to : from, {
    leadWristFlexion: wrist.leadWristFlexion,
    rotationRate: rotation.rotationRate,
    rotationDelay: rotation.rotationDelay,
    ...pelvisOf(rotation),
    trailSideBend: tilt.trailSideBend,
    pelvisShift: tilt.pelvisShift,
  });
}

const pelvisOf = ({ pelvisRate, pelvisDelay }: Movements): Pick<Movements, 'pelvisRate' | 'pelvisDelay'> => ({
  ...(pelvisRate !== undefined && { pelvisRate }),
  ...(pelvisDelay !== undefined && { pelvisDelay }),
});

/** Bit set of the parts in which two swings differ; a pelvis that is linked to the thorax counts as turning like it. */
function differingParts(from: Swing, to: Swing): number {
  const a = from.movements;
  const b = to.movements;
  const wrist = a.leadWristFlexion !== b.leadWristFlexion;
  const rotation =
    a.rotationRate !== b.rotationRate ||
    a.rotationDelay !== b.rotationDelay ||
    (a.pelvisRate ?? a.rotationRate) !== (b.pelvisRate ?? b.rotationRate) ||
    (a.pelvisDelay ?? a.rotationDelay) !== (b.pelvisDelay ?? b.rotationDelay);
  const tilt = a.trailSideBend !== b.trailSideBend || a.pelvisShift !== b.pelvisShift;
  const setUp = from.rig !== to.rig || from.curves !== to.curves || from.tempo !== to.tempo;
  return (wrist ? 1 : 0) | (rotation ? 2 : 0) | (tilt ? 4 : 0) | (setUp ? 8 : 0);
}

const countBits = (set: number): number => PARTS.filter((_, i) => set & (1 << i)).length;

function eachPart(share: (bit: number) => number): Shares {
  return Object.fromEntries(PARTS.map((part, i) => [part, share(1 << i)])) as unknown as Shares;
}
