import { LOOK_DAMAGED } from '../../../words/showing/forms';
import { findMarkFault, readMark } from './markFile';
import { keepLook, LONGEST_MARK, readKeptLook, type KeptLook } from './ownLook';

const PNG = 'data:image/png;base64,';
/** Characters of base64 that hold a PNG's header, in whole groups of four. */
const HEADER = 64;

/**
 * The own look in a file that saved everything, before anything is decoded: what may be taken over, or why not, in words. Nothing where the
 * file has none.
 */
export function readSavedLook(
  text: string | undefined,
): { readonly look: KeptLook } | { readonly fault: string } | undefined {
  if (text === undefined) return undefined;
  const look = readKeptLook(text);
  // What is left out of a kept look without a word would be missed here.
  if (JSON.stringify(look) !== text) return { fault: LOOK_DAMAGED };
  const { colour, mark } = look;
  if (colour === null && mark === null) return undefined;
  const fault = mark !== null && findFault(mark);
  return fault ? { fault } : { look };
}

function findFault(mark: string): string | undefined {
  try {
    const letters = atob(mark.slice(PNG.length, PNG.length + HEADER));
    return findMarkFault(
      Uint8Array.from(letters, (letter) => letter.charCodeAt(0)),
      LONGEST_MARK,
    );
  } catch {
    return LOOK_DAMAGED;
  }
}

/** Takes a saved look over; its mark is painted anew, as any picture that is chosen. Answers what went wrong, in words. */
export async function takeSavedLook({ colour, mark }: KeptLook): Promise<string | undefined> {
  if (mark === null) return keepLook({ colour, mark });
  try {
    const bytes = Uint8Array.from(atob(mark.slice(PNG.length)), (letter) => letter.charCodeAt(0));
    return keepLook({ colour, mark: await readMark(new Blob([bytes], { type: 'image/png' })) });
  } catch {
    return LOOK_DAMAGED;
  }
}
