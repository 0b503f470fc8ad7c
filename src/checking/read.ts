import { safeParse, type BaseIssue, type GenericSchema, type InferOutput, type IssuePathItem } from 'valibot';
import { shorten, UNKNOWN, type Fault } from './schemas';

/**
 * Reads a value by a schema, whole or not at all: a fresh value with nothing in it that the schema does not name, or
 * the first fault. A field that nobody knows comes first and a missing one last: a misspelt field is both.
 */
export function read<S extends GenericSchema>(
  schema: S,
  value: unknown,
): { readonly value: InferOutput<S> } | { readonly fault: Fault } {
  const { success, output, issues } = safeParse(schema, value);
  if (success) return { value: output };
  const issue = issues.find(isUnknown) ?? issues.find((one) => !isMissing(one)) ?? issues[0];
  return { fault: { path: pathOf(issue.path ?? []), message: issue.message } };
}

const isOfFields = ({ type }: BaseIssue<unknown>): boolean => type === 'strict_object';
const isUnknown = (issue: BaseIssue<unknown>): boolean => isOfFields(issue) && issue.expected === UNKNOWN;
const isMissing = (issue: BaseIssue<unknown>): boolean => isOfFields(issue) && issue.expected !== UNKNOWN;

/** "seen.leadArmParallel.cm", "drills[3]" */
const pathOf = (items: readonly IssuePathItem[]): string =>
  items
    .map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${shorten(String(key))}`))
    .join('')
    .replace(/^\./, '');
