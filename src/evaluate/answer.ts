import { KINDS } from './kinds/kinds';
import { check, choice, isRecord, kindOf, LineError } from './schema';
import { LONGEST_LINE_BYTES, type Line } from './split';

const kind = choice(...KINDS.keys());

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
  if (!isRecord(value)) throw new LineError('', `Expected one JSON object, found ${kindOf(value)}.`);
  if (!Object.hasOwn(value, 'kind')) throw new LineError('kind', `Missing. Use one of: ${kind.of.join(', ')}.`);
  const { kind: name } = value;
  check(kind, name, 'kind');
  const { schema, run } = KINDS.get(name)!;
  check(schema, value, '');
  return { kind: name, ...run(value) };
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
