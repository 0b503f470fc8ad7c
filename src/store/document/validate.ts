import { bodyOf, SEGMENT_FRACTIONS, SetupError, type Player, type SegmentId } from '../../model/body';
import { CLUB_IDS, clubOf, type ClubId, type ClubSpec } from '../../model/club';
import { DELIVERY_RULES } from '../../reading/delivery/delivery';
import { CAMERA_FIELDS, CAMERA_LIMITS, USUAL_CAMERAS, type CameraPlace, type Cameras } from './cameras';
import { SET_UP_LIMITS, BALL_LIMITS, BAND_LIMIT_CM, ARM_ANGLE_LIMITS_DEG } from './limits';
import {
  DOCUMENT_VERSION,
  edgeDial,
  MY_CLUB,
  SECTIONS,
  STILL_AIR,
  type BallFlight,
  type BandCm,
  type DialId,
  type Dialled,
  type Document,
  type Section,
  type SetUp,
} from './document';
import { NOTHING_SEEN, SEEN_LIMITS, type Seen, type Sighting } from './sighting';

/** A stored document, read: or why it cannot be, in words. */
export type Read = { readonly document: Document } | { readonly problem: string };

type Fields = Readonly<Record<string, unknown>>;

/** What is wrong with a field. Never leaves this file. */
class Damage extends Error {}
const damaged = (field: string): never => {
  throw new Damage(field);
};

function fields(value: unknown, name: string, allowed: readonly string[]): Fields {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return damaged(name);
  const unknown = Object.keys(value).find((key) => !allowed.includes(key));
  return unknown === undefined ? (value as Fields) : damaged(`${name}.${unknown}`);
}
function numberIn(value: unknown, name: string, min: number, max: number): number {
  return typeof value === 'number' && value >= min && value <= max ? value : damaged(name);
}
function oneOf<T extends string>(value: unknown, name: string, allowed: readonly T[]): T {
  return allowed.includes(value as T) ? (value as T) : damaged(name);
}
const dialIn = (value: unknown, id: DialId): number => numberIn(value, id, edgeDial(id).min, edgeDial(id).max);

function readPlayer(value: unknown): Player {
  const { statureM, handed, segmentsM } = fields(value, 'player', ['statureM', 'handed', 'segmentsM']);
  const player: Player = {
    statureM: numberIn(statureM, 'player.statureM', 0, 3),
    handed: oneOf(handed, 'player.handed', ['right', 'left']),
    ...(segmentsM === undefined ? {} : { segmentsM: readSegments(segmentsM) }),
  };
  bodyOf(player);
  return player;
}

function readSegments(value: unknown): Partial<Record<SegmentId, number>> {
  const names = Object.keys(SEGMENT_FRACTIONS) as SegmentId[];
  const given = fields(value, 'player.segmentsM', names);
  const lengths: Partial<Record<SegmentId, number>> = {};
  for (const id of names)
    if (given[id] !== undefined) lengths[id] = numberIn(given[id], `player.segmentsM.${id}`, 0, 2);
  return lengths;
}

const CLUB_NUMBERS = ['gripInsetM', 'handGapM', 'gripAngleDeg', 'gripTurnDeg'] as const;

function readClubSpec(value: unknown): ClubSpec {
  const given = fields(value, 'club.my', ['name', 'kind', 'lengthM', 'lieDeg', 'loftDeg', ...CLUB_NUMBERS]);
  const any = (name: string): number => numberIn(given[name], `club.my.${name}`, -1e3, 1e3);
  const spec: ClubSpec = {
    name: typeof given['name'] === 'string' && given['name'].length <= 60 ? given['name'] : damaged('club.my.name'),
    kind: oneOf(given['kind'], 'club.my.kind', ['driver', 'wood', 'iron', 'wedge']),
    lengthM: any('lengthM'),
    lieDeg: any('lieDeg'),
    loftDeg: any('loftDeg'),
    ...Object.fromEntries(CLUB_NUMBERS.filter((name) => given[name] !== undefined).map((name) => [name, any(name)])),
  };
  clubOf(spec);
  return spec;
}

function readMovements(value: unknown): Dialled {
  const names = ['leadWristFlexionDeg', 'rotationRate', 'rotationDelayMs', 'trailSideBendDeg', 'pelvisShiftCm', 'pelvis'];
  const given = fields(value, 'movements', names);
  const alone = given['pelvis'] === null ? null : fields(given['pelvis'], 'movements.pelvis', ['rate', 'delayMs']);
  return {
    leadWristFlexionDeg: dialIn(given['leadWristFlexionDeg'], 'leadWristFlexion'),
    rotationRate: dialIn(given['rotationRate'], 'rotationRate'),
    rotationDelayMs: dialIn(given['rotationDelayMs'], 'rotationDelay'),
    trailSideBendDeg: dialIn(given['trailSideBendDeg'], 'trailSideBend'),
    pelvisShiftCm: dialIn(given['pelvisShiftCm'], 'pelvisShift'),
    pelvis: alone && { rate: dialIn(alone['rate'], 'pelvisRate'), delayMs: dialIn(alone['delayMs'], 'pelvisDelay') },
  };
}

function readSetUp(value: unknown): SetUp {
  const names = Object.keys(SET_UP_LIMITS) as (keyof SetUp)[];
  const given = fields(value, 'setUp', names);
  const read = names.map((name) => {
    const { min, max } = SET_UP_LIMITS[name];
    return [name, numberIn(given[name], `setUp.${name}`, min, max)] as const;
  });
  return Object.fromEntries(read) as unknown as SetUp;
}

function readBand(value: unknown, name: string): BandCm {
  const given = fields(value, name, ['lowCm', 'highCm']);
  const highCm = numberIn(given['highCm'], `${name}.highCm`, -BAND_LIMIT_CM, BAND_LIMIT_CM);
  return { lowCm: numberIn(given['lowCm'], `${name}.lowCm`, -BAND_LIMIT_CM, highCm), highCm };
}

function readSighting(value: unknown, name: string): Sighting | null {
  if (value === null) return null;
  const given = fields(value, name, ['cm', 'plusMinusCm']);
  const read = (part: keyof Sighting): number =>
    numberIn(given[part], `${name}.${part}`, SEEN_LIMITS[part].min, SEEN_LIMITS[part].max);
  return { cm: read('cm'), plusMinusCm: read('plusMinusCm') };
}

/** Documents from before anything could be marked have nothing marked. */
function readSeen(value: unknown): Seen {
  if (value === undefined) return NOTHING_SEEN;
  const given = fields(value, 'seen', ['leadArmParallel', 'shaftParallel']);
  return {
    leadArmParallel: readSighting(given['leadArmParallel'], 'seen.leadArmParallel'),
    shaftParallel: readSighting(given['shaftParallel'], 'seen.shaftParallel'),
  };
}

function readBall(value: unknown): BallFlight {
  const names = ['tailWindMps', 'crossWindMps', 'altitudeM'] as const;
  const given = fields(value, 'ball', ['rule', ...names]);
  const [tailWindMps, crossWindMps, altitudeM] = names.map((name) =>
    numberIn(given[name], `ball.${name}`, BALL_LIMITS[name].min, BALL_LIMITS[name].max),
  );
  return { rule: oneOf(given['rule'], 'ball.rule', DELIVERY_RULES), tailWindMps, crossWindMps, altitudeM };
}

function readCameraPlace(value: unknown, name: string): CameraPlace {
  const given = fields(value, name, CAMERA_FIELDS);
  const read = CAMERA_FIELDS.map((field) => {
    const { min, max } = CAMERA_LIMITS[field];
    return [field, numberIn(given[field], `${name}.${field}`, min, max)] as const;
  });
  return Object.fromEntries(read) as unknown as CameraPlace;
}

/** Documents from before there were cameras have them where the trade puts them. */
function readCamera(value: unknown): Cameras {
  if (value === undefined) return USUAL_CAMERAS;
  const given = fields(value, 'camera', ['downTheLine', 'faceOn']);
  return {
    downTheLine: readCameraPlace(given['downTheLine'], 'camera.downTheLine'),
    faceOn: readCameraPlace(given['faceOn'], 'camera.faceOn'),
  };
}

const READERS: { readonly [S in Section]: (value: unknown) => Document[S] } = {
  player: readPlayer,
  club: (value) => {
    const { id, my } = fields(value, 'club', ['id', 'my']);
    return {
      id: oneOf<ClubId | typeof MY_CLUB>(id, 'club.id', [...CLUB_IDS, MY_CLUB]),
      my: my === null ? null : readClubSpec(my),
    };
  },
  movements: readMovements,
  setUp: readSetUp,
  bands: (value) => {
    const given = fields(value, 'bands', ['leadArmParallel', 'shaftParallel']);
    return {
      leadArmParallel: readBand(given['leadArmParallel'], 'bands.leadArmParallel'),
      shaftParallel: readBand(given['shaftParallel'], 'bands.shaftParallel'),
    };
  },
  checkpointArmDeg: (value) => numberIn(value, 'checkpointArmDeg', ARM_ANGLE_LIMITS_DEG.min, ARM_ANGLE_LIMITS_DEG.max),
  units: (value) => {
    const { length, speed } = fields(value, 'units', ['length', 'speed']);
    return {
      length: oneOf(length, 'units.length', ['cm', 'in']),
      speed: oneOf(speed, 'units.speed', ['m/s', 'km/h', 'mph']),
    };
  },
  ball: readBall,
  board: (value) => oneOf(value, 'board', ['light', 'dark']),
  seen: readSeen,
  camera: readCamera,
};

/** Some sections of a document, each checked field by field. Throws `Damage` or `SetupError`. */
function readSections(value: Fields, names: readonly Section[]): Partial<Document> {
  return Object.fromEntries(names.map((name) => [name, READERS[name](value[name])])) as Partial<Document>;
}

const isOurs = (error: unknown): error is Damage | SetupError => error instanceof Damage || error instanceof SetupError;

/** Reads a document from something stored or shared. Nothing unknown gets in, nothing is guessed. */
export function readDocument(value: unknown): Read {
  try {
    if (typeof value !== 'object' || value === null) return { problem: 'it is not a Slantwise document' };
    const version = (value as Fields)['version'];
    if (version !== DOCUMENT_VERSION) {
      const newer = typeof version === 'number' && version > DOCUMENT_VERSION;
      return { problem: newer ? 'a newer Slantwise wrote it' : 'its version is unknown' };
    }
    // Documents from before there was a ball to strike stay readable.
    const given = { ball: STILL_AIR, ...fields(value, 'document', ['version', ...SECTIONS]) };
    return { document: { version: DOCUMENT_VERSION, ...readSections(given, SECTIONS) } as Document };
  } catch (error) {
    if (isOurs(error))
      return { problem: `part of it is damaged (${error instanceof Damage ? error.message : error.field})` };
    throw error;
  }
}

/** Sections changed by one undo step; undefined when they are damaged. */
export function readPart(value: unknown): Partial<Document> | undefined {
  try {
    const given = fields(value, 'step', SECTIONS);
    return readSections(
      given,
      SECTIONS.filter((name) => name in given),
    );
  } catch (error) {
    if (isOurs(error)) return undefined;
    throw error;
  }
}
