import { contributionsSchema, runContributions } from './contributions';
import { flightSchema, runFlight } from './flight';
import { impactSchema, runImpact } from './impact';
import { matchSchema, runMatch } from './match';
import { planSchema, runPlan } from './plan';
import { poseSchema, runPose } from './pose';
import { choice, record, type RecordSchema, type Typed } from '../schema';
import { runSwing, swingSchema } from './swing';

/** One kind of line: what it may hold and what is worked out from it. */
export interface Kind {
  readonly schema: RecordSchema;
  readonly run: (line: unknown) => object;
}

/** Ties a schema to the function that takes what the schema lets through. */
function kind<R extends RecordSchema['required'], O extends RecordSchema['optional']>(
  name: string,
  { required, optional }: RecordSchema<R, O>,
  run: (line: Typed<RecordSchema<R, O>>) => object,
): [string, Kind] {
  return [name, { schema: record({ kind: choice(name), ...required }, optional), run: run as Kind['run'] }];
}

/** Every kind of line, by its name. A new kind is one file with a schema and a function, and one row here. */
export const KINDS: ReadonlyMap<string, Kind> = new Map([
  kind('pose', poseSchema, runPose),
  kind('swing', swingSchema, runSwing),
  kind('impact', impactSchema, runImpact),
  kind('flight', flightSchema, runFlight),
  kind('contributions', contributionsSchema, runContributions),
  kind('plan', planSchema, runPlan),
  kind('match', matchSchema, runMatch),
]);
