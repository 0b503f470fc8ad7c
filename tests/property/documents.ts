import fc from 'fast-check';
import { SEGMENT_FRACTIONS } from '../../src/model/body';
import { CLUB_IDS } from '../../src/model/club';
import { DELIVERY_RULES } from '../../src/reading/delivery/delivery';
import {
  ARM_ANGLE_LIMITS_DEG,
  BALL_LIMITS,
  BAND_LIMIT_CM,
  CAMERA_LIMITS,
  edgeDial,
  MY_CLUB,
  SET_UP_LIMITS,
  USUAL_CAMERAS,
  type CameraPlace,
  type Document,
} from '../../src/store';
import { firstOf, toText } from '../../src/checking/text';
import { PLAN_LIMITS } from '../../src/store/document/chosenPlan';
import { SEEN_FROM, SEEN_LIMITS } from '../../src/store/document/sighting';

/** A number on steps between two limits. */
const stepped = (min: number, max: number, step: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: Math.round((max - min) / step) }).map((n) => Number((min + n * step).toFixed(4)));
const dial = (id: Parameters<typeof edgeDial>[0]): fc.Arbitrary<number> => {
  const { min, max, step } = edgeDial(id);
  return stepped(min, max, step);
};
const setUp = (id: keyof typeof SET_UP_LIMITS): fc.Arbitrary<number> =>
  stepped(SET_UP_LIMITS[id].min, SET_UP_LIMITS[id].max, 0.1);
const band = fc
  .tuple(stepped(-BAND_LIMIT_CM, BAND_LIMIT_CM, 0.1), stepped(-BAND_LIMIT_CM, BAND_LIMIT_CM, 0.1))
  .map(([a, b]) => ({ lowCm: Math.min(a, b), highCm: Math.max(a, b) }));

const player = fc
  .record({
    statureM: stepped(1.4, 2.1, 0.01),
    handed: fc.constantFrom('right' as const, 'left' as const),
    longer: fc.option(stepped(0.75, 1.25, 0.01), { nil: undefined }),
  })
  .map(({ statureM, handed, longer }) => ({
    statureM,
    handed,
    ...(longer === undefined
      ? {}
      : { segmentsM: { upperArm: SEGMENT_FRACTIONS.upperArm * statureM * longer, shank: 0.246 * statureM * longer } }),
  }));

const club = fc.record({
  id: fc.constantFrom(...CLUB_IDS, MY_CLUB),
  my: fc.option(
    fc.record({
      name: fc.string({ unit: 'grapheme', maxLength: 30 }).filter((name) => name.length <= 60),
      kind: fc.constantFrom('driver' as const, 'wood' as const, 'iron' as const, 'wedge' as const),
      lengthM: stepped(0.46, 1.21, 0.001),
      lieDeg: stepped(45, 80, 0.5),
      loftDeg: stepped(5, 70, 0.5),
      gripTurnDeg: stepped(-20, 20, 1),
    }),
    { nil: null },
  ),
});

const sighting = fc.option(
  fc.record({
    cm: stepped(SEEN_LIMITS.cm.min, SEEN_LIMITS.cm.max, 0.1),
    plusMinusCm: stepped(SEEN_LIMITS.plusMinusCm.min, SEEN_LIMITS.plusMinusCm.max, 0.1),
    from: fc.constantFrom(...SEEN_FROM),
  }),
  { nil: null },
);

const tripod = (id: keyof CameraPlace, step: number): fc.Arbitrary<number> =>
  stepped(CAMERA_LIMITS[id].min, CAMERA_LIMITS[id].max, step);
const cameraPlace = fc.record({
  distanceM: tripod('distanceM', 0.1),
  heightM: tripod('heightM', 0.05),
  rightCm: tripod('rightCm', 1),
  aimRightDeg: tripod('aimRightDeg', 0.5),
  clockwiseDeg: tripod('clockwiseDeg', 0.5),
  fieldDeg: tripod('fieldDeg', 1),
});

const movements = fc.record({
  leadWristFlexionDeg: dial('leadWristFlexion'),
  rotationRate: dial('rotationRate'),
  rotationDelayMs: dial('rotationDelay'),
  trailSideBendDeg: dial('trailSideBend'),
  pelvisShiftCm: dial('pelvisShift'),
  pelvis: fc.option(fc.record({ rate: dial('pelvisRate'), delayMs: dial('pelvisDelay') }), { nil: null }),
});

/** Words as a coach types them, cut as the fields cut them. */
const typed = (longest: number): fc.Arbitrary<string> =>
  fc.string({ unit: 'grapheme', maxLength: Math.min(longest, 40) }).map((text) => firstOf(toText(text), longest));
const target = fc.option(stepped(-80, 80, 0.01), { nil: null });

/** Any plan that can be chosen and written down. */
const plans = fc.record({
  id: fc.stringMatching(/^[0-9a-z]{16}$/),
  from: movements,
  movements,
  targetCm: fc.record({ leadArmParallel: target, shaftParallel: target }),
  feel: typed(PLAN_LIMITS.feel),
  drills: fc.array(
    fc.record({
      name: typed(PLAN_LIMITS.drillName),
      how: typed(PLAN_LIMITS.drillHow),
      often: typed(PLAN_LIMITS.drillOften),
    }),
    { maxLength: PLAN_LIMITS.drills },
  ),
  cautions: fc.array(typed(PLAN_LIMITS.caution), { maxLength: 3 }),
  words: typed(PLAN_LIMITS.words),
  nextDate: fc.constantFrom(null, '2026-12-02', '2028-02-29'),
  names: fc.record({
    player: fc.option(typed(PLAN_LIMITS.name), { nil: null }),
    coach: fc.option(typed(PLAN_LIMITS.name), { nil: null }),
  }),
});

/** Any document the screens can make. */
export const documents: fc.Arbitrary<Document> = fc.record({
  version: fc.constant(3 as const),
  player,
  club,
  movements,
  setUp: fc.record({
    handDepthCm: setUp('handDepthCm'),
    handHeightCm: setUp('handHeightCm'),
    turnDeg: setUp('turnDeg'),
    wristSetDeg: setUp('wristSetDeg'),
    downswingMs: setUp('downswingMs'),
  }),
  bands: fc.record({ leadArmParallel: band, shaftParallel: band }),
  checkpointArmDeg: stepped(ARM_ANGLE_LIMITS_DEG.min, ARM_ANGLE_LIMITS_DEG.max, 1),
  ball: fc.record(
    {
      rule: fc.constantFrom(...DELIVERY_RULES),
      faceReturned: stepped(0, 1, 0.05),
      tailWindMps: stepped(BALL_LIMITS.tailWindMps.min, BALL_LIMITS.tailWindMps.max, 0.5),
      crossWindMps: stepped(BALL_LIMITS.crossWindMps.min, BALL_LIMITS.crossWindMps.max, 0.5),
      altitudeM: stepped(BALL_LIMITS.altitudeM.min, BALL_LIMITS.altitudeM.max, 10),
    },
    { requiredKeys: ['rule', 'tailWindMps', 'crossWindMps', 'altitudeM'] },
  ),
  units: fc.record({
    length: fc.constantFrom('cm' as const, 'in' as const),
    speed: fc.constantFrom('m/s' as const, 'km/h' as const, 'mph' as const),
  }),
  board: fc.constantFrom('light' as const, 'dark' as const),
  seen: fc.record({ leadArmParallel: sighting, shaftParallel: sighting }),
  plan: fc.option(plans, { nil: null }),
  camera: fc.oneof(fc.constant(USUAL_CAMERAS), fc.record({ downTheLine: cameraPlace, faceOn: cameraPlace })),
});
