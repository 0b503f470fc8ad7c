import { literal, type GenericSchema, type ObjectEntries } from 'valibot';
import { fields, type FieldsOf } from '../../checking/schemas';
import { contributionsFields, runContributions } from './contributions';
import { familyFields, runFamily } from './family';
import { filmFields, runFilm } from './film';
import { flightFields, runFlight } from './flight';
import { impactFields, runImpact } from './impact';
import { matchFields, runMatch } from './match';
import { planFields, runPlan } from './plan';
import { poseFields, runPose } from './pose';
import { ruleLineFields, runRule } from './rule';
import { runSwing, swingFields } from './swing';

/** One kind of line: what it may hold and what is worked out from it. */
export interface Kind {
  readonly schema: GenericSchema;
  readonly run: (line: unknown) => object;
}

/** Ties the fields of a line to the function that takes what they let through. */
const kind = <E extends ObjectEntries>(
  name: string,
  entries: E,
  run: (line: FieldsOf<E>) => object,
): [string, Kind] => [name, { schema: fields({ kind: literal(name), ...entries }), run: run as Kind['run'] }];

/** Every kind of line, by its name. A new kind is one file with its fields and a function, and one row here. */
export const KINDS: ReadonlyMap<string, Kind> = new Map([
  kind('pose', poseFields, runPose),
  kind('swing', swingFields, runSwing),
  kind('impact', impactFields, runImpact),
  kind('flight', flightFields, runFlight),
  kind('contributions', contributionsFields, runContributions),
  kind('plan', planFields, runPlan),
  kind('match', matchFields, runMatch),
  kind('family', familyFields, runFamily),
  kind('rule', ruleLineFields, runRule),
  kind('film', filmFields, runFilm),
]);
