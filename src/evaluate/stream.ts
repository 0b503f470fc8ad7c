import { once } from 'node:events';
import type { Readable, Writable } from 'node:stream';
import { answerLine } from './answer';
import { createSplitter, type Line } from './split';

/** Answers are gathered to this many characters before they are written. */
const BATCH = 1 << 16;

/**
 * Reads lines from `input` and writes one answer a line to `output`, in the same order. Waits while `output` is full, so memory
 * does not grow with the length of the input. Resolves to the number of lines that could not be answered.
 */
export async function evaluateStream(input: Readable, output: Writable): Promise<number> {
  const splitter = createSplitter();
  let failures = 0;
  let batch = '';
  const answer = async (lines: Iterable<Line>): Promise<void> => {
    for (const line of lines) {
      const { text, failed } = answerLine(line);
      if (failed) failures += 1;
      batch += `${text}\n`;
      if (batch.length >= BATCH) await flush();
    }
  };
  const flush = async (): Promise<void> => {
    const ready = batch;
    batch = '';
    if (ready !== '' && !output.write(ready)) await once(output, 'drain');
  };
  for await (const chunk of input) {
    await answer(splitter.push(chunk as Buffer));
    // A reader that waits for its answer gets it now, not when the batch is full.
    await flush();
  }
  await answer(splitter.end());
  await flush();
  return failures;
}
