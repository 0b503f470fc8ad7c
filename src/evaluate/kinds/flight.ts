import { exactOptional } from 'valibot';
import { nameOr, numberIn, type FieldsOf } from '../../checking/schemas';
import { carryWidth } from '../../flight/coefficients';
import { flightOf } from '../../flight/forecast';
import { orRefusal, toEdgeFlight } from '../strike';

/** Any number: the flight itself knows what is legal, and says so. */
const any = numberIn(-1e6, 1e6);

/** A launch in numbers, and the day. */
export const flightFields = {
  ballSpeedMps: any,
  launchDeg: any,
  startDeg: any,
  spinRpm: any,
  spinAxisDeg: any,
  drag: exactOptional(nameOr(['smits-smith', 'naruo-mizota', 'joined', 'none'], { cd: any, cl: any })),
  tailWindMps: exactOptional(any),
  crossWindMps: exactOptional(any),
  altitudeM: exactOptional(any),
};

/** Where the ball goes, or why it does not fly. Positive is right of the target line. */
export function runFlight(line: FieldsOf<typeof flightFields>): object {
  const { ballSpeedMps, launchDeg, startDeg, spinRpm, spinAxisDeg, ...day } = line;
  const { drag, tailWindMps, crossWindMps, altitudeM } = day;
  const given = {
    ...(drag !== undefined && { drag }),
    ...(tailWindMps !== undefined && { tailWindMps }),
    ...(crossWindMps !== undefined && { crossWindMps }),
    ...(altitudeM !== undefined && { altitudeM }),
  };
  const flight = orRefusal(flightOf({ ballSpeedMps, launchDeg, startDeg, spinRpm, spinAxisDeg }, given));
  if ('missing' in flight) return flight;
  const numbers = toEdgeFlight(flight);
  // Published models differ by this much; fixed coefficients and a vacuum are the asker's own.
  return drag === undefined || (typeof drag === 'string' && drag !== 'none')
    ? { ...numbers, carryWidthM: carryWidth(flight.carryM) }
    : numbers;
}
