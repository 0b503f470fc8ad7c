import { read } from '../checking/read';
import { isFields, kindOf, oneOf, type Fault } from '../checking/schemas';
import { KINDS } from './kinds/kinds';
import { LineError } from './lineError';
import { LONGEST_LINE_BYTES, type Line } from './split';

const kind = oneOf([...KINDS.keys()]);

/** Answers one line: the result, or what is wrong with it. Never throws. */
export function answerLine(line: Line): { readonly text: string; readonly failed: boolean } {
  try {
    if ('tooLong' in line) throw new LineError('', `The line is longer than ${LONGEST_LINE_BYTES} bytes.`);
    return { text: JSON.stringify(evaluate(line.text)), failed: false };
  } catch (error) {
    const { field, message } =
      error instanceof LineError ? error : new LineError('', `Could not be worked out: ${String(error)}`);
    return { text: JSON.stringify({ error: { line: line.number, field, message } }), failed: true };
  }
}

function evaluate(source: string): object {
  if (source.trim() === '') throw new LineError('', 'The line is empty. Expected one JSON object.');
  const value = parse(source);
  if (!isFields(value)) throw new LineError('', `Expected one JSON object, found ${kindOf(value)}.`);
  if (!Object.hasOwn(value, 'kind')) throw new LineError('kind', `Missing. Use one of: ${kind.options.join(', ')}.`);
  const name = orLineError(read(kind, value['kind']), 'kind');
  const { schema, run } = KINDS.get(name)!;
  return { kind: name, ...run(orLineError(read(schema, value))) };
}

/** What was read, or an error of its line. `path` is the field it stands in, if it is not the whole line. */
function orLineError<T>(found: { readonly value: T } | { readonly fault: Fault }, path?: string): T {
  if ('value' in found) return found.value;
  throw new LineError(path ?? found.fault.path, found.fault.message);
}

function parse(source: string): unknown {
  try {
    return JSON.parse(source);
  } catch (error) {
    // Where files are joined, the second one's mark stands inside; a parser only says "unexpected token" and shows nothing.
    if (source.startsWith('\uFEFF'))
      throw new LineError('', 'A byte order mark (U+FEFF) stands before the JSON. Remove it.');
    throw new LineError('', `Not JSON: ${error instanceof Error ? error.message.slice(0, 120) : 'unreadable'}`);
  }
}
