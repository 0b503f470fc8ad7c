import { dialOf, type MovementId, type Movements } from '../../model/movements';
import { capital } from '../numbers/capital';
import { formatTyped, MINUS, NO_NUMBER, NO_NUMBER_SPOKEN, showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** Fixed words of a dial: name, the anatomist's word, and what stands at the two ends of its track. */
export const DIAL_NAMES = {
  leadWristFlexion: { label: 'Lead wrist', bracket: 'flexion', low: 'cupped', high: 'bowed' },
  rotationRate: { label: 'Body turn', bracket: 'how far turned', low: 'less', high: 'more' },
  rotationDelay: { label: 'Turn starts', bracket: 'pelvis and chest', low: 'earlier', high: 'later' },
  trailSideBend: { label: 'Side bend', bracket: 'rib cage', low: 'toward target', high: 'trail side' },
  pelvisShift: { label: 'Hip slide', bracket: 'along the target line', low: 'back', high: 'to target' },
} as const satisfies Record<MovementId, unknown>;

/** What is said about a dial at one value. */
export interface DialWords {
  readonly id: MovementId;
  readonly label: string;
  /** The value field: "Cupped 16°", "108 %", "12 ms early", "−4°", "3 cm to target". */
  readonly short: string;
  /** Inside a sentence, list or ledger: "cupped 16°", "8 % more turn", "4° toward the target". */
  readonly phrase: string;
  /** Coach's words first, anatomy in brackets: "Cupped 16° (lead-wrist extension)". */
  readonly full: string;
  /** In brackets after the label: "extension". Follows the sign of the wrist. */
  readonly bracket: string;
  /** For `aria-valuetext`: words and whole units, no symbols. */
  readonly spoken: string;
}

interface Said {
  readonly short: string;
  readonly phrase: string;
  readonly spoken: string;
  readonly bracket?: string;
}

const REFERENCE = 'as reference';
/** Smaller than anything that can be typed, in the units of the edge. */
const NOTHING = 1e-9;

function said(id: MovementId, edge: number, units: Pick<Units, 'length'>): Said {
  const size = Math.abs(edge);
  const amount = formatTyped(size);
  const still = size < NOTHING;
  const degrees = amount === '1' ? 'degree' : 'degrees';
  switch (id) {
    case 'leadWristFlexion': {
      if (still) return { short: 'As reference', phrase: REFERENCE, spoken: REFERENCE };
      const way = edge > 0 ? 'bowed' : 'cupped';
      const bracket = edge > 0 ? 'flexion' : 'extension';
      const short = `${edge > 0 ? 'Bowed' : 'Cupped'} ${amount}°`;
      return {
        short,
        phrase: `${way} ${amount}°`,
        spoken: `${way} ${amount} ${degrees}, lead-wrist ${bracket}`,
        bracket,
      };
    }
    case 'rotationRate': {
      const percent = formatTyped(edge * 100);
      const change = formatTyped(Math.abs(edge - 1) * 100);
      const way = edge > 1 ? 'more' : 'less';
      const phrase = change === '0' ? REFERENCE : `${change} % ${way} turn`;
      const spoken = change === '0' ? `100 percent, ${REFERENCE}` : `${percent} percent, ${change} percent ${way} turn`;
      return { short: `${percent} %`, phrase, spoken };
    }
    case 'rotationDelay': {
      if (still) return { short: '0 ms', phrase: REFERENCE, spoken: REFERENCE };
      const way = edge > 0 ? 'late' : 'early';
      const spoken = `${amount} ${amount === '1' ? 'millisecond' : 'milliseconds'} ${way}`;
      return { short: `${amount} ms ${way}`, phrase: `${amount} ms ${way}`, spoken };
    }
    case 'trailSideBend': {
      if (still) return { short: '0°', phrase: REFERENCE, spoken: REFERENCE };
      const way = edge > 0 ? 'to the trail side' : 'toward the target';
      const short = `${edge > 0 ? '+' : MINUS}${amount}°`;
      return { short, phrase: `${amount}° ${way}`, spoken: `${amount} ${degrees} ${way}` };
    }
    case 'pelvisShift': {
      const { text, inSentence, spoken } = shownShift(size, units);
      if (still) return { short: text, phrase: REFERENCE, spoken: REFERENCE };
      const way = edge > 0 ? 'to target' : 'back';
      const spokenWay = edge > 0 ? 'toward the target' : 'back from the target';
      return { short: `${text} ${way}`, phrase: `${inSentence} ${way}`, spoken: `${spoken} ${spokenWay}` };
    }
  }
}

/** A typed shift keeps its decimals in cm; in inches a tenth is the grain. */
function shownShift(cm: number, units: Pick<Units, 'length'>): { text: string; inSentence: string; spoken: string } {
  if (units.length === 'in') return showLength(cm / 100, units);
  const text = `${formatTyped(cm)} cm`;
  return { text, inSentence: text, spoken: `${formatTyped(cm)} ${cm === 1 ? 'centimetre' : 'centimetres'}` };
}

const CENTIMETRES = { length: 'cm' } as const;

/**
 * A dial in words. `edgeValue` in the units of the edge (deg, factor, ms, deg, cm): the very number that is stored and slid.
 */
export function sayDial(id: MovementId, edgeValue: number, units: Pick<Units, 'length'> = CENTIMETRES): DialWords {
  const { label, bracket: usualBracket } = DIAL_NAMES[id];
  if (!Number.isFinite(edgeValue)) {
    return {
      id,
      label,
      short: NO_NUMBER,
      phrase: NO_NUMBER_SPOKEN,
      full: label,
      bracket: usualBracket,
      spoken: NO_NUMBER_SPOKEN,
    };
  }
  const { short, phrase, spoken, bracket = usualBracket } = said(id, edgeValue, units);
  const anatomy = id === 'leadWristFlexion' ? `lead-wrist ${bracket}` : bracket;
  return { id, label, short, phrase, full: `${capital(phrase)} (${anatomy})`, bracket, spoken };
}

/** The same from the model's units (rad, factor, s, rad, m), for what the solvers hand back. */
export function sayMovement(id: MovementId, movements: Movements, units?: Pick<Units, 'length'>): DialWords {
  const edge = movements[id] / dialOf(id).edgeUnit;
  // Degrees that went through radians come back as 15.999999999999998.
  return sayDial(id, Math.round(edge * 1e9) / 1e9, units);
}

const UNDO_WORDS = {
  leadWristFlexion: ['Wrist', '°'],
  rotationRate: ['Body turn', ' %'],
  rotationDelay: ['Turn starts', ' ms'],
  trailSideBend: ['Side bend', '°'],
  pelvisShift: ['Hip slide', ' cm'],
} as const satisfies Record<MovementId, readonly [string, string]>;

/** Label of an undo step: "Wrist −8°", "Body turn 108 %". `edgeValue` in the units of the edge. */
export function sayUndo(id: MovementId, edgeValue: number): string {
  const [word, unit] = UNDO_WORDS[id];
  return `${word} ${formatTyped(id === 'rotationRate' ? edgeValue * 100 : edgeValue)}${unit}`;
}

/** "Past the usual range of 30 degrees. Take care." or nothing. A rule of thumb. `edgeValue` in the units of the edge. */
export function sayPastUsual(
  id: MovementId,
  edgeValue: number,
  units: Pick<Units, 'length'> = CENTIMETRES,
): string | undefined {
  const { usualMin, usualMax, edgeUnit } = dialOf(id);
  const low = Math.round((usualMin / edgeUnit) * 1e6) / 1e6;
  const high = Math.round((usualMax / edgeUnit) * 1e6) / 1e6;
  if (!(edgeValue < low || edgeValue > high)) return undefined;
  const { phrase } = sayDial(id, edgeValue < low ? low : high, units);
  return `Past the usual range, ${phrase} (rule of thumb). Do not force it.`;
}
