// Prints published numbers about swings beside those of the reference swings, and what each of ours may claim.
// "set": typed in (seed.ts) and never fitted. "calibrated": the fit asks for it, or it follows from what the fit asks for.
// "steered": not asked for itself, but goals or typed landmarks around it largely decide it.
// "predicted": nothing in the fit asks for it. Only these rows are validation.
import { rad, toDeg } from '../src/math/angle';
import { bodyOf } from '../src/model/body';
import { CLUB_IDS, CLUBS, clubOf, type ClubId } from '../src/model/club';
import { createJointVector, J } from '../src/model/joints';
import { K } from '../src/model/keys';
import { DIALS, STILL, type MovementId } from '../src/model/movements';
import { AT, createPose } from '../src/model/pose';
import { findLeadArmParallel, findShaftParallel, isReached, readCheckpoints } from '../src/reading/checkpoints';
import { deliver, strikeOf } from '../src/reading/delivery/delivery';
import { bicepGap, headDepth, shaftPlane } from '../src/reading/readings';
import { createSwing, headVelocityAt, swingJoints, swingPose, withMovements, type Swing } from '../src/reading/swing';
import { factsHold } from '../src/solving/reference/tradeFacts';
import { solveReference, solveReferenceFrom } from '../src/solving/reference/reference';
import { seedReference } from '../src/solving/reference/seed';
import { shippedSwings } from '../src/solving/reference/shipped';
import { peakSpeeds } from '../src/solving/reference/speeds';
import { printBall } from './validate/ball';

type Use = 'set' | 'calibrated' | 'steered' | 'predicted';
/** What, published mean and spread (NaN: none given), unit, ours, what ours may claim, source. */
type Row = readonly [string, number, number, string, number, Use, string];

const joints = createJointVector();
const pose = createPose();
const velocity = new Float64Array(3);

const swingOf = (statureM: number, id: ClubId): Swing => {
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  return createSwing(body, club, solveReference(body, club).reference);
};

const jointDeg = (swing: Swing, joint: number, t: number): number => {
  swingJoints(swing, t, joints);
  return toDeg(joints[joint]);
};

const rateDeg = (swing: Swing, joint: number, t: number): number =>
  (jointDeg(swing, joint, t + 1e-4) - jointDeg(swing, joint, t - 1e-4)) / 2e-4;

function handSpeed(swing: Swing, t: number): number {
  swingPose(swing, t - 1e-4, pose);
  const before = pose.slice(AT.leadGrip, AT.leadGrip + 3);
  swingPose(swing, t + 1e-4, pose);
  return Math.hypot(...before.map((v, i) => v - pose[AT.leadGrip + i])) / 2e-4;
}

function headSpeed(swing: Swing, t: number): number {
  headVelocityAt(swing, t, velocity);
  return Math.hypot(...velocity);
}

/** How far the line through both shoulders has turned, seen from above, deg. Zero: along the target line. */
function shoulderLineDeg(swing: Swing, t: number): number {
  swingPose(swing, t, pose);
  const [lead, trail] = [AT.leadShoulder, AT.trailShoulder];
  return toDeg(Math.atan2(pose[trail + 2] - pose[lead + 2], pose[lead] - pose[trail]));
}

/** Inclination of the plane in which the lead arm moves at time `t`, deg to the ground. */
function armPlaneDeg(swing: Swing, t: number): number {
  swingPose(swing, t - 1e-3, pose);
  const a = pose.slice(AT.armDirection, AT.armDirection + 3);
  swingPose(swing, t + 1e-3, pose);
  const b = pose.slice(AT.armDirection, AT.armDirection + 3);
  const n = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  return toDeg(Math.acos(Math.abs(n[1]) / Math.hypot(...n)));
}

/** Side bend of the thorax measured after its turn, deg: how a published side bend is taken. */
function sideBendDeg(swing: Swing, t: number): number {
  swingPose(swing, t, pose);
  return toDeg(Math.asin(pose[AT.thoraxAxes + 1]));
}

const CHEETHAM_08 = 'Cheetham et al. 2008';
const CHEETHAM_14 = 'Cheetham 2014';
const MCTEIGUE = 'McTeigue 1994; spread assumed';
const WHEARE = 'Wheare et al. 2021';
const BOURGAIN = 'Bourgain et al. 2022';
const RECORDING = 'CMU motion capture 64_01, mocap.cs.cmu.edu, one player';

function rows(swing: Swing, id: ClubId): Row[] {
  const { times } = swing.reference;
  const impact = times[K.impact];
  const address = times[K.address];
  const peaks = peakSpeeds(swing);
  const at = (joint: number, t: number): number => jointDeg(swing, joint, t);
  const cocked = at(J.leadWristRadial, 0);
  const ms = (s: number): number => s * 1000;
  const early = armPlaneDeg(swing, 0.3 * impact);
  const late = armPlaneDeg(swing, 0.95 * impact);
  const shoulders = Math.abs(shoulderLineDeg(swing, 0) - at(J.pelvisTurn, 0));
  const supination = -rateDeg(swing, J.leadArmRoll, impact);
  const [speed, spread] = id === 'driver' ? [45.4, 3.6] : [35.75, 0.975];
  const speedSource = id === 'driver' ? `${BOURGAIN}, skilled men` : `${BOURGAIN}, irons 33.8 to 37.7 read as 2 SD`;
  return [
    ['downswing, top to impact', 250, 20, 'ms', ms(impact), 'set', `${BOURGAIN}, recreational men; skilled 310 +- 40`],
    ['trunk bend, address', 30.5, 2.25, 'deg', at(J.trunkBend, address), 'calibrated', '26 to 35 read as 2 SD'],
    ['pelvis turn, top', -41.5, 3, 'deg', at(J.pelvisTurn, 0), 'set', MCTEIGUE],
    ['pelvis turn, impact', 41, 9, 'deg', at(J.pelvisTurn, impact), 'set', CHEETHAM_14],
    ['thorax turn, top', -84.5, 5, 'deg', at(J.thoraxTurn, 0), 'calibrated', MCTEIGUE],
    ['shoulder line against pelvis, top', 50, NaN, 'deg', shoulders, 'calibrated', 'Myers et al. 2008, 44 to 59'],
    ['lead-arm adduction, top', 58, 1, 'deg', at(J.leadArmAdduction, 0), 'calibrated', RECORDING],
    ['thorax turn, impact', 27, 9, 'deg', at(J.thoraxTurn, impact), 'calibrated', CHEETHAM_14],
    ['thorax side bend, impact', 31, 5, 'deg', sideBendDeg(swing, impact), 'calibrated', CHEETHAM_14],
    ['wrist flexion, address', -21, 12, 'deg', at(J.leadWristFlexion, address), 'calibrated', WHEARE],
    ['wrist flexion, top', -11, 20, 'deg', at(J.leadWristFlexion, 0), 'calibrated', WHEARE],
    ['wrist flexion, impact', 1, 14, 'deg', at(J.leadWristFlexion, impact), 'calibrated', WHEARE],
    ['cocking, address to top', 37, NaN, 'deg', cocked - at(J.leadWristRadial, address), 'calibrated', WHEARE],
    ['uncocking, top to impact', 48, NaN, 'deg', cocked - at(J.leadWristRadial, impact), 'calibrated', WHEARE],
    ['peak speed, pelvis', 477, 53, 'deg/s', toDeg(peaks.pelvis.speed), 'set', CHEETHAM_08],
    ['peak speed, thorax', 727, 61, 'deg/s', toDeg(peaks.thorax.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, lead arm', 980, 68, 'deg/s', toDeg(peaks.leadArm.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, shaft', 2254, 68, 'deg/s', toDeg(peaks.shaft.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, shaft', 2413, 442, 'deg/s', toDeg(peaks.shaft.speed), 'calibrated', 'Zheng et al. 2008'],
    ['pelvis peak before impact', 87, NaN, 'ms', ms(peaks.pelvis.beforeImpact), 'set', CHEETHAM_08],
    ['thorax peak before impact', 68, NaN, 'ms', ms(peaks.thorax.beforeImpact), 'steered', CHEETHAM_08],
    ['lead arm peak before impact', 65, NaN, 'ms', ms(peaks.leadArm.beforeImpact), 'steered', CHEETHAM_08],
    ['shaft peak before impact', 0, NaN, 'ms', ms(peaks.shaft.beforeImpact), 'steered', CHEETHAM_08],
    ['head speed, impact', speed, spread, 'm/s', headSpeed(swing, impact), 'calibrated', speedSource],
    [
      'hand speed, impact',
      7.5,
      0.25,
      'm/s',
      handSpeed(swing, impact),
      'calibrated',
      'Nesbit 2005, 4 golfers, range as 2 SD',
    ],
    ['lead forearm supination, impact', 1569, 338, 'deg/s', supination, 'predicted', CHEETHAM_14],
    ['lead-arm plane, early downswing', 47, NaN, 'deg', early, 'steered', 'Coleman & Rankin 2005'],
    ['lead-arm plane, late downswing', 78, NaN, 'deg', late, 'predicted', 'Coleman & Rankin 2005'],
    ...armParallelRows(swing),
  ];
}

/** One open recording of one player of unknown skill, at lead arm level: a plausibility check, not a target. */
function armParallelRows(swing: Swing): Row[] {
  const { leadArmParallel } = readCheckpoints(swing, 0);
  if (!isReached(leadArmParallel)) return [];
  const { t } = leadArmParallel;
  swingPose(swing, t, pose);
  const aim = toDeg(Math.atan2(pose[AT.armDirection + 2], -pose[AT.armDirection]));
  const row = (what: string, mean: number, spread: number, ours: number, use: Use = 'calibrated'): Row => {
    return [`P5: ${what}`, mean, spread, 'deg', ours, use, RECORDING];
  };
  return [
    row('thorax turn', -46.5, 1.25, jointDeg(swing, J.thoraxTurn, t)),
    row('pelvis turn', -16, NaN, jointDeg(swing, J.pelvisTurn, t), 'set'),
    row('trunk tilt', 9, NaN, jointDeg(swing, J.trunkTilt, t)),
    row('trunk bend', 28, NaN, jointDeg(swing, J.trunkBend, t)),
    row('lead-arm adduction', 51, NaN, jointDeg(swing, J.leadArmAdduction, t)),
    row('lead-arm elevation', -1.5, 2.75, jointDeg(swing, J.leadArmElevation, t)),
    row('lead arm, seen from above, off the target line', 0, 3.5, aim),
  ];
}

function judge([, mean, sd, , ours]: Row): string {
  if (Number.isNaN(sd)) return `${ours >= mean ? '+' : ''}${(ours - mean).toFixed(0)} from the mean`;
  const away = (ours - mean) / sd;
  return Math.abs(away) <= 2 ? 'inside 2 SD' : `DEVIATES by ${away.toFixed(1)} SD`;
}

for (const id of ['7-iron', 'driver'] as const) {
  console.log(`\nReference swing, 1.78 m, ${id}. Only "predicted" is validation.`);
  const title = [
    'quantity'.padEnd(50),
    'published'.padStart(14),
    'ours'.padStart(8),
    ' unit   use         verdict; source',
  ];
  console.log(title.join(' '));
  for (const r of rows(swingOf(1.78, id), id)) {
    const [what, mean, sd, unit, ours, use, source] = r;
    const range = Number.isNaN(sd) ? `${mean}` : `${mean} +- ${sd}`;
    const row = [what.padEnd(50), range.padStart(14), ours.toFixed(1).padStart(8), unit.padEnd(6), use.padEnd(11)];
    console.log(`${row.join(' ')} ${judge(r)}${Number.isNaN(sd) ? ', no spread given' : ''}; ${source}`);
  }
}

console.log(
  '\nSlope of the plane over the impact zone: wedge > iron > driver (Kwon et al. 2012, order only; predicted)',
);
const slopes = (['sand wedge', '7-iron', 'driver'] as const).map((id) => {
  const swing = swingOf(1.78, id);
  const checkpoints = readCheckpoints(swing);
  const { delivery } = deliver(swing, checkpoints, strikeOf(swing, checkpoints)!);
  return `${id} ${'missing' in delivery ? delivery.missing : toDeg(delivery.planeTilt).toFixed(1)}`;
});
console.log('  ' + slopes.join(' deg, ') + ' deg');

console.log('\nToe up at impact, deg (asked for: level, with a spread of 2.2). More than 10:');
const shipped = shippedSwings().map(({ statureM, club }) => ({ statureM, id: club as ClubId }));
const toes = shipped.map(({ statureM, id }) => {
  const swing = swingOf(statureM, id);
  swingPose(swing, swing.reference.times[K.impact], pose);
  return { name: `${statureM} m ${id}`, toe: toDeg(Math.asin(pose[AT.toeDirection + 1])) };
});
console.log('  ' + toes.flatMap(({ name, toe }) => (toe > 10 ? [`${name} ${toe.toFixed(1)}`] : [])).join(', '));

/** Trade facts (common practice, no source): +1 when more of the movement raises the readings. */
const SENSES: { readonly [id in MovementId]?: 1 | -1 } = {
  trailTilt: -1,
  rotationDelay: -1,
  rotationRate: 1,
  leadWristFlexion: -1,
};
const FACT_DIALS = DIALS.filter(({ id }) => SENSES[id] !== undefined);
const READINGS = ['bicep gap P5', 'shaft plane P5', 'head depth P6'] as const;
/** No trade fact speaks of what a turn does to the shaft plane. */
const speaks = (id: MovementId, reading: number): boolean => reading !== 1 || !id.startsWith('rotation');

/** Gap (cm), shaft plane (deg) and head depth (cm) with one dial at `value`; NaN where a checkpoint is not reached. */
function factReadings(swing: Swing, id: MovementId, value: number, armDeg: number): [number, number, number] {
  const moved = withMovements(swing, { ...STILL, [id]: value });
  const arm = findLeadArmParallel(moved, rad(armDeg));
  if ('missing' in arm) return [NaN, NaN, NaN];
  swingPose(moved, arm.t, pose);
  const [gap, plane] = [100 * bicepGap(pose), toDeg(shaftPlane(pose))];
  const shaft = findShaftParallel(moved, arm.t);
  if ('missing' in shaft) return [gap, plane, NaN];
  swingPose(moved, shaft.t, pose);
  return [gap, plane, 100 * headDepth(pose)];
}

/** Change of every reading from step to step in the sense of the fact: positive everywhere when the fact holds. */
function factSteps(swing: Swing, id: MovementId, from: number, to: number, count: number, armDeg = -10): number[][] {
  const all = Array.from({ length: count + 1 }, (_, i) =>
    factReadings(swing, id, from + ((to - from) * i) / count, armDeg),
  );
  return READINGS.map((_, k) => all.slice(1).map((after, i) => SENSES[id]! * (after[k] - all[i][k])));
}

console.log('\nTrade facts with and without asking for them in the fit (common practice, no source).');
console.log(
  'Usual range in steps of a quarter of it, reading angle -10. The fit asks for at least 0.3 deg of shaft plane',
);
console.log(
  'a step of tilt. Where shipped swings just meet a least size, that size is calibrated, and its sign with it.',
);
const signs = new Map<string, { wrong: number; least: number[]; share: number[] }>();
let held = 0;
let wrongSomewhere = 0;
for (const { statureM, id } of shipped) {
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  const free = createSwing(body, club, solveReferenceFrom(body, club, seedReference(body), false).reference);
  const kept = swingOf(statureM, id);
  let isWrong = false;
  for (const { id: dial, usualMin, usualMax } of FACT_DIALS) {
    const unasked = factSteps(free, dial, usualMin, usualMax, 4);
    const asked = factSteps(kept, dial, usualMin, usualMax, 4);
    for (const [k, reading] of READINGS.entries()) {
      if (!speaks(dial, k)) continue;
      const name = `${dial.padEnd(17)}${reading}`;
      const sum = (steps: readonly number[]): number => steps.reduce((a, b) => a + b, 0);
      const seen = signs.get(name) ?? { wrong: 0, least: [], share: [] };
      const fails = !unasked[k].every((step) => step > 0);
      if (fails) isWrong = true;
      seen.wrong += fails ? 1 : 0;
      seen.least.push(Math.min(...asked[k]));
      seen.share.push(sum(unasked[k]) / sum(asked[k]));
      signs.set(name, seen);
    }
  }
  if (isWrong) wrongSomewhere++;
  if (factsHold(free)) held++;
}
for (const [name, { wrong, least, share }] of signs) {
  const [low, middle, high] = [0, share.length >> 1, share.length - 1].map((i) => share.toSorted((a, b) => a - b)[i]);
  console.log(
    `  ${name.padEnd(33)} wrong sign unasked: ${String(wrong).padStart(2)} of ${shipped.length}` +
      `   least step as shipped: ${Math.min(...least).toFixed(2)} to ${Math.max(...least).toFixed(2)}` +
      `   whole change unasked/shipped: ${low.toFixed(2)}, median ${middle.toFixed(2)}, ${high.toFixed(2)}`,
  );
}
console.log(`  Unasked from the seed: all hold with room to spare for ${held} of ${shipped.length} players and clubs,`);
console.log(
  `  ${wrongSomewhere} have a wrong sign somewhere. For the ${shipped.length - held} that do not hold with room the fit asks, for every fact at once.`,
);

console.log('\nTrade facts over the sliders, in steps of a quarter of a slider step: where they fail.');
const BETWEEN_M = [1.4, 1.46, 1.56, 1.58, 1.66, 1.745, 1.9, 1.99, 2.1];
const between = CLUB_IDS.flatMap((id) => BETWEEN_M.map((statureM) => ({ statureM, id })));
for (const [group, players] of [
  ['shipped', shipped],
  ['solved between and beyond', between],
] as const) {
  const swings = players.map(({ statureM, id }) => ({ name: `${statureM} m ${id}`, swing: swingOf(statureM, id) }));
  for (const { id, min, max, usualMin, usualMax, step, edgeUnit } of FACT_DIALS) {
    for (const armDeg of [0, -10, -20]) {
      const count = Math.round((4 * (max - min)) / step);
      const tried = swings.map(({ name, swing }) => ({ name, steps: factSteps(swing, id, min, max, count, armDeg) }));
      for (const [k, reading] of READINGS.entries()) {
        if (!speaks(id, k)) continue;
        const inUse = (i: number): boolean =>
          min + (i * step) / 4 > usualMin - step / 8 && min + ((i + 1) * step) / 4 < usualMax + step / 8;
        const bad = tried.map(({ name, steps }) => ({
          name,
          at: steps[k].flatMap((change, i) => (change > 0 ? [] : [i])),
        }));
        const usual = bad.filter(({ at }) => at.some(inUse));
        const anywhere = bad.filter(({ at }) => at.length > 0);
        if (anywhere.length === 0) continue;
        const edges = anywhere
          .flatMap(({ at }) => [at[0], at.at(-1)! + 1])
          .map((i) => (min + (i * step) / 4) / edgeUnit);
        console.log(
          `  ${group}: ${id}, ${reading}, reading angle ${armDeg}: ${usual.length} of ${bad.length} in the usual range, ` +
            `${anywhere.length} on the whole slider (from ${Math.min(...edges).toFixed(2)} to ${Math.max(...edges).toFixed(2)})` +
            (usual.length > 0 && usual.length < 5 ? `: ${usual.map(({ name }) => name).join(', ')}` : ''),
        );
      }
    }
  }
}

printBall();
