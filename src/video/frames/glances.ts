import { findStep, type Glance } from './glance';
import { VideoRefused, type OpenVideo, type VideoInfo } from '../video';

/** Glances that are kept on the page: of a film of 1920 by 1080, 2.1 MB each. */
const KEPT = { most: 12, least: 4, bytes: 32e6 } as const;
/** Glances whose memory waits to be used again. */
const MOST_SPARE = 4;
/** Frames that are fetched ahead of whoever steps on, or back, where a whole run is decoded at once; and when the next run is asked for. */
const AHEAD = { on: 2, back: 8, soon: 4 } as const;

/**
 * Sends for glances, the most wanted first, and gives away the memory `spare` of such as are not kept any more; `hear` gets each as it comes, or
 * why the first one does not. Settles when no more come.
 */
type Fetch = (
  indices: readonly number[],
  spare: ArrayBuffer[],
  hear: (index: number, heard: Glance | VideoRefused) => void,
) => Promise<void>;

/** Keeps what is around the shown frame, and fetches a few frames ahead in the direction of stepping. It does nothing while nobody steps. */
export function createGlances({ w, h, frames }: VideoInfo, fetch: Fetch): NonNullable<OpenVideo['glance']> {
  const bytes = (4 * w * h) / findStep(w, h) ** 2;
  const most = Math.max(KEPT.least, Math.min(KEPT.most, Math.floor(KEPT.bytes / bytes)));
  const kept = new Map<number, Glance>();
  /** Used again: 2 MB thrown away at every step would make the page sweep up at every third. */
  let spare: readonly ArrayBuffer[] = [];
  /** Who waits for a glance: it may come with what was fetched ahead for the one before. */
  const wanted = new Map<number, (glance: Glance) => void>();
  let here = 0;

  const keep = (index: number, glance: Glance): void => {
    kept.set(index, glance);
    while (kept.size > most) {
      const farthest = [...kept.keys()].reduce((a, b) => (Math.abs(a - here) >= Math.abs(b - here) ? a : b));
      if (spare.length < MOST_SPARE) spare = [...spare, kept.get(farthest)!.pixels.buffer];
      kept.delete(farthest);
    }
  };
  const lacking = (by: 1 | -1, count: number): readonly number[] =>
    Array.from({ length: Math.min(count, most - 2) }, (_, i) => here + by * (i + 1)).filter(
      (index) => index >= 0 && index < frames && !kept.has(index),
    );
  return (index, shown) => {
    const by = index < here ? -1 : 1;
    const isStep = Math.abs(index - here) === 1;
    here = index;
    const known = kept.get(index);
    const isSoon = isStep && lacking(by, by > 0 ? AHEAD.on : AHEAD.soon).length > 0;
    if (known && !isSoon) return known;
    // Of a jump nobody knows where it goes on.
    const ahead = isStep ? lacking(by, by > 0 ? AHEAD.on : AHEAD.back) : [];
    const come = new Promise<Glance | undefined>((resolve, reject) => {
      if (!known) wanted.set(index, resolve);
      const hear: Parameters<Fetch>[2] = (at, heard) => {
        if (heard instanceof VideoRefused) return reject(heard);
        keep(at, heard);
        wanted.get(at)?.(heard);
        wanted.delete(at);
      };
      // What is on the screen may be looked at again, whatever was asked for since.
      const free = spare.filter((memory) => memory !== shown?.pixels.buffer);
      spare = spare.filter((memory) => !free.includes(memory));
      fetch(known ? ahead : [index, ...ahead], free, hear)
        .then(() => resolve(undefined), reject)
        .finally(() => wanted.get(index) === resolve && wanted.delete(index));
    });
    if (!known) return come;
    // A frame ahead that does not come is told of when it is wanted.
    come.catch(() => undefined);
    return known;
  };
}
