import { exactOptional, never, type InferOutput } from 'valibot';
import { eachOf, fields, nameOr, numberIn, oneOf, textUpTo } from '../checking/schemas';
import { rad } from '../math/angle';
import { bodyOf, SEGMENT_FRACTIONS, SetupError, type Body, type MeasuredSegments } from '../model/body';
import { CLUB_IDS, CLUB_LIMITS, CLUBS, clubOf, type Club, type ClubSpec } from '../model/club';
import { DIALS, STILL, type MovementDial, type MovementId, type Movements } from '../model/movements';
import type { TopSetUp } from '../model/setUp';
import { LineError } from './lineError';

/** Wider than the model's own limits, which `bodyOf` checks with better words. */
const anyLength = numberIn(0, 10);
const segmentIds = Object.keys(SEGMENT_FRACTIONS) as (keyof MeasuredSegments)[];
const segmentsM = exactOptional(fields(eachOf(segmentIds, () => exactOptional(anyLength))));

export const bodySchema = fields({ statureM: anyLength, segmentsM });
export const playerSchema = fields({
  statureM: anyLength,
  segmentsM,
  handed: exactOptional(oneOf(['right', 'left'])),
  lagDeg: exactOptional(numberIn(CLUB_LIMITS.lagDeg.min, CLUB_LIMITS.lagDeg.max)),
});

export const clubSchema = nameOr(CLUB_IDS, {
  lengthM: anyLength,
  lieDeg: numberIn(0, 90),
  loftDeg: numberIn(0, 90),
  name: exactOptional(textUpTo(80)),
  kind: exactOptional(oneOf(['driver', 'wood', 'iron', 'wedge'])),
  gripInsetM: exactOptional(numberIn(0, 0.4)),
  handGapM: exactOptional(numberIn(0, 0.4)),
  gripAngleDeg: exactOptional(numberIn(0, 180)),
  gripTurnDeg: exactOptional(numberIn(-180, 180)),
  lie: exactOptional(oneOf(['fitted', 'rack'])),
});

/** The edge's own limits of a dial: degrees, milliseconds, centimetres, factor. */
const dialSchema = ({ min, max, edgeUnit }: MovementDial) =>
  exactOptional(numberIn(round(min / edgeUnit), round(max / edgeUnit)));
const round = (value: number): number => Math.round(value * 1e6) / 1e6;
const dials = Object.fromEntries(DIALS.map((dial) => [dial.field, dialSchema(dial)]));
const dialFor = (id: MovementId): MovementDial => DIALS.find((dial) => dial.id === id)!;
const rate = dialFor('rotationRate');
const delay = dialFor('rotationDelay');

/** The movements by their names at an edge; an absent one is that of the reference. `pelvisRate`, `pelvisDelayMs`: the pelvis on its own. */
export const movementsSchema = fields({
  ...dials,
  pelvisRate: dialSchema(rate),
  pelvisDelayMs: dialSchema(delay),
  trailTiltDeg: exactOptional(never('The lean is gone. Use trailSideBendDeg, the side bend: 1.16 of the lean.')),
});

/** Movements, or a change of them, under their names at an edge. A pelvis on its own stays so. */
export function toEdgeMovements(values: Movements): Record<string, number> {
  const { pelvisRate, pelvisDelay } = values;
  return {
    ...Object.fromEntries(DIALS.map(({ id, field, edgeUnit }) => [field, values[id] / edgeUnit])),
    ...(pelvisRate !== undefined && { pelvisRate: pelvisRate / rate.edgeUnit }),
    ...(pelvisDelay !== undefined && { pelvisDelayMs: pelvisDelay / delay.edgeUnit }),
  };
}

/** Top of the backswing as changes on the reference, under the names and limits of the set-up. */
export const setUpSchema = fields({
  handDepthCm: exactOptional(numberIn(-12, 12)),
  handHeightCm: exactOptional(numberIn(-12, 12)),
  turnDeg: exactOptional(numberIn(-20, 20)),
  wristSetDeg: exactOptional(numberIn(-20, 20)),
});

/** The top of the backswing in the model's units from a checked line. */
export const toTopSetUp = (given: InferOutput<typeof setUpSchema>): TopSetUp => ({
  handDepth: (given.handDepthCm ?? 0) / 100,
  handHeight: (given.handHeightCm ?? 0) / 100,
  turn: rad(given.turnDeg ?? 0),
  wristSet: rad(given.wristSetDeg ?? 0),
});

/** A body from a checked line. `path` is the name of the field that holds it. */
export function toBody(given: InferOutput<typeof bodySchema>, path: string): Body {
  const { statureM, segmentsM } = given;
  return withPath(path, () => bodyOf({ statureM, handed: 'right', ...(segmentsM && { segmentsM }) }));
}

/** A club from a checked line: one of the known ones by name, or measured; with `lagDeg`, held so that arm and shaft enclose that angle. */
export function toClub(given: InferOutput<typeof clubSchema>, lagDeg?: number): Club {
  const spec: ClubSpec = typeof given === 'string' ? CLUBS[given] : { name: 'my club', kind: 'iron', ...given };
  return withPath('club', () => clubOf(lagDeg === undefined ? spec : { ...spec, lagDeg }));
}

/** Movements in the model's units from a checked line. */
export function toMovements(given: InferOutput<typeof movementsSchema> = {}): Movements {
  const typed = given as Readonly<Record<string, number>>;
  const movements: { -readonly [K in keyof Movements]: Movements[K] } = { ...STILL };
  for (const { id, field, edgeUnit } of DIALS) if (field in typed) movements[id] = typed[field] * edgeUnit;
  if (given.pelvisRate !== undefined) movements.pelvisRate = given.pelvisRate * rate.edgeUnit;
  if (given.pelvisDelayMs !== undefined) movements.pelvisDelay = given.pelvisDelayMs * delay.edgeUnit;
  return movements;
}

/** A set-up that cannot be becomes an error of its line, under the field's full path. */
function withPath<T>(path: string, make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    const field = error.field in SEGMENT_FRACTIONS ? `segmentsM.${error.field}` : error.field;
    throw new LineError(`${path}.${field}`, error.message);
  }
}
