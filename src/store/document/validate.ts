import {
  exactOptional,
  nullable,
  picklist,
  pipe,
  regex,
  string,
  transform,
  unknown,
  type GenericSchema,
} from 'valibot';
import { day, keptText } from '../../checking/kept';
import { read } from '../../checking/read';
import { eachOf, fields, listUpTo, numberIn, oneOf, textUpTo, whole } from '../../checking/schemas';
import { bodyOf, SEGMENT_FRACTIONS, SetupError, type SegmentId } from '../../model/body';
import { CLUB_IDS, CLUB_LIMITS, clubOf, type ClubId } from '../../model/club';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DELIVERY_RULES } from '../../reading/delivery/delivery';
import { CAMERA_LIMITS, USUAL_CAMERAS } from './cameras';
import { ARM_ANGLE_LIMITS_DEG, BALL_LIMITS, BAND_LIMIT_CM, FACE_RETURNED_LIMITS, SET_UP_LIMITS } from './limits';
import { PLAN_ID, PLAN_LIMITS } from './chosenPlan';
import {
  DOCUMENT_VERSION,
  edgeDial,
  MY_CLUB,
  SECTIONS,
  STILL_AIR,
  type DialId,
  type Dialled,
  type Document,
  type Section,
} from './document';
import { LEAN_BECAME_SIDE_BEND, migrateMovements } from './migrate';
import { NOTHING_SEEN, SEEN_FROM, SEEN_LIMITS } from './sighting';

/** Documents of this version had a lean where there is side bend now. */
const BEFORE_SIDE_BEND = 1;
/** Every version that was ever written. Those before 3 had no plan, and marks that did not say how they came about. */
const VERSIONS = [BEFORE_SIDE_BEND, 2, DOCUMENT_VERSION] as const;

/** A stored document, read: or why it cannot be, in words. */
export type Read = { readonly document: Document; readonly notice?: string } | { readonly problem: string };

interface Limits {
  readonly min: number;
  readonly max: number;
}
const within = ({ min, max }: Limits) => numberIn(min, max);
const withinEach = <K extends string>(limits: Readonly<Record<K, Limits>>) =>
  eachOf(Object.keys(limits) as K[], (name) => within(limits[name]));
const dial = (id: DialId) => within(edgeDial(id));

/** What passes field by field can still be no body and no club: the model has the last word. */
const accepted = <T>(make: (given: T) => unknown) =>
  whole<T>((given) => {
    try {
      make(given);
      return undefined;
    } catch (error) {
      if (!(error instanceof SetupError)) throw error;
      const { field, message } = error;
      return { path: field in SEGMENT_FRACTIONS ? `segmentsM.${field}` : field, message };
    }
  });

const segments = eachOf(Object.keys(SEGMENT_FRACTIONS) as SegmentId[], () => exactOptional(numberIn(0, 2)));
const player = pipe(
  fields({
    statureM: numberIn(0, 3),
    handed: oneOf(['right', 'left']),
    segmentsM: exactOptional(fields(segments)),
  }),
  accepted(bodyOf),
);

/** `clubOf` knows the limits. */
const anyNumber = numberIn(-1e3, 1e3);
const my = pipe(
  fields({
    name: textUpTo(60),
    kind: oneOf(['driver', 'wood', 'iron', 'wedge']),
    lengthM: anyNumber,
    lieDeg: anyNumber,
    loftDeg: anyNumber,
    gripInsetM: exactOptional(anyNumber),
    handGapM: exactOptional(anyNumber),
    gripAngleDeg: exactOptional(anyNumber),
    gripTurnDeg: exactOptional(anyNumber),
  }),
  accepted(clubOf),
);

const dialled = fields({
  leadWristFlexionDeg: dial('leadWristFlexion'),
  rotationRate: dial('rotationRate'),
  rotationDelayMs: dial('rotationDelay'),
  trailSideBendDeg: dial('trailSideBend'),
  pelvisShiftCm: dial('pelvisShift'),
  pelvis: nullable(fields({ rate: dial('pelvisRate'), delayMs: dial('pelvisDelay') })),
});

/** As they are stored today, or as they were before the side bend. */
const movements = pipe(unknown(), transform(migrateMovements), dialled as GenericSchema<unknown, Dialled>);

const edge = numberIn(-BAND_LIMIT_CM, BAND_LIMIT_CM);
const band = pipe(
  fields({ lowCm: edge, highCm: edge }),
  whole(({ lowCm, highCm }) =>
    lowCm <= highCm ? undefined : { path: 'lowCm', message: 'The lower edge lies above the upper one. Swap them.' },
  ),
);
const sighting = nullable(fields({ ...withinEach(SEEN_LIMITS), from: exactOptional(oneOf(SEEN_FROM), 'eye') }));
const centimetres = nullable(numberIn(-1000, 1000));
const handedOut = nullable(keptText(PLAN_LIMITS.name));
const plan = nullable(
  fields({
    id: pipe(string(), regex(PLAN_ID, 'Not the id of a plan.')),
    from: movements,
    movements,
    targetCm: fields(eachOf(CHECKPOINT_IDS, () => centimetres)),
    feel: keptText(PLAN_LIMITS.feel),
    drills: listUpTo(
      fields({
        name: keptText(PLAN_LIMITS.drillName),
        how: keptText(PLAN_LIMITS.drillHow),
        often: keptText(PLAN_LIMITS.drillOften),
      }),
      PLAN_LIMITS.drills,
    ),
    cautions: listUpTo(keptText(PLAN_LIMITS.caution), PLAN_LIMITS.cautions),
    words: keptText(PLAN_LIMITS.words),
    nextDate: nullable(day),
    names: fields({ player: handedOut, coach: handedOut }),
  }),
);
const camera = fields(withinEach(CAMERA_LIMITS));

/** What each section of a document may hold. */
export const SECTION_SCHEMAS = {
  player,
  club: fields({
    id: oneOf<ClubId | typeof MY_CLUB>([...CLUB_IDS, MY_CLUB]),
    my: nullable(my),
    lagDeg: exactOptional(nullable(within(CLUB_LIMITS.lagDeg))),
    lie: exactOptional(oneOf(['fitted', 'rack'])),
  }),
  movements,
  setUp: fields(withinEach(SET_UP_LIMITS)),
  bands: fields(eachOf(CHECKPOINT_IDS, () => band)),
  checkpointArmDeg: within(ARM_ANGLE_LIMITS_DEG),
  ball: fields({
    rule: oneOf(DELIVERY_RULES),
    faceReturned: exactOptional(within(FACE_RETURNED_LIMITS)),
    ...withinEach(BALL_LIMITS),
  }),
  units: fields({ length: oneOf(['cm', 'in']), speed: oneOf(['m/s', 'km/h', 'mph']) }),
  board: oneOf(['light', 'dark']),
  seen: fields(eachOf(CHECKPOINT_IDS, () => sighting)),
  plan,
  camera: fields({ downTheLine: camera, faceOn: camera }),
} satisfies { readonly [S in Section]: GenericSchema<unknown, Document[S]> };

/** A whole document. One from before there was a ball, anything marked, a camera or a plan stays readable: it has the usual ones. */
export const documentSchema: GenericSchema<unknown, Document> = fields({
  version: pipe(
    picklist(VERSIONS),
    transform((): typeof DOCUMENT_VERSION => DOCUMENT_VERSION),
  ),
  ...SECTION_SCHEMAS,
  ball: exactOptional(SECTION_SCHEMAS.ball, STILL_AIR),
  seen: exactOptional(SECTION_SCHEMAS.seen, NOTHING_SEEN),
  plan: exactOptional(SECTION_SCHEMAS.plan, null),
  camera: exactOptional(SECTION_SCHEMAS.camera, USUAL_CAMERAS),
});

const stepSchema = fields(
  eachOf(SECTIONS, (name) => exactOptional<GenericSchema>(SECTION_SCHEMAS[name])),
) as GenericSchema<unknown, Partial<Document>>;

/** Reads a document from something stored or shared. Nothing unknown gets in, nothing is guessed. */
export function readDocument(value: unknown): Read {
  if (typeof value !== 'object' || value === null) return { problem: 'it is not a Slantwise document' };
  const { version } = value as { readonly version?: unknown };
  if (!VERSIONS.includes(version as (typeof VERSIONS)[number])) {
    const newer = typeof version === 'number' && version > DOCUMENT_VERSION;
    return { problem: newer ? 'a newer Slantwise wrote it' : 'its version is unknown' };
  }
  const found = read(documentSchema, value);
  if ('value' in found) {
    return { document: found.value, ...(version === BEFORE_SIDE_BEND && { notice: LEAN_BECAME_SIDE_BEND }) };
  }
  return { problem: `part of it is damaged (${found.fault.path})` };
}

/** Sections changed by one undo step; undefined when they are damaged. */
export function readPart(value: unknown): Partial<Document> | undefined {
  const found = read(stepSchema, value);
  return 'value' in found ? found.value : undefined;
}
