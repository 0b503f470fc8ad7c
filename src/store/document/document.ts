import { CHECKPOINTS, type CheckpointId } from '../../reading/checkpointTable';
import type { Player } from '../../model/body';
import type { ClubId, ClubSpec } from '../../model/club';
import { DIALS, type MovementId } from '../../model/movements';
import type { DeliveryRule } from '../../reading/delivery/delivery';
import { USUAL_CAMERAS, type Cameras } from './cameras';
import { type ChosenPlan } from './chosenPlan';
import { STILL_DIALLED, type Dialled } from './dialled';
import { NOTHING_SEEN, type Seen } from './sighting';

export { STILL_DIALLED, type Dialled } from './dialled';

export const DOCUMENT_VERSION = 3;

/** A dial on screen: the five of the model, and two more when the pelvis turns on its own. */
export type DialId = MovementId | 'pelvisRate' | 'pelvisDelay';

/** Top of the backswing as changes on the reference, and tempo. Positive: hands farther from the body, higher, turned farther, more set. */
export interface SetUp {
  readonly handDepthCm: number;
  readonly handHeightCm: number;
  readonly turnDeg: number;
  readonly wristSetDeg: number;
  readonly downswingMs: number;
}

export interface BandCm {
  readonly lowCm: number;
  readonly highCm: number;
}

export interface Units {
  readonly length: 'cm' | 'in';
  readonly speed: 'm/s' | 'km/h' | 'mph';
}

/** What happens between shaft parallel and the landing: how the arms are taken to behave, and the day. */
export interface BallFlight {
  readonly rule: DeliveryRule;
  /** How far the face is returned, 0 (left as it comes) to 1 (square); absent: `DEFAULT_FACE_RETURNED`. An assumption. */
  readonly faceReturned?: number;
  /** Wind along the target line: + with the shot. */
  readonly tailWindMps: number;
  /** Wind across it as one looks at the target: + from left to right, for either hand. */
  readonly crossWindMps: number;
  readonly altitudeM: number;
}

export const MY_CLUB = 'my club';
export interface ClubChoice {
  readonly id: ClubId | typeof MY_CLUB;
  /** What was typed for the player's own club; kept while another club is chosen. */
  readonly my: ClubSpec | null;
  /** Angle between lead arm and shaft at lead arm parallel; null or absent: that of the reference swing. */
  readonly lagDeg?: number | null;
  /** Whether the lie is fitted to the player; absent: fitted. */
  readonly lie?: 'fitted' | 'rack';
}

/** Everything that is saved, shared and undone. */
export interface Document {
  readonly version: typeof DOCUMENT_VERSION;
  readonly player: Player;
  readonly club: ClubChoice;
  /** What is dialled at the moment. Neither what was seen nor the plan ever follows it, and it never overwrites them. */
  readonly movements: Dialled;
  readonly setUp: SetUp;
  readonly bands: { readonly leadArmParallel: BandCm; readonly shaftParallel: BandCm };
  readonly checkpointArmDeg: number;
  /** Came later than the rest: a document without it has `STILL_AIR`. */
  readonly ball: BallFlight;
  readonly units: Units;
  readonly board: 'light' | 'dark';
  /** What the coach saw of the player. */
  readonly seen: Seen;
  /** The plan that was chosen. Came with version 3. */
  readonly plan: ChosenPlan | null;
  /** Where the coach's cameras stand. Came later than the rest: a document without it has `USUAL_CAMERAS`. */
  readonly camera: Cameras;
}
export type Section = Exclude<keyof Document, 'version'>;

export const PLAIN_SET_UP: SetUp = { handDepthCm: 0, handHeightCm: 0, turnDeg: 0, wristSetDeg: 0, downswingMs: 250 };

export const STILL_AIR: BallFlight = { rule: 'held plane', tailWindMps: 0, crossWindMps: 0, altitudeM: 0 };

/** Rounds off what floating point leaves past the fourth decimal. */
const tidy = (value: number): number => Number(value.toFixed(4));

function usualBand(id: CheckpointId): BandCm {
  const { low, high } = CHECKPOINTS[id].band;
  return { lowCm: tidy(low * 100), highCm: tidy(high * 100) };
}

export const DEFAULT_DOCUMENT: Document = {
  version: DOCUMENT_VERSION,
  player: { statureM: 1.78, handed: 'right' },
  club: { id: '7-iron', my: null },
  movements: STILL_DIALLED,
  setUp: PLAIN_SET_UP,
  bands: { leadArmParallel: usualBand('leadArmParallel'), shaftParallel: usualBand('shaftParallel') },
  checkpointArmDeg: -10,
  ball: STILL_AIR,
  units: { length: 'cm', speed: 'm/s' },
  board: 'light',
  seen: NOTHING_SEEN,
  plan: null,
  camera: USUAL_CAMERAS,
};

/** The parts of a document, version aside. */
export const SECTIONS = (Object.keys(DEFAULT_DOCUMENT) as (keyof Document)[]).filter(
  (name): name is Section => name !== 'version',
);

/** One dial at the edge: what the slider, the keyboard and the typed value agree on. */
export interface EdgeDial {
  readonly id: DialId;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly neutral: number;
  readonly usualMin: number;
  readonly usualMax: number;
}

const fromModel: EdgeDial[] = DIALS.map((dial) => ({
  id: dial.id,
  min: tidy(dial.min / dial.edgeUnit),
  max: tidy(dial.max / dial.edgeUnit),
  step: tidy(dial.step / dial.edgeUnit),
  neutral: tidy(dial.neutral / dial.edgeUnit),
  usualMin: tidy(dial.usualMin / dial.edgeUnit),
  usualMax: tidy(dial.usualMax / dial.edgeUnit),
}));
const like = (id: MovementId, as: DialId): EdgeDial => ({ ...fromModel.find((dial) => dial.id === id)!, id: as });

export const EDGE_DIALS: readonly EdgeDial[] = [
  ...fromModel,
  like('rotationRate', 'pelvisRate'),
  like('rotationDelay', 'pelvisDelay'),
];
const byId: ReadonlyMap<DialId, EdgeDial> = new Map(EDGE_DIALS.map((dial) => [dial.id, dial]));

/** The dial with this id. */
export const edgeDial = (id: DialId): EdgeDial => byId.get(id)!;

const FIELD = Object.fromEntries(DIALS.map((dial) => [dial.id, dial.field])) as Record<
  MovementId,
  Exclude<keyof Dialled, 'pelvis'>
>;

/** Value of one dial. A linked pelvis shows the chest's. */
export function dialValue(dialled: Dialled, id: DialId): number {
  if (id === 'pelvisRate') return dialled.pelvis?.rate ?? dialled.rotationRate;
  if (id === 'pelvisDelay') return dialled.pelvis?.delayMs ?? dialled.rotationDelayMs;
  return dialled[FIELD[id]];
}

/** Brings a value onto the dial's steps and inside its ends; not a number stays the value before. */
export function fitToDial(id: DialId, value: number, before: number): number {
  if (!Number.isFinite(value)) return before;
  const { min, max, step } = edgeDial(id);
  const stepped = tidy(Math.round(value / step) * step);
  return Math.min(max, Math.max(min, stepped)) + 0;
}

/** The same dials with one of them at `value`, brought onto its steps. */
export function withDial(dialled: Dialled, id: DialId, value: number): Dialled {
  const before = dialValue(dialled, id);
  const fitted = fitToDial(id, value, before);
  if (fitted === before) return dialled;
  if (id === 'pelvisRate' || id === 'pelvisDelay') {
    const alone = dialled.pelvis ?? { rate: dialled.rotationRate, delayMs: dialled.rotationDelayMs };
    return { ...dialled, pelvis: id === 'pelvisRate' ? { ...alone, rate: fitted } : { ...alone, delayMs: fitted } };
  }
  return { ...dialled, [FIELD[id]]: fitted };
}
