import { createLedger } from '../derive/ledger';
import { deskBases } from './desk';

/** The ledger of the desk. */
export const ledgerOf = createLedger(deskBases);
