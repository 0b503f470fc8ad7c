import {
  array,
  custom,
  lazy,
  maxLength,
  maxValue,
  minValue,
  number,
  picklist,
  pipe,
  rawCheck,
  strictObject,
  string,
  type BaseIssue,
  type GenericSchema,
  type InferInput,
  type InferOutput,
  type ObjectEntries,
  type StrictObjectSchema,
} from 'valibot';

/*
 * Valibot's schemas with our sentences in them. Each sentence says what is wrong and what would be right; `read` adds
 * where. Anything else comes straight from valibot.
 */

/** A finite number from `min` to `max`, both included, in the unit of its field. */
export function numberIn(min: number, max: number) {
  const enter = `Enter ${min} to ${max}.`;
  const say = ({ input }: BaseIssue<unknown>): string =>
    typeof input !== 'number'
      ? `Expected a number, found ${kindOf(input)}.`
      : Number.isFinite(input)
        ? `${input} is out of range. ${enter}`
        : `Not a finite number. ${enter}`;
  return pipe(number(say), minValue(min, say), maxValue(max, say));
}

/** A text of at most so many characters. */
export const textUpTo = (longest: number) =>
  pipe(
    string(({ input }) => `Expected a text, found ${kindOf(input)}.`),
    maxLength(longest, `Longer than ${longest} characters.`),
  );

/** One of a few words. `orElse`: what else the field takes, said in front of the words. */
export const oneOf = <const T extends string>(words: readonly T[], orElse = '') =>
  picklist(words, ({ input }) => `${show(input)} is not known. Use ${orElse}one of: ${words.join(', ')}.`);

/** A list of at most so many entries, read into a fresh one. */
export const listUpTo = <S extends GenericSchema>(of: S, longest: number) =>
  pipe(
    array(of, ({ input }) => `Expected a list, found ${kindOf(input)}.`),
    maxLength(longest, `More than ${longest} entries.`),
  );

/** What an object of these fields is before and after it is read. */
type Exact<E extends ObjectEntries> = StrictObjectSchema<E, undefined>;
export type FieldsOf<E extends ObjectEntries> = InferOutput<Exact<E>>;

/** An object with these fields and no others, read into a fresh one. A list is no object. */
export function fields<const E extends ObjectEntries>(entries: E): GenericSchema<InferInput<Exact<E>>, FieldsOf<E>> {
  const known = Object.keys(entries).join(', ');
  const isPlain = custom<InferInput<Exact<E>>>(isFields, ({ input }) => `Expected an object, found ${kindOf(input)}.`);
  const exact = strictObject(entries, ({ expected }) =>
    expected === UNKNOWN ? `Unknown field. Known here: ${known}.` : 'Missing.',
  );
  return pipe(isPlain, exact as unknown as GenericSchema<InferInput<Exact<E>>, FieldsOf<E>>);
}

/** One of a few names, or an object of these fields in its place. */
export function nameOr<const T extends string, const E extends ObjectEntries>(names: readonly T[], entries: E) {
  const [name, object] = [oneOf(names, 'an object, or '), fields(entries)];
  return lazy((value): GenericSchema<T | InferInput<Exact<E>>, T | FieldsOf<E>> => (isFields(value) ? object : name));
}

/** What is wrong with a value: the field by its path (empty: the value as a whole), and what would be right there. */
export interface Fault {
  readonly path: string;
  readonly message: string;
}

/** A demand on a value as a whole, once its parts are right. `find` names the fault and the field it is reported under. */
export const whole = <T>(find: (value: T) => Fault | undefined) =>
  rawCheck<T>(({ dataset, addIssue }) => {
    if (!dataset.typed || dataset.issues) return;
    const input = dataset.value;
    const fault = find(input);
    if (!fault) return;
    const { path: key, message } = fault;
    addIssue({ message, path: [{ type: 'unknown', origin: 'value', input, key, value: undefined }] });
  });

/** What valibot expects under a field that no schema knows. */
export const UNKNOWN = 'never';

/** One schema for each of a few names. */
export const eachOf = <K extends string, S>(names: readonly K[], schema: (name: K) => S): Record<K, S> =>
  Object.fromEntries(names.map((name) => [name, schema(name)])) as Record<K, S>;

/** Whether a value is a plain object, not a list and not null. */
export const isFields = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value's kind in a word. */
export const kindOf = (value: unknown): string =>
  value === null
    ? 'null'
    : Array.isArray(value)
      ? 'a list'
      : typeof value === 'object'
        ? 'an object'
        : `a ${typeof value}`;

const LONGEST_ECHO = 40;
/** A word from outside, cut so that no error grows with what caused it. */
export const shorten = (word: string): string =>
  word.length > LONGEST_ECHO ? `${word.slice(0, LONGEST_ECHO)}...` : word;

const show = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? shorten(JSON.stringify(value))
    : kindOf(value).replace(/^a/, 'A').replace(/^n/, 'N');
