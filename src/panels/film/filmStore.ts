import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { Pixel } from '../../film/marks';
import type { NoFilm } from '../../film/answerFilm';
import type { Outlines, SentAnswer } from '../../video/film.worker';
import type { Glance } from '../../video/frames/glance';
import type { OpenVideo } from '../../video/video';
import { EMPTY_SHEET, type FilmNotes, type MarkedFrame, type PlaceId, type Sheet } from './filmMarks';

/** Address as it was marked on a film before, and what has to be the same for it to hold: size of the picture, px, and length of the club, m. */
export interface Tripod {
  readonly w: number;
  readonly h: number;
  readonly clubM: number;
  readonly address: MarkedFrame;
  /** Whose address it is: his body, and the lesson that was open, if any. */
  readonly body: string;
  readonly lessonId: string | undefined;
}

/** The film that is open, and all that was marked on it. */
export interface FilmState {
  readonly status: 'none' | 'opening' | 'open';
  /** The file that is being opened, or was opened last. */
  readonly opening?: File;
  /** Why the last file was refused, or the shown frame is missing, in words. */
  readonly problem?: string | undefined;
  readonly video: OpenVideo | undefined;
  /** The frame asked for, counted from 0, and the one that is shown. */
  readonly frame: number;
  readonly shownFrame: number;
  /** What is shown of it while stepping, and the last picture at full size, which comes at rest. */
  readonly glance: Glance | undefined;
  readonly picture: ImageBitmap | undefined;
  readonly pictureFrame: number;
  readonly place: PlaceId;
  /** The mark that the next tap makes or moves. */
  readonly active: string | undefined;
  readonly sheet: Sheet;
  readonly past: readonly Sheet[];
  readonly notes: FilmNotes;
  /** Whether the shaft's line was found at the last look. */
  readonly lineNote?: string | undefined;
  /** What was said on the way to level, and whether the next answer leads there. */
  readonly levelNote?: string | undefined;
  readonly isLeading: boolean;
  readonly answer: SentAnswer | NoFilm | undefined;
  readonly isReading: boolean;
  readonly chosen: number;
  /** What is drawn over the film, and how much of the film itself is left, 0 to 1. */
  readonly view: {
    readonly marks: boolean;
    readonly before: boolean;
    readonly target: boolean;
    readonly grid: boolean;
    readonly film: number;
  };
  readonly outline: Outlines | undefined;
  /** What is being made of it, and how much of that is done, 0 to 1; and what came of the last one, in words. */
  readonly making: { readonly what: 'still' | 'clip'; readonly share: number; readonly isStopped?: true } | undefined;
  readonly made?: string | undefined;
  /** Of the last film, for as long as the page stands. */
  readonly tripod?: Tripod | undefined;
  /** What came of keeping it, in words. */
  readonly kept?: string | undefined;
  /** Where a finger is, for the loupe. */
  readonly touch: Pixel | undefined;
}

export const NOTHING: FilmState = {
  status: 'none',
  video: undefined,
  frame: 0,
  shownFrame: -1,
  glance: undefined,
  picture: undefined,
  pictureFrame: -1,
  place: 'address',
  active: 'clubHead',
  sheet: EMPTY_SHEET,
  past: [],
  notes: {
    fps: undefined,
    isHandHeld: false,
    isSleeved: false,
    isTripodKept: false,
    impact: undefined,
    heightM: undefined,
    distanceM: undefined,
    sidewaysM: undefined,
  },
  answer: undefined,
  isLeading: false,
  isReading: false,
  chosen: 0,
  view: { marks: true, before: true, target: false, grid: true, film: 1 },
  making: undefined,
  outline: undefined,
  touch: undefined,
};

/** The open film: one at a time, gone when it is closed. */
export const filmStore = createStore<FilmState>(() => NOTHING);

/** The open film, for React. */
export const useFilm = <T>(select: (state: FilmState) => T): T => useStore(filmStore, select);
