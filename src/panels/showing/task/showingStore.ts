import { createStore } from 'zustand/vanilla';
import { Stopped, type ComparisonId, type ClipWish, type TaskControl, type Made, type Progress } from '../../../export';
import { sayError } from '../../../words/showing/errorMessages';
import { current, desk } from '../../../store';
import { NOT_SHARED } from '../../../words/showing/forms';

/** A file that was made and not dismissed yet. */
interface Finished extends Made {
  readonly id: number;
  readonly url: string;
}

/** What the drawer holds: the form as it is filled in, what is being made, and what was made. */
export interface ShowingState {
  /** What is being made; null when nothing is. */
  readonly progress: Progress | null;
  /** What went wrong the last time, in words. */
  readonly excuse: string | null;
  readonly files: readonly Finished[];
  /** How many files were made since the page was opened. */
  readonly made: number;
  /** Stops what is being made; null when nothing is. */
  readonly running: AbortController | null;
  readonly wish: ClipWish;
  readonly after: ComparisonId;
}

/** Belongs to the drawer alone: neither stored nor undone, but kept while the drawer is closed. */
export const showing = createStore<ShowingState>(() => ({
  progress: null,
  excuse: null,
  files: [],
  made: 0,
  running: null,
  wish: {
    arrangement: 'ghosted',
    wholeSwing: 'free',
    slowMotion: 'downTheLine',
    titleCard: true,
    endCard: true,
    cuts: typeof matchMedia === 'function' && matchMedia('(prefers-reduced-motion: reduce)').matches,
    shape: '16:9',
    size: '720p',
    fps: 30,
    kind: null,
    name: '',
    title: '',
  },
  after: 'plan',
}));

/** Changes part of what the next clip should be. */
export const wishFor = (part: Partial<ClipWish>): void =>
  showing.setState(({ wish }) => ({ wish: { ...wish, ...part } }));

/** Chooses what the swing is set against. */
export const setAgainst = (after: ComparisonId): void => showing.setState({ after });

/** Stops what is being made. */
export const stop = (): void => showing.getState().running?.abort();

/** Makes one file. One at a time: a second request meanwhile is ignored. */
export async function make(doing: string, work: (companion: TaskControl) => Promise<Made>): Promise<void> {
  if (showing.getState().running) return;
  const running = new AbortController();
  let wasHidden = document.visibilityState === 'hidden';
  const watch = (): void => void (wasHidden ||= document.visibilityState === 'hidden');
  document.addEventListener('visibilitychange', watch);
  showing.setState({ running, progress: { doing, share: 0, secondsLeft: undefined }, excuse: null });
  const { signal } = running;
  const stopped = new Promise<never>((_, refuse) => signal.addEventListener('abort', () => refuse(new Stopped())));
  const tell = (progress: Progress): void => {
    if (!signal.aborted) showing.setState({ progress });
  };
  try {
    // Stopping is immediate: what is still under way is discarded.
    const made = await Promise.race([work({ signal, tell }), stopped]);
    const id = showing.getState().made + 1;
    const file = { ...made, id, url: URL.createObjectURL(made.blob) };
    showing.setState(({ files }) => ({ files: [file, ...files], made: id }));
  } catch (error) {
    showing.setState({ excuse: sayError(error, wasHidden) });
  } finally {
    document.removeEventListener('visibilitychange', watch);
    showing.setState({ running: null, progress: null });
  }
}

/** The desk at the moment of the call, compared with what was chosen: changes made while code is loading have no effect. */
export async function subjectNow() {
  const state = desk.getState();
  const { after } = showing.getState();
  const { derivePlain, takeSnapshot } = await import('../../../export/task/exportSnapshot');
  return takeSnapshot(state, derivePlain(state), after);
}

/** The desk exactly as it is drawn, doubled or tried out if it is. */
export async function subjectAsSeen() {
  const state = desk.getState();
  const derived = current();
  const { takeSnapshot } = await import('../../../export/task/exportSnapshot');
  return takeSnapshot(state, derived, 'reference');
}

/** Takes a finished file off the list and frees its memory. */
export function dismiss(id: number): void {
  const { files } = showing.getState();
  const file = files.find((one) => one.id === id);
  if (file) URL.revokeObjectURL(file.url);
  showing.setState({ files: files.filter((one) => one.id !== id) });
}

/** Whether this device can hand a file on to other apps. */
export function canShare({ blob, name }: Made): boolean {
  const file = new File([blob], name, { type: blob.type });
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] });
}

/** Opens the device's own sheet for sharing; a tap of its own, as browsers ask. */
export async function share({ blob, name }: Made): Promise<void> {
  try {
    await navigator.share({ files: [new File([blob], name, { type: blob.type })] });
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return;
    showing.setState({ excuse: NOT_SHARED });
  }
}
