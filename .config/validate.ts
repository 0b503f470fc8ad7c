// Compares the reference swings with published swings and prints a table: quantity, published, ours, and what the number may claim.
// "calibrated": the fit leans on it. "predicted": it was not used; only these rows say something about the model.
import { toDeg } from '../src/math/angle';
import { bodyOf } from '../src/model/body';
import { CLUB_IDS, CLUBS, clubOf, type ClubId } from '../src/model/club';
import { createJointVector, J } from '../src/model/joints';
import { K } from '../src/model/keys';
import { AT, createPose } from '../src/model/pose';
import { isReached, readCheckpoints } from '../src/reading/checkpoints';
import { deliver, strikeOf } from '../src/reading/delivery';
import { createSwing, swingJoints, swingPose, type Swing } from '../src/reading/swing';
import { factsHold } from '../src/solving/downswingFit';
import { solveReference, solveReferenceFrom } from '../src/solving/reference';
import { seedReference } from '../src/solving/seed';
import { peakSpeeds } from '../src/solving/speeds';

interface Row {
  readonly what: string;
  readonly published: readonly [mean: number, sd: number];
  readonly unit: string;
  readonly ours: number;
  readonly use: 'calibrated' | 'predicted';
  readonly source: string;
}

const joints = createJointVector();
const pose = createPose();

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

function rows(swing: Swing): Row[] {
  const { times } = swing.reference;
  const impact = times[K.impact];
  const address = times[K.address];
  const peaks = peakSpeeds(swing);
  const at = (joint: number, t: number): number => jointDeg(swing, joint, t);
  const ms = (s: number): number => s * 1000;
  const row = (
    what: string,
    published: readonly [number, number],
    unit: string,
    ours: number,
    use: Row['use'],
    source: string,
  ): Row => ({ what, published, unit, ours, use, source });
  return [
    row('pelvis turn, top', [-41.5, 3], 'deg', at(J.pelvisTurn, 0), 'calibrated', 'McTeigue 1994; spread assumed'),
    row('pelvis turn, impact', [41, 9], 'deg', at(J.pelvisTurn, impact), 'calibrated', 'Cheetham 2014'),
    row('thorax turn, top', [-84.5, 5], 'deg', at(J.thoraxTurn, 0), 'calibrated', 'McTeigue 1994; spread assumed'),
    row('thorax turn, impact', [27, 9], 'deg', at(J.thoraxTurn, impact), 'calibrated', 'Cheetham 2014'),
    row('thorax side bend, impact', [31, 5], 'deg', sideBendDeg(swing, impact), 'calibrated', 'Cheetham 2014'),
    row(
      'wrist flexion, address',
      [-21, 12],
      'deg',
      at(J.leadWristFlexion, address),
      'calibrated',
      'Wheare et al. 2021',
    ),
    row('wrist flexion, top', [-11, 20], 'deg', at(J.leadWristFlexion, 0), 'calibrated', 'Wheare et al. 2021'),
    row('wrist flexion, impact', [1, 14], 'deg', at(J.leadWristFlexion, impact), 'calibrated', 'Wheare et al. 2021'),
    row(
      'cocking, address to top',
      [37, NaN],
      'deg',
      at(J.leadWristRadial, 0) - at(J.leadWristRadial, address),
      'calibrated',
      'Wheare et al. 2021, no spread given',
    ),
    row(
      'uncocking, top to impact',
      [48, NaN],
      'deg',
      at(J.leadWristRadial, 0) - at(J.leadWristRadial, impact),
      'predicted',
      'Wheare et al. 2021, no spread given',
    ),
    row('peak speed, pelvis', [477, 53], 'deg/s', toDeg(peaks.pelvis.speed), 'calibrated', 'Cheetham et al. 2008'),
    row('peak speed, thorax', [727, 61], 'deg/s', toDeg(peaks.thorax.speed), 'calibrated', 'Cheetham et al. 2008'),
    row('peak speed, lead arm', [980, 68], 'deg/s', toDeg(peaks.leadArm.speed), 'calibrated', 'Cheetham et al. 2008'),
    row('peak speed, shaft', [2254, 68], 'deg/s', toDeg(peaks.shaft.speed), 'calibrated', 'Cheetham et al. 2008'),
    row(
      'pelvis peak before impact',
      [87, NaN],
      'ms',
      ms(peaks.pelvis.beforeImpact),
      'predicted',
      'Cheetham et al. 2008, no spread given',
    ),
    row(
      'thorax peak before impact',
      [68, NaN],
      'ms',
      ms(peaks.thorax.beforeImpact),
      'predicted',
      'Cheetham et al. 2008, no spread given',
    ),
    row(
      'lead arm peak before impact',
      [65, NaN],
      'ms',
      ms(peaks.leadArm.beforeImpact),
      'predicted',
      'Cheetham et al. 2008, no spread given',
    ),
    row(
      'shaft peak before impact',
      [0, NaN],
      'ms',
      ms(peaks.shaft.beforeImpact),
      'predicted',
      'Cheetham et al. 2008, no spread given',
    ),
    row(
      'lead forearm supination, impact',
      [1569, 338],
      'deg/s',
      -rateDeg(swing, J.leadArmRoll, impact),
      'predicted',
      'Cheetham 2014',
    ),
    row(
      'hand speed, impact',
      [7.5, 0.25],
      'm/s',
      handSpeed(swing, impact),
      'predicted',
      'Nesbit 2005, four golfers, range read as 2 SD',
    ),
    row(
      'lead-arm plane, early downswing',
      [47, NaN],
      'deg',
      armPlaneDeg(swing, 0.3 * impact),
      'predicted',
      'Coleman & Rankin 2005',
    ),
    row(
      'lead-arm plane, late downswing',
      [78, NaN],
      'deg',
      armPlaneDeg(swing, 0.95 * impact),
      'predicted',
      'Coleman & Rankin 2005',
    ),
    ...armParallelRows(swing),
  ];
}

/** One open recording of one player of unknown skill: a plausibility check, not a target. */
function armParallelRows(swing: Swing): Row[] {
  const { leadArmParallel } = readCheckpoints(swing, 0);
  if (!isReached(leadArmParallel)) return [];
  const { t } = leadArmParallel;
  swingPose(swing, t, pose);
  const aim = toDeg(Math.atan2(pose[AT.armDirection + 2], -pose[AT.armDirection]));
  const source = 'CMU motion capture 64_01, mocap.cs.cmu.edu, one player';
  const row = (what: string, mean: number, spread: number, ours: number): Row => ({
    what: `P5: ${what}`,
    published: [mean, spread],
    unit: 'deg',
    ours,
    use: 'calibrated',
    source,
  });
  return [
    row('thorax turn', -46.5, 1.5, jointDeg(swing, J.thoraxTurn, t)),
    row('pelvis turn', -16, NaN, jointDeg(swing, J.pelvisTurn, t)),
    row('trunk tilt', 9, NaN, jointDeg(swing, J.trunkTilt, t)),
    row('trunk bend', 28, NaN, jointDeg(swing, J.trunkBend, t)),
    row('lead-arm adduction', 51, NaN, jointDeg(swing, J.leadArmAdduction, t)),
    row('lead-arm elevation', -1.5, 3, jointDeg(swing, J.leadArmElevation, t)),
    row('lead arm, seen from above, off the target line', 0, 3.5, aim),
  ];
}

function judge({ published: [mean, sd], ours }: Row): string {
  if (Number.isNaN(sd)) return `${ours >= mean ? '+' : ''}${(ours - mean).toFixed(0)} from the mean`;
  const away = (ours - mean) / sd;
  return Math.abs(away) <= 2 ? 'inside 2 SD' : `DEVIATES by ${away.toFixed(1)} SD`;
}

for (const id of ['7-iron', 'driver'] as const) {
  console.log(`\nReference swing, 1.78 m, ${id}`);
  console.log(
    'quantity'.padEnd(50),
    'published'.padStart(14),
    'ours'.padStart(8),
    ' unit   use         verdict; source',
  );
  for (const r of rows(swingOf(1.78, id))) {
    const [mean, sd] = r.published;
    const range = Number.isNaN(sd) ? `${mean}` : `${mean} +- ${sd}`;
    console.log(
      r.what.padEnd(50),
      range.padStart(14),
      r.ours.toFixed(1).padStart(8),
      r.unit.padEnd(6),
      r.use.padEnd(11),
      `${judge(r)}; ${r.source}`,
    );
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

console.log('\nTrade facts without asking for them in the fit (common practice, no source)');
let held = 0;
let asked = 0;
for (const id of CLUB_IDS) {
  for (const statureM of [1.5, 1.62, 1.78, 1.93, 2.05]) {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[id]);
    const free = solveReferenceFrom(body, club, seedReference(body), false);
    asked++;
    if (factsHold(createSwing(body, club, free.reference))) held++;
  }
}
console.log(
  `  hold with room to spare for ${held} of ${asked} players and clubs; for the others the calibration asks for them in sign.`,
);
