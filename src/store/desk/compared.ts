import { createCompare, createFanClock, createGhostClock } from '../derive/compare';
import { derive, deskBases } from './desk';

/** Both compared swings of the desk. */
export const comparedOf = createCompare(deskBases);

/** When the ghost on the desk is drawn, s. */
export const ghostTime = createGhostClock(derive);

/** When each body of the fan is drawn, s: at the same position of its own swing. */
export const fanTimes = createFanClock(derive);
