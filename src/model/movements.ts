import { rad, type Rad } from '../math/angle';

/**
 * What the user dials on top of a reference swing. Zero at the top of the backswing, complete by lead arm parallel.
 * Angles in radians, times in seconds, lengths in metres; a rate of 1 is the reference.
 */
export interface Movements {
  /** Added flexion (+, bowed) or extension (-, cupped) of the lead wrist. */
  readonly leadWristFlexion: Rad;
  /** Factor on how far pelvis and thorax have turned from the top at any time. */
  readonly rotationRate: number;
  /** The turn starts later (+) or earlier (-), in the player's own seconds, whatever the tempo. */
  readonly rotationDelay: number;
  /** Added bend of the rib cage to its trail side (+), about its own front-back axis. */
  readonly trailSideBend: Rad;
  /** Added shift of the pelvis toward the target. */
  readonly pelvisShift: number;
  /** The pelvis on its own: absent means linked to the thorax. */
  readonly pelvisRate?: number;
  readonly pelvisDelay?: number;
}

export const STILL: Movements = {
  leadWristFlexion: 0,
  rotationRate: 1,
  rotationDelay: 0,
  trailSideBend: 0,
  pelvisShift: 0,
};

export type MovementId = 'leadWristFlexion' | 'rotationRate' | 'rotationDelay' | 'trailSideBend' | 'pelvisShift';
/** The three movements a coach speaks of; each owns one or two dials. */
export type MovementGroup = 'leadWrist' | 'rotation' | 'sideTilt';

export interface MovementDial {
  readonly id: MovementId;
  readonly group: MovementGroup;
  /** Name of the field at an edge, with its unit. */
  readonly field: string;
  /** Value at the reference, in the model's units. */
  readonly neutral: number;
  readonly min: number;
  readonly max: number;
  /** Usual span: beyond it the track is hatched and the screen says so. Model units. Common practice. */
  readonly usualMin: number;
  readonly usualMax: number;
  /** One unit at the edge (deg, factor, ms, deg, cm) in the model's units. */
  readonly edgeUnit: number;
  /** One step of the dial, model units. */
  readonly step: number;
  readonly positive: string;
}

/** The dials, in the order of the screen. */
export const DIALS: readonly MovementDial[] = [
  {
    id: 'leadWristFlexion',
    group: 'leadWrist',
    field: 'leadWristFlexionDeg',
    neutral: 0,
    min: rad(-40),
    max: rad(40),
    usualMin: rad(-30),
    usualMax: rad(30),
    edgeUnit: rad(1),
    step: rad(1),
    positive: 'the lead wrist bows',
  },
  {
    id: 'rotationRate',
    group: 'rotation',
    field: 'rotationRate',
    neutral: 1,
    min: 0.6,
    max: 1.4,
    usualMin: 0.8,
    usualMax: 1.2,
    edgeUnit: 1,
    step: 0.01,
    positive: 'pelvis and chest turn faster',
  },
  {
    id: 'rotationDelay',
    group: 'rotation',
    field: 'rotationDelayMs',
    neutral: 0,
    min: -0.04,
    max: 0.04,
    usualMin: -0.03,
    usualMax: 0.03,
    edgeUnit: 0.001,
    step: 0.001,
    positive: 'the turn starts later',
  },
  {
    id: 'trailSideBend',
    group: 'sideTilt',
    field: 'trailSideBendDeg',
    neutral: 0,
    min: rad(-12),
    max: rad(12),
    usualMin: rad(-6),
    usualMax: rad(6),
    edgeUnit: rad(1),
    step: rad(1),
    positive: 'the rib cage bends to the trail side',
  },
  {
    id: 'pelvisShift',
    group: 'sideTilt',
    field: 'pelvisShiftCm',
    neutral: 0,
    min: -0.1,
    max: 0.1,
    usualMin: -0.06,
    usualMax: 0.06,
    edgeUnit: 0.01,
    step: 0.01,
    positive: 'the pelvis moves toward the target',
  },
];

export const MOVEMENT_GROUPS: readonly MovementGroup[] = ['leadWrist', 'rotation', 'sideTilt'];

/** The dial with this id. */
export const dialOf = (id: MovementId): MovementDial => DIALS.find((dial) => dial.id === id)!;
