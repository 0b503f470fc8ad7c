import type { Rad } from '../../math/angle';
import type { Delivery } from '../../reading/delivery/delivery';
import { showAngle, showLength, showSpeed } from '../numbers/numbers';
import { COMPUTED, type Origin, type Units } from '../numbers/units';

/** One reading of the delivery in words. */
export interface DeliveryWords {
  /** "Path" */
  readonly label: string;
  /** "4° in-to-out" */
  readonly text: string;
  /** "Path 4 degrees in-to-out" */
  readonly spoken: string;
  readonly source: Origin;
}

function sayTurn(label: string, angle: Rad, positive: string, negative: string, zero: string): DeliveryWords {
  const shown = showAngle(Math.abs(angle));
  if (!Number.isFinite(shown.value))
    return { label, text: shown.text, spoken: `${label}: ${shown.spoken}`, source: COMPUTED };
  const way = shown.value === 0 ? zero : angle > 0 ? positive : negative;
  return { label, text: `${shown.text} ${way}`, spoken: `${label} ${shown.spoken} ${way}`, source: COMPUTED };
}

/** Path of the head at the ball, rad. Positive: in-to-out. */
export const sayPath = (path: Rad): DeliveryWords => sayTurn('Path', path, 'in-to-out', 'out-to-in', 'straight');

/** Face against the target line, rad. Positive: open. */
export const sayFace = (face: Rad): DeliveryWords => sayTurn('Face', face, 'open', 'closed', 'square');

/**
 * Several values of one reading: the one that is drawn and, where they are not the same to the reader, the two ends of its band, the
 * lower first. "2° open, 1° closed to 4° open"
 */
export function withBand(drawn: DeliveryWords, low: DeliveryWords, high: DeliveryWords): DeliveryWords {
  if (low.text === high.text) return drawn;
  const bare = ({ label, spoken }: DeliveryWords): string => spoken.slice(label.length + 1);
  return {
    ...drawn,
    text: `${drawn.text}, ${low.text} to ${high.text}`,
    spoken: `${drawn.spoken}, ${bare(low)} to ${bare(high)}`,
  };
}

/** Face as drawn, and its band from returned to left as it comes. "Face 2 degrees open, 0 degrees square to 4 degrees open" */
export function sayFaceBand({ face, faceLeft, faceReturned }: Record<'face' | 'faceLeft' | 'faceReturned', Rad>) {
  const [low, high] = [Math.min(faceLeft, faceReturned), Math.max(faceLeft, faceReturned)];
  return withBand(sayFace(face), sayFace(low), sayFace(high));
}

/** Under a picture of the strike. "Path 3° in-to-out. Face 2° open, 1° closed to 4° open." */
export const sayPathAndFace = (delivery: Pick<Delivery, 'path' | 'face' | 'faceLeft' | 'faceReturned'>): string => {
  const [path, face] = [sayPath(delivery.path), sayFaceBand(delivery)];
  return `${path.label} ${path.text}. ${face.label} ${face.text}.`;
};

/** The two ends of that band alone, the lower first, or nothing where they read the same. "0° square to 4° open" */
export function sayFaceEnds({ faceLeft, faceReturned }: Record<'faceLeft' | 'faceReturned', Rad>): string {
  const low = sayFace(Math.min(faceLeft, faceReturned)).text;
  const high = sayFace(Math.max(faceLeft, faceReturned)).text;
  return low === high ? '' : `${low} to ${high}`;
}

/** Face against the path, rad. Positive: open to it. */
export const sayFaceToPath = (faceToPath: Rad): DeliveryWords =>
  sayTurn('Face to path', faceToPath, 'open', 'closed', 'square');

/** Attack, rad. Positive: the head is rising. */
export const sayAttack = (attack: Rad): DeliveryWords => sayTurn('Attack', attack, 'up', 'down', 'level');

/** Shaft lean at impact, rad. Positive: hands ahead of the head. */
export const sayShaftLean = (lean: Rad): DeliveryWords => sayTurn('Shaft lean', lean, 'forward', 'back', 'upright');

/** Loft the ball meets, rad. */
export function sayDynamicLoft(loft: Rad): DeliveryWords {
  const { text, spoken } = showAngle(loft);
  return { label: 'Dynamic loft', text, spoken: `Dynamic loft ${spoken}`, source: COMPUTED };
}

/** The part of it that the bending shaft adds, rad. */
export function sayShaftBend(bend: Rad): DeliveryWords {
  const { text, spoken } = showAngle(bend);
  return { label: 'Shaft bend adds', text, spoken: `Shaft bend adds ${spoken} of loft`, source: COMPUTED };
}

/** Speed of the head at the ball, m/s in, the coach's unit out. */
export function sayHeadSpeed(speed: number, units: Pick<Units, 'speed'>): DeliveryWords {
  const { text, spoken } = showSpeed(speed, units);
  return { label: 'Head speed', text, spoken: `Head speed ${spoken}`, source: COMPUTED };
}

/** Lowest point of the head's path, m along the target line from the ball. Positive: ahead of the ball. */
export function sayLowPoint(ahead: number, units: Pick<Units, 'length'>): DeliveryWords {
  const shown = showLength(Math.abs(ahead), units);
  const label = 'Low point';
  if (!Number.isFinite(shown.value))
    return { label, text: shown.text, spoken: `${label}: ${shown.spoken}`, source: COMPUTED };
  const way = shown.value === 0 ? 'at the ball' : ahead > 0 ? 'ahead of the ball' : 'behind the ball';
  const text = shown.value === 0 ? way : `${shown.inSentence} ${way}`;
  const spoken = shown.value === 0 ? way : `${shown.spoken} ${way}`;
  return { label, text, spoken: `${label} ${spoken}`, source: COMPUTED };
}
