import { isRefused } from '../../src/flight/answer';
import { impactOf } from '../../src/flight/impact';
import { launchOf } from '../../src/flight/launch';
import { findFlight } from '../../src/flight/trajectory';
import type { Session } from './table';

export const name = 'impact and flight';

const DRIVER = launchOf({ ballSpeedMps: 74.65, launchDeg: 10.9, startDeg: 0, spinRpm: 2700, spinAxisDeg: 0 });
const STRIKE = { headSpeedMps: 45, dynamicLoftDeg: 12, faceDeg: 2, pathDeg: -1, attackDeg: 1, headMassKg: 0.2 };

/** Best of five rounds, microseconds a call: the least disturbed one. */
function measure(call: () => unknown, calls: number): number {
  let best = Infinity;
  for (let round = 0; round < 6; round++) {
    const start = performance.now();
    for (let i = 0; i < calls; i++) call();
    const each = ((performance.now() - start) * 1000) / calls;
    if (round > 0) best = Math.min(best, each);
  }
  return best;
}

/** A track is worked out when it is asked for. */
function trackOfDrive(): Float64Array | undefined {
  const flight = findFlight(DRIVER, { points: 64 });
  return isRefused(flight) ? undefined : flight.track;
}

export function run({ quick, put }: Session): void {
  if (!quick) put({ what: 'impact', value: measure(() => impactOf(STRIKE), 100_000), unit: 'us' });
  put({ what: 'flight of a drive', value: measure(() => findFlight(DRIVER), 4000), unit: 'us', goal: 'at most 300' });
  if (!quick) put({ what: 'the same with 64 points', value: measure(trackOfDrive, 2000), unit: 'us' });
}
