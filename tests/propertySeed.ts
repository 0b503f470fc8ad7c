import fc from 'fast-check';

/**
 * Properties draw the same cases on every run, so that a run can be repeated. `npm run properties` draws others and
 * prints their seed; what it finds becomes a case of its own beside the property.
 */
const SEED = process.env['PROPERTY_SEED'];
fc.configureGlobal({ seed: SEED ? Number(SEED) : 20_261_125 });
