import { bodyOf, SEGMENT_FRACTIONS, SetupError, type Body, type MeasuredSegments } from '../model/body';
import { CLUB_IDS, CLUBS, clubOf, type Club, type ClubSpec } from '../model/club';
import { DIALS, STILL, type MovementDial, type MovementId, type Movements } from '../model/movements';
import { choice, either, LineError, number, record, text, type Schema, type Typed } from './schema';

const fromEntries = <K extends string>(keys: readonly K[], schema: (key: K) => Schema) =>
  Object.fromEntries(keys.map((key) => [key, schema(key)])) as Record<K, ReturnType<typeof number>>;

/** Wider than the model's own limits, which `bodyOf` checks with better words. */
const anyLength = number(0, 10);
const segmentIds = Object.keys(SEGMENT_FRACTIONS) as (keyof MeasuredSegments)[];
const segments = record(
  {},
  fromEntries(segmentIds, () => anyLength),
);

export const bodySchema = record({ statureM: anyLength }, { segmentsM: segments });
export const playerSchema = record({ statureM: anyLength }, { segmentsM: segments, handed: choice('right', 'left') });

export const clubSchema = either(
  choice(...CLUB_IDS),
  record(
    { lengthM: anyLength, lieDeg: number(0, 90), loftDeg: number(0, 90) },
    {
      name: text(80),
      kind: choice('driver', 'wood', 'iron', 'wedge'),
      gripInsetM: number(0, 0.4),
      handGapM: number(0, 0.4),
      gripAngleDeg: number(0, 180),
      gripTurnDeg: number(-180, 180),
    },
  ),
);

/** The edge's own limits of a dial: degrees, milliseconds, centimetres, factor. */
const dialSchema = ({ min, max, edgeUnit }: MovementDial) => number(round(min / edgeUnit), round(max / edgeUnit));
const round = (value: number): number => Math.round(value * 1e6) / 1e6;
const dials = Object.fromEntries(DIALS.map((dial) => [dial.field, dialSchema(dial)]));
const dialFor = (id: MovementId): MovementDial => DIALS.find((dial) => dial.id === id)!;
const rate = dialFor('rotationRate');
const delay = dialFor('rotationDelay');

/** The movements by their names at an edge; an absent one is that of the reference. `pelvisRate`, `pelvisDelayMs`: the pelvis on its own. */
export const movementsSchema = record({}, { ...dials, pelvisRate: dialSchema(rate), pelvisDelayMs: dialSchema(delay) });

/** Movements, or a change of them, under their names at an edge. A pelvis on its own stays so. */
export function toEdgeMovements(values: Movements): Record<string, number> {
  const { pelvisRate, pelvisDelay } = values;
  return {
    ...Object.fromEntries(DIALS.map(({ id, field, edgeUnit }) => [field, values[id] / edgeUnit])),
    ...(pelvisRate !== undefined && { pelvisRate: pelvisRate / rate.edgeUnit }),
    ...(pelvisDelay !== undefined && { pelvisDelayMs: pelvisDelay / delay.edgeUnit }),
  };
}

/** A body from a checked line. `path` is the name of the field that holds it. */
export function toBody(given: Typed<typeof bodySchema>, path: string): Body {
  const { statureM, segmentsM } = given;
  return withPath(path, () => bodyOf({ statureM, handed: 'right', ...(segmentsM && { segmentsM }) }));
}

/** A club from a checked line: one of the known ones by name, or measured. */
export function toClub(given: Typed<typeof clubSchema>): Club {
  if (typeof given === 'string') return clubOf(CLUBS[given]);
  const spec: ClubSpec = { name: 'my club', kind: 'iron', ...given };
  return withPath('club', () => clubOf(spec));
}

/** Movements in the model's units from a checked line. */
export function toMovements(given: Typed<typeof movementsSchema> = {}): Movements {
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
