import { CHECKPOINTS } from '../../reading/checkpointTable';
import { rad } from '../../math/angle';
import { isReached, type Checkpoint, type CheckpointId, type Reached } from '../../reading/checkpoints';
import { judgedReading, verdictAt, type Bands, type Verdict } from '../../reading/verdicts';
import { showJudged } from '../numbers/judged';
import { showLength, type Shown } from '../numbers/numbers';
import { COMPUTED, MEASURED, RULE_OF_THUMB, type Origin, type Units } from '../numbers/units';

/** Names of the checkpoints: title of the plate, its code in the trade's count of positions, and inside a sentence. */
export const CHECKPOINT_NAMES: {
  readonly [id in CheckpointId]: Pick<(typeof CHECKPOINTS)[id], 'title' | 'position' | 'inSentence'>;
} = CHECKPOINTS;

/** The word under a plate. The same three words at both checkpoints, so that they are learned once. */
export const PLATE_WORDS: Readonly<Record<Verdict, string>> = {
  steep: 'Steep',
  onPlane: 'On plane',
  shallow: 'Over-shallow',
  missing: 'Not reached',
};

/** What is said about one checkpoint. */
export interface CheckpointWords {
  readonly verdict: Verdict;
  /** "Steep" */
  readonly word: string;
  /** "7", without a sign: the side is in the words. Empty when the checkpoint is not reached. */
  readonly number: string;
  readonly unit: string;
  /** The number shown, with its sign, in the shown unit. */
  readonly value: number;
  /** "7 cm above the trail bicep" */
  readonly why: string;
  /** "above the trail bicep": what follows word and number. */
  readonly where: string;
  /** "7 cm above": where there is little room. */
  readonly shortWhy: string;
  /** One whole sentence, at most 15 words. */
  readonly sentence: string;
  /** The sentence as a screen reader should say it. */
  readonly spoken: string;
  /** "Trail arm 4 cm short of the grip here.", where it is. */
  readonly reach?: string;
  readonly source: Origin;
  /** The verdict hangs on a band, and a band is common practice. */
  readonly verdictSource: Origin;
}

/** Beyond this, seen down the line, a shaft is upright enough for "in front of" rather than "above" (our choice), rad. */
const UPRIGHT = rad(80);
/** A trail arm short by less than this is within what a shoulder gives (m, our choice). */
const SHORT = 0.005;

const MISSING = {
  leadArmParallel: {
    'never-parallel': 'The lead arm never comes down to the reading angle in this swing.',
    'not-finite': 'The model finds no lead arm parallel for this swing. Undo the last change.',
  },
  shaftParallel: {
    'never-parallel': 'The shaft never comes down to parallel after lead arm parallel here.',
    'not-finite': 'The model finds no shaft parallel for this swing. Undo the last change.',
  },
} as const;

/** Everything said about a checkpoint, in words and numbers that agree with the verdict. */
export function sayCheckpoint(
  id: CheckpointId,
  checkpoint: Checkpoint,
  bands: Bands,
  units: Pick<Units, 'length'>,
): CheckpointWords {
  const verdict = verdictAt(id, checkpoint, bands);
  const word = PLATE_WORDS[verdict];
  const common = { verdict, word, source: COMPUTED, verdictSource: RULE_OF_THUMB } as const;
  const reading = isReached(checkpoint) ? judgedReading(id, checkpoint) : NaN;
  if (!isReached(checkpoint) || !Number.isFinite(reading)) {
    return sayMissing(PLATE_WORDS.missing, MISSING[id][isReached(checkpoint) ? 'not-finite' : checkpoint.missing]);
  }
  const shown = showJudged(reading, bands[id], units);
  const side = id === 'leadArmParallel' ? sideOfBicep(shown, checkpoint) : sideOfHands(shown);
  const at = CHECKPOINT_NAMES[id].inSentence;
  const reach = sayReach(checkpoint, units);
  return {
    ...common,
    number: shown.number,
    unit: shown.unit,
    value: shown.value,
    why: side.why(shown.inSentence),
    where: side.where,
    shortWhy: side.shortWhy(shown.inSentence),
    sentence: `${word}: ${side.clause(shown.inSentence)} at ${at}.`,
    spoken: `${word}: ${side.clause(shown.spoken)} at ${at}.`,
    ...(reach === undefined ? {} : { reach }),
  };
}

/** Where there is no verdict: a word in its place, and a sentence why. */
export const sayMissing = (word: string, sentence: string): CheckpointWords => ({
  verdict: 'missing',
  word,
  number: '',
  unit: '',
  value: NaN,
  why: sentence,
  where: '',
  shortWhy: word.toLowerCase(),
  sentence,
  spoken: sentence,
  source: COMPUTED,
  verdictSource: RULE_OF_THUMB,
});

/** Ways to say one distance; each takes the number with its unit. */
interface Side {
  readonly where: string;
  readonly why: (length: string) => string;
  readonly shortWhy: (length: string) => string;
  readonly clause: (length: string) => string;
}

function sideOfBicep({ value }: Shown, { readings }: Reached): Side {
  if (value === 0) {
    const why = (): string => 'line through the trail bicep';
    return {
      why,
      where: 'through the trail bicep',
      shortWhy: () => 'through the bicep',
      clause: () => 'shaft line through the trail bicep',
    };
  }
  const upright = readings.shaftPlane > UPRIGHT;
  const side = value > 0 ? (upright ? 'in front of' : 'above') : upright ? 'behind' : 'below';
  const short = side === 'in front of' ? 'in front' : side;
  return {
    why: (length) => `${length} ${side} the trail bicep`,
    where: `${side} the trail bicep`,
    shortWhy: (length) => `${length} ${short}`,
    // "In front of" is two words longer than "above"; the sentence stays within 15.
    clause: (length) => `${upright ? 'line' : 'shaft line'} ${length} ${side} the trail bicep`,
  };
}

function sideOfHands({ value }: Shown): Side {
  if (value === 0) {
    const why = (): string => 'head covers the hands';
    return { why, where: 'over the hands', shortWhy: () => 'covers the hands', clause: () => 'head covers the hands' };
  }
  const side = value > 0 ? 'in front of' : 'behind';
  return {
    why: (length) => `${length} ${side} the hands`,
    where: `${side} the hands`,
    shortWhy: (length) => `${length} ${value > 0 ? 'in front' : 'behind'}`,
    clause: (length) => `head ${length} ${side} the hands`,
  };
}

/** "Trail arm 4 cm short of the grip here.": said wherever the trail arm does not reach, never hidden. */
function sayReach({ readings }: Reached, units: Pick<Units, 'length'>): string | undefined {
  const { reachShortfall } = readings;
  if (!(reachShortfall >= SHORT)) return undefined;
  return `Trail arm ${showLength(reachShortfall, units).inSentence} short of the grip here.`;
}

/** "on plane from 10 cm behind to 2 cm in front": what the pale strip on a plate shows. A rule of thumb. */
export function sayBand(id: CheckpointId, bands: Bands, units: Pick<Units, 'length'>): string {
  const words = id === 'leadArmParallel' ? (['below', 'above'] as const) : (['behind', 'in front'] as const);
  const end = (edge: number): string => {
    const typed = showLength(Math.abs(edge), units, 1);
    const length = typed.inSentence.replace(/\.0 /, ' ');
    return edge === 0 ? 'level' : `${length} ${edge < 0 ? words[0] : words[1]}`;
  };
  return `On plane from ${end(bands[id].low)} to ${end(bands[id].high)} (${RULE_OF_THUMB}).`;
}

/** What the coach says they saw in the real player. */
export interface SightWords {
  /** "You saw 9 cm above the trail bicep." */
  readonly sentence: string;
  /** "seen 9 cm above": one line on a plate, so that nothing moves while it is dragged. */
  readonly short: string;
  /** "9", and "above the trail bicep". */
  readonly number: string;
  readonly where: string;
  readonly spoken: string;
  readonly source: Origin;
}

/** A reading the coach set on a plate by hand. `metres` as the judged reading of that checkpoint, m, to the millimetre. */
export function saySight(id: CheckpointId, metres: number, units: Pick<Units, 'length'>): SightWords {
  const shown = showLength(Math.abs(metres), units, 1);
  const side =
    id === 'leadArmParallel' ? ['above', 'below', 'the trail bicep'] : ['in front of', 'behind', 'the hands'];
  const say = (length: string): string => `You saw ${length} ${metres < 0 ? side[1] : side[0]} ${side[2]}.`;
  if (shown.value === 0) {
    const sentence = `You saw the line on ${side[2]}.`;
    return {
      sentence,
      short: `seen on ${side[2]}`,
      number: '0',
      where: `on ${side[2]}`,
      spoken: sentence,
      source: MEASURED,
    };
  }
  const way = (metres < 0 ? side[1] : side[0]).replace(' of', '');
  const short = `seen ${shown.inSentence} ${way}`;
  const where = `${metres < 0 ? side[1] : side[0]} ${side[2]}`;
  const { number } = shown;
  return { sentence: say(shown.inSentence), short, number, where, spoken: say(shown.spoken), source: MEASURED };
}
