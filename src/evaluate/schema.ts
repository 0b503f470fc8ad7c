/** What a field may hold, as data. Built by the functions below; `Typed` is what a checked value is. */
export interface NumberSchema {
  readonly type: 'number';
  readonly min: number;
  readonly max: number;
}
export interface TextSchema {
  readonly type: 'text';
  readonly longest: number;
}
export interface ChoiceSchema<T extends string = string> {
  readonly type: 'choice';
  readonly of: readonly T[];
}
export interface ListSchema<S = Schema> {
  readonly type: 'list';
  readonly of: S;
  readonly longest: number;
}
type Fields = Readonly<Record<string, unknown>>;
export interface RecordSchema<R = Fields, O = Fields> {
  readonly type: 'record';
  readonly required: R;
  readonly optional: O;
}
/** A name or an object in its place. */
export interface EitherSchema<A = ChoiceSchema, B = RecordSchema> {
  readonly type: 'either';
  readonly name: A;
  readonly record: B;
}
export type Schema = NumberSchema | TextSchema | ChoiceSchema | ListSchema<unknown> | RecordSchema | EitherSchema;

/** The type of a value that passed the check. */
export type Typed<S> = S extends NumberSchema
  ? number
  : S extends TextSchema
    ? string
    : S extends ChoiceSchema<infer T>
      ? T
      : S extends ListSchema<infer T>
        ? readonly Typed<T>[]
        : S extends RecordSchema<infer R, infer O>
          ? { readonly [K in keyof R]: Typed<R[K]> } & { readonly [K in keyof O]?: Typed<O[K]> }
          : S extends EitherSchema<infer A, infer B>
            ? Typed<A> | Typed<B>
            : never;

/** A finite number from `min` to `max`, both included, in the unit its field wears. */
export const number = (min: number, max: number): NumberSchema => ({ type: 'number', min, max });
/** A text of at most so many characters. */
export const text = (longest: number): TextSchema => ({ type: 'text', longest });
/** One of a few words. */
export const choice = <const T extends string>(...of: readonly T[]): ChoiceSchema<T> => ({ type: 'choice', of });
/** A list of at most so many entries. */
export const list = <S extends Schema>(of: S, longest: number): ListSchema<S> => ({ type: 'list', of, longest });
/** An object with these fields and no others. */
export const record = <R extends Fields, O extends Fields = Record<never, never>>(
  required: R,
  optional: O = {} as O,
): RecordSchema<R, O> => ({ type: 'record', required, optional });
/** One of a few names, or an object. */
export const either = <A extends ChoiceSchema, B extends RecordSchema>(name: A, from: B): EitherSchema<A, B> => ({
  type: 'either',
  name,
  record: from,
});

/** What is wrong with a line: the field by its path (empty: the line as a whole) and a message that says what is legal. */
export class LineError extends Error {
  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
    this.name = 'LineError';
  }
}

/** Throws `LineError` for the first thing in `value` that `schema` does not allow. `path` is the field's name so far. */
export function check<S extends Schema>(schema: S, value: unknown, path: string): asserts value is Typed<S> {
  checkAny(schema, value, path);
}

function checkAny(schema: Schema, value: unknown, path: string): void {
  switch (schema.type) {
    case 'number':
      return checkNumber(schema, value, path);
    case 'text':
      if (typeof value !== 'string') throw new LineError(path, `Expected a text, found ${kindOf(value)}.`);
      if (value.length > schema.longest) throw new LineError(path, `Longer than ${schema.longest} characters.`);
      return;
    case 'choice':
      if (typeof value === 'string' && schema.of.includes(value)) return;
      throw new LineError(path, `${show(value)} is not known. Use one of: ${schema.of.join(', ')}.`);
    case 'list':
      if (!Array.isArray(value)) throw new LineError(path, `Expected a list, found ${kindOf(value)}.`);
      if (value.length > schema.longest) throw new LineError(path, `More than ${schema.longest} entries.`);
      return value.forEach((entry, i) => checkAny(schema.of as Schema, entry, `${path}[${i}]`));
    case 'record':
      return checkRecord(schema, value, path);
    case 'either':
      if (isRecord(value)) return checkRecord(schema.record, value, path);
      if (typeof value === 'string' && schema.name.of.includes(value)) return;
      throw new LineError(path, `${show(value)} is not known. Use an object, or one of: ${schema.name.of.join(', ')}.`);
  }
}

function checkNumber({ min, max }: NumberSchema, value: unknown, path: string): void {
  if (typeof value !== 'number') throw new LineError(path, `Expected a number, found ${kindOf(value)}.`);
  if (!Number.isFinite(value)) throw new LineError(path, `Not a finite number. Enter ${min} to ${max}.`);
  if (value < min || value > max) throw new LineError(path, `${value} is out of range. Enter ${min} to ${max}.`);
}

function checkRecord({ required, optional }: RecordSchema, value: unknown, path: string): void {
  if (!isRecord(value)) throw new LineError(path, `Expected an object, found ${kindOf(value)}.`);
  const inside = path === '' ? '' : `${path}.`;
  for (const key of Object.keys(value)) {
    // Own fields only: "constructor" and "__proto__" are in no schema, though every object answers to them.
    const known = Object.hasOwn(required, key)
      ? required[key]
      : Object.hasOwn(optional, key)
        ? optional[key]
        : undefined;
    if (known === undefined) {
      const all = [...Object.keys(required), ...Object.keys(optional)].join(', ');
      throw new LineError(inside + shorten(key), `Unknown field. Known here: ${all}.`);
    }
    checkAny(known as Schema, value[key], inside + key);
  }
  for (const key of Object.keys(required)) {
    if (!Object.hasOwn(value, key)) throw new LineError(inside + key, 'Missing.');
  }
}

/** Whether a value is a plain object, not a list and not null. */
export const isRecord = (value: unknown): value is Record<string, unknown> =>
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
const shorten = (word: string): string => (word.length > LONGEST_ECHO ? `${word.slice(0, LONGEST_ECHO)}...` : word);
const show = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? shorten(JSON.stringify(value))
    : kindOf(value).replace(/^a/, 'A').replace(/^n/, 'N');
