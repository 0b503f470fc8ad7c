import { toWholeMarks } from '../../film/sheet/draft';
import { mirrorMarks, type Pixel } from '../../film/marks';
import { refineShaft } from '../../film/refineLine';
import { current, desk } from '../../store';
import type { NoFilm } from '../../film/answerFilm';
import type { SentAnswer } from '../../video/film.worker';
import { toArmAngle } from '../../store/document/convert';
import { createMarkReader } from '../../video/readMarks';
import { openFiles } from '../../video/openPictures';
import { VideoRefused } from '../../video/video';
import { FRAME_LOST, LINE_FOUND, NO_LINE, sayRefused } from '../../words/film/film';
import { EXPECTED_LEVEL, sayLed } from '../../words/film/level';
import { EMPTY_SHEET, nextMark, toDraft, type FilmNotes, type MadeMark, type PlaceId, type Sheet } from './filmMarks';
import { filmStore, NOTHING, type Tripod } from './filmStore';
import { greyAround } from './grey';
import { tripodOf } from './kept/tripod';
import { drawOutline, reader } from './over/outlines';
import { leadToLevel } from './level/leadToLevel';

const { getState: state, setState: set } = filmStore;

/** Opens a film, or one to three pictures; what was open before is let go of. */
export async function openFilm(files: readonly File[]): Promise<void> {
  const [file] = files;
  if (!file) return;
  closeFilm();
  set({ status: 'opening', opening: file });
  try {
    const video = await openFiles(files);
    // Another film was chosen meanwhile, or none is wanted any more.
    if (state().opening !== file) return video.close();
    set({ status: 'open', video, notes: { ...NOTHING.notes, fps: video.info.fps } });
    await goTo(0);
  } catch (error) {
    if (state().opening !== file) return;
    const said = error instanceof VideoRefused ? sayRefused(error.reason, error.codec) : sayRefused('damaged');
    closeFilm();
    set({ problem: said });
  }
}

/** Lets go of the film, its pictures and its workers; marks go with it, but for where the tripod stood. */
export function closeFilm(): void {
  const { video, picture, tripod } = state();
  video?.close();
  picture?.close();
  reader.open?.close();
  delete reader.open;
  set({ ...NOTHING, tripod }, true);
}

/** How long a frame is looked at before its picture at full size is fetched, ms: not for each that is passed. */
const REST = 120;

/** Shows a frame, counted from 0. The last one asked for wins. */
export async function goTo(index: number): Promise<void> {
  const { video } = state();
  if (!video) return;
  const frame = Math.max(0, Math.min(video.info.frames - 1, Math.round(index)));
  const place = placeAt(frame);
  const isHere = (): boolean => state().video === video && state().frame === frame;
  const lost = (): void => {
    if (isHere()) set({ problem: FRAME_LOST });
  };
  if (video.glance) {
    const glance = video.glance(frame, state().glance);
    if (glance instanceof Promise) set({ frame, ...place });
    else set({ frame, ...place, glance, shownFrame: frame, problem: undefined });
    if (glance instanceof Promise) {
      const come = await glance.catch(lost);
      if (!come || !isHere()) return;
      set({ glance: come, shownFrame: frame, problem: undefined });
    }
    void drawOutline();
    await new Promise((resolve) => setTimeout(resolve, REST));
    if (!isHere() || state().pictureFrame === frame) return;
  } else set({ frame, ...place });
  const picture = await video.frame(frame).catch(lost);
  if (!picture) return;
  if (!isHere()) return picture.close();
  const before = state().picture;
  set({ picture, pictureFrame: frame, shownFrame: frame, problem: undefined });
  before?.close();
  if (!video.glance) void drawOutline();
  else if (isShaftSought()) {
    findShaft();
    read();
  }
}

/** Whoever has marked all of the address and goes on is on the way to the next place, and whoever comes back is at address again. */
function placeAt(frame: number): Partial<ReturnType<typeof state>> | undefined {
  const { place, sheet, notes, video } = state();
  const { address, arm } = sheet;
  if (video?.info.kind !== 'video' || notes.isTripodKept || !address || arm || place === 'shaft' || place === 'next')
    return undefined;
  if (nextMark('address', sheet, notes) !== undefined) return undefined;
  const now: PlaceId = frame === address.frame ? 'address' : 'arm';
  return now === place ? undefined : { place: now, active: nextMark(now, sheet, notes) };
}

/** Says what the shown frame is, and goes on to the first mark that is missing there. */
export function setPlace(place: PlaceId): void {
  const { sheet, notes, frame, answer } = state();
  const marked = sheet[place];
  set({ place, active: nextMark(place, sheet, notes), lineNote: undefined, levelNote: undefined });
  const level = answer && 'camera' in answer ? answer.level : undefined;
  // Straight from lead arm parallel: to where the shaft should be level. Whoever has gone on to a frame stays there.
  if (place === 'shaft' && !marked && level && frame === sheet.arm?.frame) {
    set({ levelNote: EXPECTED_LEVEL });
    return void goTo(level.frame);
  }
  const isElsewhere = place === 'address' && notes.isTripodKept;
  if (marked && !isElsewhere && marked.frame !== frame) void goTo(marked.frame);
  return undefined;
}

const change = (sheet: Sheet): void => set({ sheet, past: [...state().past.slice(-99), state().sheet] });

/** Makes or moves the active mark; one gesture is one step back. */
export function setMark(at: Pixel, how: MadeMark['how'] = 'tapped', id = state().active): void {
  const { place, sheet, frame, shownFrame, video, notes } = state();
  // A tap on the picture of another frame is no mark of this one.
  if (id === undefined || !video || shownFrame !== frame) return;
  const { w, h } = video.info;
  const inside: Pixel = [Math.max(0, Math.min(w, at[0])), Math.max(0, Math.min(h, at[1]))];
  const before = sheet[place];
  // A mark on another frame moves the place there: what was marked on the old frame is no longer true.
  const isKept = place === 'address' && notes.isTripodKept;
  const points = before?.frame === frame && !isKept ? before.points : {};
  if (isKept) set({ notes: { ...notes, isTripodKept: false } });
  const marked = { frame, points: { ...points, [id]: { at: inside, how } } };
  // The frame after shaft parallel is the one after it, or none.
  const isStale = place === 'shaft' && sheet.next !== undefined && sheet.next.frame !== frame + 1;
  change({ ...sheet, [place]: marked, ...(isStale && { next: undefined }) });
  if (place === 'arm' && (id === 'hands' || id === 'clubHead')) findShaft();
  const next = nextMark(place, state().sheet, state().notes);
  const isNew = !points[id];
  if (isNew) set({ active: next ?? id });
  const isDone = isNew && place === 'shaft' && next === undefined && !state().sheet.next;
  if (isDone && video.info.kind === 'video') set({ isLeading: true });
  read();
}

/** Goes to the frames on either side of level, as far as the marks tell; without them to the next frame. */
export function goToLevel(): void {
  const { sheet, answer, video, notes } = state();
  const level = answer && 'camera' in answer && answer.level?.isMarked ? answer.level : undefined;
  const lead = video && leadToLevel(sheet, level, video.info.frames);
  set({ isLeading: false });
  if (!lead) return;
  if (lead.sheet.shaft !== sheet.shaft || lead.sheet.next !== sheet.next) change(lead.sheet);
  const active = lead.sheet[lead.place]?.frame === lead.frame ? nextMark(lead.place, lead.sheet, notes) : 'hands';
  set({ place: lead.place, active, levelNote: level && sayLed(lead.by) });
  void goTo(lead.frame);
  if (state().sheet !== sheet) read();
}

/** Takes a mark away. */
export function clearMark(id: string): void {
  const { place, sheet } = state();
  const marked = sheet[place];
  if (!marked) return;
  const points = Object.fromEntries(Object.entries(marked.points).filter(([name]) => name !== id));
  change({ ...sheet, [place]: { frame: marked.frame, points } });
  set({ active: id });
  read();
}

/** Takes the last gesture back. */
export function undoMark(): void {
  const { past } = state();
  const sheet = past.at(-1);
  if (!sheet) return;
  const { place, notes } = state();
  set({
    sheet,
    past: past.slice(0, -1),
    active: nextMark(place, sheet, notes),
    lineNote: undefined,
    levelNote: undefined,
  });
  read();
}

/** Takes all marks away, in one step. */
export function clearMarks(): void {
  change(EMPTY_SHEET);
  const notes = { ...state().notes, isTripodKept: false };
  set({ place: 'address', active: 'clubHead', lineNote: undefined, notes });
  read();
}

/** Notes about the film as a whole. */
export function setNotes(notes: Partial<FilmNotes>): void {
  set({ notes: { ...state().notes, ...notes } });
  read();
}

/** Whether the shaft's line waits for the picture at full size, which came after both of its marks. */
function isShaftSought(): boolean {
  const { sheet, frame, lineNote } = state();
  return sheet.arm?.frame === frame && !sheet.arm.line && lineNote === undefined;
}

/** Looks for the shaft's line between hands and head, which may lie some px beside both. */
function findShaft(): void {
  const { sheet, picture, pictureFrame } = state();
  const marked = sheet.arm;
  if (!marked?.points['hands'] || !marked.points['clubHead']) return;
  if (!picture || pictureFrame !== marked.frame) return set({ lineNote: undefined });
  const [from, to] = [marked.points['hands'].at, marked.points['clubHead'].at];
  const { grey, left, top } = greyAround(picture, from, to);
  const inside = ([u, v]: Pixel): Pixel => [u - left, v - top];
  const found = refineShaft(grey, inside(from), inside(to));
  const line = found && (found.line.map(([u, v]) => [u + left, v + top]) as unknown as readonly [Pixel, Pixel]);
  set({
    sheet: { ...sheet, arm: { frame: marked.frame, points: marked.points, ...(line && { line }) } },
    lineNote: found ? LINE_FOUND : NO_LINE,
  });
}

/** Reads the marks as soon as they are enough. The newest answer counts. */
function read(): void {
  const { sheet, notes, video } = state();
  if (!video) return;
  const whole = toWholeMarks(toDraft(sheet, notes, video.info));
  if (!whole) {
    set({ answer: undefined, outline: undefined });
    return state().isLeading ? goToLevel() : undefined;
  }
  const { document } = desk.getState();
  const derived = current();
  const isLeft = derived.player.handed === 'left';
  const asked = sheet;
  set({ isReading: true });
  reader.open ??= createMarkReader();
  const { rig, reference, curves, movements, tempo } = derived.referenceSwing;
  void reader.open
    .read({
      swing: { rig, reference, curves, movements, tempo },
      marks: isLeft ? mirrorMarks(whole) : whole,
      bands: derived.exactBands,
      armAngle: toArmAngle(document),
    })
    .then(
      (answer) => {
        if (state().sheet !== asked || state().video !== video) return undefined;
        const tripod = 'missing' in answer ? state().tripod : tripodOf(sheet, video.info, rig.club.length);
        set({ answer, isReading: false, chosen: findAgain(answer), tripod });
        if (state().isLeading) goToLevel();
        return drawOutline();
      },
      () => set({ isReading: false }),
    );
  return undefined;
}

/** Takes over where the tripod stood at an earlier film, on the coach's word that it has not moved. */
export function keepTripod({ address }: Tripod): void {
  const { sheet, notes } = state();
  const marked = { ...sheet, address: { ...address, frame: 0 } };
  change(marked);
  set({
    notes: { ...notes, isTripodKept: true },
    place: 'arm',
    active: nextMark('arm', marked, { isTripodKept: true }),
  });
  read();
}

/** Lays marks over the film that were made on it before. */
export function layMarks(sheet: Sheet, notes: FilmNotes): void {
  change(sheet);
  set({ notes });
  setPlace('arm');
  read();
}

/** The explanation that the coach chose, in a new answer; the first where he chose none. */
function findAgain(answer: SentAnswer | NoFilm): number {
  const { answer: before, chosen } = state();
  if (chosen === 0 || !before || 'missing' in before || 'missing' in answer) return 0;
  const uses = before.explanations[chosen]?.uses.join();
  return Math.max(
    0,
    answer.explanations.findIndex((one) => one.uses.join() === uses),
  );
}

/** What is drawn over the film. */
export const setView = (view: Partial<ReturnType<typeof state>['view']>): void =>
  set({ view: { ...state().view, ...view } });
