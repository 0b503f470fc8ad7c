import { desk } from '../../store/desk/desk';
import { fileName, writeFile } from './file';
import type { BookRecord } from '../book/recordTypes';

/** What a part answers, or why it could not: one broken part must not keep the others from being saved. */
function tryTo<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

/** Our own texts in the browser's small storage, as they are. */
function smallStorage(): Record<string, string> {
  const texts: Record<string, string> = {};
  for (let at = 0; at < localStorage.length; at++) {
    const key = localStorage.key(at);
    if (key?.startsWith('slantwise.')) texts[key] = localStorage.getItem(key) ?? '';
  }
  return texts;
}

/**
 * One file with everything there is: the lesson book as it is in memory, the desk, and what lies in the small storage. The lesson book
 * can be read back from it, and the coach's own colour and mark. Works whatever part of the program has stopped.
 */
export function writeEverything(records: Iterable<BookRecord>, nowMs: number): { name: string; text: string } {
  const alongside = {
    ...tryTo(smallStorage, {}),
    desk: tryTo(() => JSON.stringify(desk.getState().document), ''),
  };
  return { name: fileName(nowMs, 'everything'), text: writeFile(records, nowMs, alongside) };
}
