import { MOVEMENT_GROUPS } from '../../src/model/movements';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { solveContributions } from '../../src/solving/diagnosis/contributions';
import { corridorRegions, solveCorridor } from '../../src/solving/diagnosis/corridor';
import { solveMatch } from '../../src/solving/diagnosis/match';
import { solvePlans } from '../../src/solving/diagnosis/plan';
import { askDelivery, askReading } from '../../src/solving/diagnosis/question';
import { createRandom } from '../reference/random';
import { fullReadings, playersOffPlane, randomMovements, referenceSwing } from '../reference/solvingPlayers';
import { withMovements } from '../../src/reading/swing';
import type { Session } from './table';

export const name = 'solving';

const COUNT = 40;
const players = playersOffPlane(COUNT, 71);
const reference = referenceSwing();
const random = createRandom(72);
const others = players.map((swing) => withMovements(swing, randomMovements(random)));
const sightings = others.map((swing) => {
  const [gap, depth] = fullReadings(withMovements(reference, swing.movements));
  return { leadArmParallel: { value: gap, plusMinus: 0.02 }, shaftParallel: { value: depth, plusMinus: 0.03 } };
});
const ask = askReading('shaftParallel', 'headDepth');

type Measured = { readonly ms: number; readonly slowMs: number; readonly evaluations: number };

/** Milliseconds of the median answer and of one that nineteen of twenty beat, and model evaluations of the mean answer. */
function measure(solve: (i: number) => { evaluations: number }, warmUp = 2): Measured {
  for (let i = 0; i < warmUp * COUNT; i++) solve(i % COUNT);
  let evaluations = 0;
  const times = Array.from({ length: COUNT }, (_, i) => {
    const start = performance.now();
    evaluations += solve(i).evaluations;
    return performance.now() - start;
  }).toSorted((a, b) => a - b);
  return { ms: times[COUNT >> 1], slowMs: times[Math.floor(0.95 * COUNT)], evaluations: evaluations / COUNT };
}

/** One map: the median and the slowest of seven. */
function measureMap(points: number): Measured {
  let evaluations = 0;
  const times = Array.from({ length: 7 }, (_, i) => {
    const start = performance.now();
    const swing = players[i];
    const map = solveCorridor({ swing, x: 'leadWristFlexion', y: 'rotationRate', columns: points, rows: points });
    corridorRegions(map, DEFAULT_BANDS);
    evaluations = map.evaluations;
    return performance.now() - start;
  }).toSorted((a, b) => a - b);
  return { ms: times[3], slowMs: times[6], evaluations };
}

export function run({ put }: Session): void {
  const putMeasured = (what: string, { ms, slowMs, evaluations }: Measured, goal: string): void =>
    put(
      { what, value: ms, unit: 'ms', goal },
      { what: `${what}, a slow one`, value: slowMs, unit: 'ms' },
      { what, value: evaluations, unit: 'readings' },
    );
  const ledger = measure((i) => solveContributions(players[i], others[i], ask), 50);
  putMeasured('ledger of a reading', ledger, 'at most 2');
  const speed = measure(
    (i) => solveContributions(players[i], others[i], askDelivery('headSpeed', { rule: 'held plane' })),
    5,
  );
  putMeasured('ledger of the head speed, with every delivery solved', speed, 'at most 20');
  const plan = measure((i) => solvePlans({ swing: players[i], allow: MOVEMENT_GROUPS }));
  putMeasured('all change plans of a swing', plan, 'at most 120');
  const match = measure((i) => solveMatch({ swing: reference, seen: sightings[i] }));
  putMeasured('all explanations of a sighting', match, 'at most 120');
  putMeasured('corridor map 16 x 16 with outlines', measureMap(16), 'at most 100');
  putMeasured('corridor map 64 x 64 with outlines', measureMap(64), 'at most 600');
}
