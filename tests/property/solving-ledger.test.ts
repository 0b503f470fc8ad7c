import { expect, test } from 'vitest';
import type { MovementGroup, Movements } from '../../src/model/movements';
import type { CheckpointId, ReadingId } from '../../src/reading/checkpoints';
import { withMovements, type Swing } from '../../src/reading/swing';
import { PARTS, solveContributions } from '../../src/solving/diagnosis/contributions';
import { askReading, type Answer, type Question } from '../../src/solving/diagnosis/question';
import { createRandom } from '../reference/random';
import { randomMovements, referenceSwing } from '../reference/solvingPlayers';

const ORDERS: readonly (readonly MovementGroup[])[] = [
  ['leadWrist', 'rotation', 'sideTilt'],
  ['leadWrist', 'sideTilt', 'rotation'],
  ['rotation', 'leadWrist', 'sideTilt'],
  ['rotation', 'sideTilt', 'leadWrist'],
  ['sideTilt', 'leadWrist', 'rotation'],
  ['sideTilt', 'rotation', 'leadWrist'],
];
const FIELDS: Readonly<Record<MovementGroup, readonly (keyof Movements)[]>> = {
  leadWrist: ['leadWristFlexion'],
  rotation: ['rotationRate', 'rotationDelay'],
  sideTilt: ['trailSideBend', 'pelvisShift'],
};
const READINGS: readonly (readonly [CheckpointId, ReadingId])[] = [
  ['leadArmParallel', 'bicepGap'],
  ['leadArmParallel', 'shaftPlane'],
  ['leadArmParallel', 'handDepth'],
  ['shaftParallel', 'headDepth'],
  ['shaftParallel', 'planeDirection'],
  ['shaftParallel', 'faceToVertical'],
];

/** Remembers what was answered, so that a second look at the same swing costs nothing. */
function remember(ask: Question): Question {
  const answers = new Map<string, Answer>();
  return (swing) => {
    const key = JSON.stringify(swing.movements);
    const answer = answers.get(key) ?? ask(swing);
    answers.set(key, answer);
    return answer;
  };
}

function numberOf(ask: Question, swing: Swing): number {
  const answer = ask(swing);
  if ('missing' in answer) throw new Error(answer.missing);
  return answer.value;
}

/** One movement, copied from one set of movements into another. */
const copy = (group: MovementGroup, from: Movements, into: Movements): Movements => ({
  ...into,
  ...Object.fromEntries(FIELDS[group].map((field) => [field, from[field]])),
});

test('on 10,000 pairs of swings the shares sum to the difference and are the mean over every order of making the changes', () => {
  const random = createRandom(11);
  const swing = referenceSwing();
  let answered = 0;
  for (let i = 0; i < 10_000; i++) {
    const a = randomMovements(random);
    let b = randomMovements(random);
    // Every third pair shares a movement: its share has to be exactly nothing.
    const same = i % 3 === 0 ? ORDERS[i % 6][0] : undefined;
    if (same) b = copy(same, a, b);
    const [at, reading] = READINGS[i % READINGS.length];
    const ask = remember(askReading(at, reading));
    const result = solveContributions(withMovements(swing, a), withMovements(swing, b), ask);
    if ('missing' in result) continue;
    answered++;
    const { from, to, parts } = result;
    const sum = PARTS.reduce((total, part) => total + parts[part], 0);
    if (!(Math.abs(sum - (to - from)) < 1e-9)) expect.fail(`pair ${i}: sums to ${sum}, not ${to - from}`);
    if (same && parts[same] !== 0) expect.fail(`pair ${i}: ${same} is the same and owes ${parts[same]}`);
    const mean: Record<MovementGroup, number> = { leadWrist: 0, rotation: 0, sideTilt: 0 };
    for (const order of ORDERS) {
      let movements = a;
      for (const group of order) {
        const next = copy(group, b, movements);
        const change = numberOf(ask, withMovements(swing, next)) - numberOf(ask, withMovements(swing, movements));
        mean[group] += change / ORDERS.length;
        movements = next;
      }
    }
    for (const group of ORDERS[0]) {
      if (!(Math.abs(mean[group] - parts[group]) < 1e-12)) {
        expect.fail(`pair ${i}: ${group} owes ${parts[group]}, ${mean[group]} over all orders`);
      }
    }
  }
  expect(answered).toBeGreaterThan(9_900);
}, 60_000);

test('going back, every share turns its sign', () => {
  const random = createRandom(12);
  const swing = referenceSwing();
  const ask = askReading('shaftParallel', 'headDepth');
  for (let i = 0; i < 200; i++) {
    const a = withMovements(swing, randomMovements(random));
    const b = withMovements(swing, randomMovements(random));
    const there = solveContributions(a, b, ask);
    const back = solveContributions(b, a, ask);
    if ('missing' in there || 'missing' in back) throw new Error('never parallel');
    for (const part of PARTS) expect(back.parts[part]).toBeCloseTo(-there.parts[part], 12);
  }
});
