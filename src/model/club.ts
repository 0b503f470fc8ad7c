import { rad, type Rad } from '../math/angle';
import { SetupError } from './body';

const INCH = 0.0254;

/** A club. Lengths in metres, angles in radians. */
export interface Club {
  readonly name: string;
  readonly kind: 'driver' | 'wood' | 'iron' | 'wedge';
  /** Butt to the head's reference point, along the shaft. */
  readonly length: number;
  /** Butt to the centre of the lead grip. */
  readonly gripInset: number;
  /** Centre of the lead grip to the centre of the trail grip. */
  readonly handGap: number;
  readonly lie: Rad;
  readonly loft: Rad;
  /** Angle between the hand's long axis and the shaft at a neutral wrist. */
  readonly gripAngle: Rad;
  /** How far the face is turned in the hands about the shaft. Positive closes the face: a stronger grip. */
  readonly gripTurn: Rad;
  /** Angle between lead arm and shaft at lead arm parallel that the reference swing is asked for; absent: as it comes. */
  readonly lag?: Rad;
  /** The lie is the rack's and stays so; absent: it is fitted to the player. */
  readonly isOffTheRack?: true;
}

export const DEFAULT_GRIP = { gripInsetM: 0.1, handGapM: 0.085, gripAngleDeg: 52, gripTurnDeg: 0 } as const;

/**
 * Lengths: R&A / USGA Equipment Rules (18 in to 48 in; the metres there are rounded, so the wider end of each counts). Lie: shaft at
 * least 10 deg from vertical. How it is held: our choice.
 */
export const CLUB_LIMITS = {
  lengthM: { min: 0.457, max: 1.2192 },
  lieDeg: { min: 45, max: 80 },
  loftDeg: { min: 5, max: 70 },
  gripInsetM: { min: 0, max: 0.2 },
  handGapM: { min: 0, max: 0.2 },
  gripAngleDeg: { min: 0, max: 90 },
  gripTurnDeg: { min: -60, max: 60 },
  lagDeg: { min: 85, max: 125 },
} as const;

/** A club as typed at an edge: metres and degrees. */
export interface ClubSpec {
  readonly name: string;
  readonly kind: Club['kind'];
  readonly lengthM: number;
  readonly lieDeg: number;
  readonly loftDeg: number;
  readonly gripInsetM?: number;
  readonly handGapM?: number;
  readonly gripAngleDeg?: number;
  readonly gripTurnDeg?: number;
  /** Angle between lead arm and shaft at lead arm parallel; absent: that of the reference. */
  readonly lagDeg?: number;
  /** Absent: fitted. */
  readonly lie?: 'fitted' | 'rack';
}

const spec = (id: string, kind: Club['kind'], inches: number, loftDeg: number, lieDeg: number): ClubSpec => ({
  name: id,
  kind,
  lengthM: Math.round(inches * INCH * 1e4) / 1e4,
  lieDeg,
  loftDeg,
});

/** Typical lengths and lofts (published), lies from memory (spread of 2 deg either way). */
export const CLUBS = {
  driver: spec('driver', 'driver', 45, 10.5, 57),
  '5-wood': spec('5-wood', 'wood', 42, 18, 58),
  '5-iron': spec('5-iron', 'iron', 38, 27, 61),
  '7-iron': spec('7-iron', 'iron', 37, 34, 62),
  '9-iron': spec('9-iron', 'iron', 36, 41, 63.5),
  'pitching wedge': spec('pitching wedge', 'wedge', 35.5, 46, 64),
  'sand wedge': spec('sand wedge', 'wedge', 35.25, 55, 64),
} as const satisfies Record<string, ClubSpec>;

export type ClubId = keyof typeof CLUBS;
export const CLUB_IDS = Object.keys(CLUBS) as ClubId[];

/** The club in the model's units. Throws `SetupError` when a value is outside the equipment rules or the model. */
export function clubOf(typed: ClubSpec): Club {
  const grip = { ...DEFAULT_GRIP, ...typed };
  const { lagDeg } = typed;
  checkLimit(grip, 'lengthM', 'length', 'm', '18 in to 48 in by the equipment rules');
  checkLimit(grip, 'lieDeg', 'lie', 'deg', 'at most 80 by the equipment rules');
  checkLimit(grip, 'loftDeg', 'loft', 'deg', 'what the model knows');
  checkLimit(grip, 'gripInsetM', 'butt to lead hand', 'm', 'both hands lie on the grip');
  checkLimit(grip, 'handGapM', 'lead hand to trail hand', 'm', 'both hands lie on the grip');
  checkLimit(grip, 'gripAngleDeg', 'angle of hand to shaft', 'deg', 'what the model knows');
  checkLimit(grip, 'gripTurnDeg', 'turn of the face in the hands', 'deg', 'what the model knows');
  if (lagDeg !== undefined)
    checkLimit({ ...grip, lagDeg }, 'lagDeg', 'lead arm to shaft', 'deg', 'what the wrist can hold');
  return {
    name: typed.name,
    kind: typed.kind,
    length: typed.lengthM,
    gripInset: grip.gripInsetM,
    handGap: grip.handGapM,
    lie: rad(typed.lieDeg),
    loft: rad(typed.loftDeg),
    gripAngle: rad(grip.gripAngleDeg),
    gripTurn: rad(grip.gripTurnDeg),
    ...(lagDeg !== undefined && { lag: rad(lagDeg) }),
    ...(typed.lie === 'rack' && { isOffTheRack: true }),
  };
}

function checkLimit<F extends keyof typeof CLUB_LIMITS>(
  typed: Pick<ClubSpec, 'name'> & { readonly [field in F]: number },
  field: F,
  word: string,
  unit: string,
  why: string,
): void {
  const { min, max } = CLUB_LIMITS[field];
  const value: number = typed[field];
  if (value >= min && value <= max) return;
  throw new SetupError(
    field,
    `Club "${typed.name}": ${word} ${value} ${unit} is outside ${min} to ${max} ${unit} (${why}). Enter a value inside.`,
  );
}
