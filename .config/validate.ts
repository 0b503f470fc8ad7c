// Prints published numbers about swings beside those of the reference swings, and what each of ours may claim. Only predicted rows validate.
import { toDeg } from '../src/math/angle';
import { type ClubId } from '../src/model/club';
import { K } from '../src/model/keys';
import { AT, createPose } from '../src/model/pose';
import { readCheckpoints } from '../src/reading/checkpoints';
import { deliver, strikeOf } from '../src/reading/delivery/delivery';
import { swingPose } from '../src/reading/swing';
import { shippedSwings } from '../src/solving/reference/shipped';
import {
  ARM_ANGLES_DEG,
  createStrangers,
  FACT_DIALS,
  FACT_READINGS,
  factSteps,
  failingFacts,
  speaksOf,
  swingOfStranger,
} from '../tests/reference/facts';
import { publishedRows, recordingDifference, swingOf, type Row } from './validate/published';
import { ARM_HEIGHTS_DEG, compareWithRecording } from './validate/recording';
import { printBall } from './validate/ball';

const pose = createPose();

function judge([, mean, sd, , ours]: Row): string {
  if (Number.isNaN(sd)) return `${ours >= mean ? '+' : ''}${(ours - mean).toFixed(0)} from it, no spread given`;
  const away = (ours - mean) / sd;
  return Math.abs(away) <= 2 ? 'inside 2 SD' : `DEVIATES by ${away.toFixed(1)} SD`;
}

const CLUBS_SHOWN = ['7-iron', 'driver'] as const;
const tables = CLUBS_SHOWN.map((id) => ({ id, rows: publishedRows(swingOf(1.78, id), id) }));

const SLOPED = ['sand wedge', '7-iron', 'driver'] as const;
const slopes = SLOPED.map((id) => {
  const swing = swingOf(1.78, id);
  const checkpoints = readCheckpoints(swing);
  const { delivery } = deliver(swing, checkpoints, strikeOf(swing, checkpoints)!);
  return 'missing' in delivery ? NaN : toDeg(delivery.planeTilt);
});

const shipped = shippedSwings().map(({ statureM, club }) => ({
  name: `${statureM} m ${club}`,
  swing: swingOf(statureM, club as ClubId),
}));

/** Steps over a usual range. */
const STEPS = 8;
/** One row for each trade fact: for how many shipped players and clubs its sign is right at every reading angle. */
const facts = FACT_DIALS.flatMap(({ id, usualMin, usualMax }) =>
  FACT_READINGS.flatMap((reading, k) => {
    if (!speaksOf(id, k)) return [];
    const least: number[] = shipped.map(({ swing }) =>
      Math.min(...ARM_ANGLES_DEG.flatMap((armDeg) => factSteps(swing, id, [usualMin, usualMax], STEPS, armDeg)[k])),
    );
    return [{ id, reading, held: least.filter((step) => step > 0).length, least: Math.min(...least) }];
  }),
);

const all = tables.flatMap(({ rows }) => rows.map((row) => row[5]));
const count = (use: Row[5]): number => all.filter((one) => one === use).length;
const predicted = count('predicted') + slopes.length - 1 + facts.length;
console.log(
  `Predicted rows: ${predicted}. Of these ${count('predicted')} published numbers, ${slopes.length - 1} of a published order, ` +
    `${facts.length} trade facts in sign (common practice).`,
);
console.log(
  `Not validation: set ${count('set')}, calibrated ${count('calibrated')}, steered ${count('steered')} rows. Set: typed in. ` +
    'Calibrated: the fit asks for it. Steered: goals or typed landmarks around it largely decide it. Predicted: nothing asks for it.',
);

for (const { id, rows } of tables) {
  console.log(`\nReference swing, 1.78 m, ${id}.`);
  console.log(
    ['quantity'.padEnd(50), 'published'.padStart(14), 'ours'.padStart(8), ' unit   use         verdict; source'].join(
      ' ',
    ),
  );
  for (const r of rows) {
    const [what, mean, sd, unit, ours, use, source] = r;
    const range = Number.isNaN(sd) ? `${mean}` : `${mean} +- ${sd}`;
    const row = [what.padEnd(50), range.padStart(14), ours.toFixed(1).padStart(8), unit.padEnd(6), use.padEnd(11)];
    console.log(`${row.join(' ')} ${judge(r)}; ${source}`);
  }
}

console.log(
  '\nSlope of the plane over the impact zone: wedge > iron > driver (Kwon et al. 2012, order only); predicted',
);
console.log('  ' + slopes.map((slope, i) => `${SLOPED[i]} ${slope.toFixed(1)}`).join(' deg, ') + ' deg');

console.log(
  '\nDifference to an open recording (subject 64), deg: lead arm level, and adduction at the top. Before the shoulder blades were free:',
);
console.log('  7-iron root mean square 13.7, worst -29 (lead arm from above); driver 12.6, worst -27.');
for (const id of CLUBS_SHOWN) {
  const { angles, rootMeanSquare, worst } = recordingDifference(swingOf(1.78, id));
  const listed = angles.map(({ what, difference }) => `${what} ${difference.toFixed(0)}`).join(', ');
  console.log(`  ${id} root mean square ${rootMeanSquare.toFixed(1)}, worst ${worst.toFixed(0)}: ${listed}`);
}

console.log(
  '\nDifference to a second player of that database (subject 63) through the downswing, deg: at the top, then with the lead arm',
);
console.log(
  `  ${ARM_HEIGHTS_DEG.join(', ')} deg above level. Another body and an easy tempo: a plausibility check, not a target.`,
);
console.log('  Before the shoulder blades were free: 7-iron root mean square 14.1, worst -29; driver 14.4, worst -36.');
for (const id of CLUBS_SHOWN) {
  const { angles, rootMeanSquare, worst } = compareWithRecording(swingOf(1.78, id));
  console.log(`  ${id} root mean square ${rootMeanSquare.toFixed(1)}, worst ${worst.toFixed(0)}`);
  for (const { name, differences } of angles) {
    const cells = differences.map((d) => (d === undefined ? '-' : d.toFixed(0)).padStart(4));
    console.log(`    ${name.padEnd(32)}${cells.join('')}`);
  }
}

console.log(
  '\nLie as fitted and toe up at impact, deg (asked for: level, with a spread of 2.2). Toe up by more than 10:',
);
const toes = shipped.map(({ name, swing }) => {
  swingPose(swing, swing.reference.times[K.impact], pose);
  return { name, toe: toDeg(Math.asin(pose[AT.toeDirection + 1])), lie: toDeg(swing.reference.lie) };
});
const up = toes.flatMap(({ name, toe, lie }) =>
  toe > 10 ? [`${name} ${toe.toFixed(1)} (lie ${lie.toFixed(1)})`] : [],
);
console.log('  ' + (up.join(', ') || 'none'));
console.log(
  `  Lie changed by ${Math.min(...toes.map((t) => t.lie)).toFixed(1)} to ${Math.max(...toes.map((t) => t.lie)).toFixed(1)}.`,
);

console.log(
  '\nTrade facts (common practice, no source), usual range, read at 0, -10 and -20; predicted: no fit asks for them.',
);
for (const { id, reading, held, least } of facts) {
  console.log(
    `  ${id.padEnd(17)}${reading.padEnd(26)} right sign: ${held} of ${shipped.length} shipped; least change over an eighth of the range ${least.toFixed(2)}`,
  );
}
const strangers = createStrangers(2026, 200).map((stranger) => ({
  name: stranger.name,
  swing: swingOfStranger(stranger),
}));
const failing = strangers.flatMap(({ name, swing }) => failingFacts(swing, STEPS).map((fact) => `${name}: ${fact}`));
console.log(
  `  200 players and clubs that are not shipped: ${failing.length} failures${failing.map((f) => `\n    ${f}`).join('')}`,
);

console.log('\nBeyond the usual range, in steps of half a slider step: where trade facts fail.');
for (const [group, swings] of [
  ['shipped', shipped],
  ['not shipped', strangers.slice(0, 63)],
] as const) {
  for (const { id, min, max, step, edgeUnit } of FACT_DIALS) {
    for (const armDeg of ARM_ANGLES_DEG) {
      const steps = Math.round((2 * (max - min)) / step);
      const tried = swings.map(({ swing }) => factSteps(swing, id, [min, max], steps, armDeg));
      for (const [k, reading] of FACT_READINGS.entries()) {
        if (!speaksOf(id, k)) continue;
        const wrong = tried.map((one) => one[k].flatMap((change, i) => (change > 0 ? [] : [i])));
        const some = wrong.filter((at) => at.length > 0);
        if (some.length === 0) continue;
        const at = some.flat().map((i) => (min + ((i + 0.5) * step) / 2) / edgeUnit);
        const [low, high] = [
          at.filter((v) => v * edgeUnit < dialMiddle(min, max)),
          at.filter((v) => v * edgeUnit >= dialMiddle(min, max)),
        ];
        const ends = [
          ...(low.length > 0 ? [`below ${Math.max(...low).toFixed(2)}`] : []),
          ...(high.length > 0 ? [`above ${Math.min(...high).toFixed(2)}`] : []),
        ];
        console.log(
          `  ${group}: ${id}, ${reading}, read at ${armDeg}: ${some.length} of ${swings.length}, ${ends.join(' and ')}`,
        );
      }
    }
  }
}

function dialMiddle(min: number, max: number): number {
  return (min + max) / 2;
}

printBall();
