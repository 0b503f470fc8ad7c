import { NO_ROOM_FOR_LOOK } from '../../../words/showing/forms';
import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { OwnLook } from '../../../export/clip/clipJob';
import { OWN_LOOK_KEY } from '../../../record/file/file';
import { decodeMark } from './markFile';

// The look is neither in the document nor in the lesson book: it leaves in pictures, and in the file that saves everything.

/** Longest mark, as text: all pixels of the largest picture, unpacked, would fit. */
export const LONGEST_MARK = 900_000;

/** A colour (#rrggbb) and a mark (a PNG as data address) for hand-outs; null: none. */
export interface KeptLook {
  readonly colour: string | null;
  readonly mark: string | null;
}
const NOTHING: KeptLook = { colour: null, mark: null };

/** A kept look as it may be used: what was not written by us is left out. */
export function readKeptLook(text: string | null): KeptLook {
  let value: unknown;
  try {
    value = JSON.parse(text ?? 'null');
  } catch {
    return NOTHING;
  }
  if (typeof value !== 'object' || value === null) return NOTHING;
  const { colour, mark } = value as Readonly<Record<string, unknown>>;
  const isColour = typeof colour === 'string' && /^#[0-9a-f]{6}$/.test(colour);
  const isMark =
    typeof mark === 'string' && mark.length <= LONGEST_MARK && /^data:image\/png;base64,[\w+/]+=*$/.test(mark);
  return { colour: isColour ? colour : null, mark: isMark ? mark : null };
}

function load(): KeptLook {
  try {
    return readKeptLook(localStorage.getItem(OWN_LOOK_KEY));
  } catch {
    return NOTHING;
  }
}

const kept = createStore<KeptLook>(load);

/** The coach's own look, for React. */
export const useKeptLook = (): KeptLook => useStore(kept);

/** Changes part of the look. With nothing left in it nothing is kept. Answers why it could not be kept, in words. */
export function keepLook(part: Partial<KeptLook>): string | undefined {
  const look = { ...kept.getState(), ...part };
  kept.setState(look);
  try {
    if (look.colour === null && look.mark === null) localStorage.removeItem(OWN_LOOK_KEY);
    else localStorage.setItem(OWN_LOOK_KEY, JSON.stringify(look));
    return undefined;
  } catch {
    return NO_ROOM_FOR_LOOK;
  }
}

/** The look as a picture is drawn with it. */
export async function readOwnLook(): Promise<OwnLook> {
  const { colour, mark } = kept.getState();
  return { colour, mark: mark === null ? null : await decodeMark(mark) };
}
