import { createCompare, createGhostClock } from '../derive/compare';
import { derive, deskBases } from './desk';

/** Both compared swings of the desk. */
export const comparedOf = createCompare(deskBases);

/** When the ghost on the desk is drawn, s. */
export const ghostTime = createGhostClock(derive);
