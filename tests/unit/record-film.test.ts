import { describe, expect, test } from 'vitest';
import { deleteLesson, duplicateLesson, duplicatePlayer } from '../../src/record/book/edits';
import { keepFilmWith, removeFilm } from '../../src/record/film/filmEdits';
import { stillsOf } from '../../src/record/book/lists';
import type { BookRecord, LessonRecord } from '../../src/record/book/recordTypes';
import { writeFile } from '../../src/record/file/file';
import { planImport } from '../../src/record/file/importPlan';
import { readFile } from '../../src/record/file/readFile';
import { readRecord } from '../../src/record/file/validate';
import { FILM, JPEG } from './keptFilm';
import {
  createAir,
  createLocks,
  createKeeper,
  createShelf,
  makeLesson,
  makePlayer,
  puts,
  standBook,
} from './record-stand';

const STILL = { of: 'leadArmParallel', w: 540, h: 960, jpeg: JPEG } as const;

const asMap = (records: readonly BookRecord[]) => new Map(records.map((record) => [record.id, record]));
let births = 0;
const birth = () => ({ id: `film-birth-${String(++births).padStart(6, '0')}`, nowMs: 2000 });
const player = makePlayer();
const lesson = makeLesson(player.id);
const kept = keepFilmWith(asMap([player, lesson]), lesson, birth, FILM, [STILL])!;
const [withFilm, still] = kept.put as [LessonRecord, Extract<BookRecord, { kind: 'still' }>];
const whole = [player, withFilm, still];

describe('a film kept with a lesson', () => {
  test('is read back just as it was written, from the store and from a file', () => {
    for (const record of whole) expect(readRecord(structuredClone(record))).toEqual({ record });
    const reading = readFile(writeFile(whole, 5000));
    expect(reading).toMatchObject({ sound: true, expected: { player: 1, lesson: 1, swing: 0, still: 1 } });
    expect('records' in reading && reading.records).toEqual(whole);
  });

  test.each([
    ['a field more, as the name of the film', { film: { ...FILM, name: 'IMG_0412.MOV' } }],
    [
      'a mark that nobody knows',
      { film: { ...FILM, sheet: { arm: { frame: 1, points: { nose: { at: [1, 2], how: 'tapped' } } } } } },
    ],
    [
      'a mark that is no number',
      { film: { ...FILM, sheet: { arm: { frame: 1, points: { hands: { at: [1, null], how: 'tapped' } } } } } },
    ],
  ])('is refused with %s', (_, damage) => {
    expect(readRecord({ ...withFilm, ...damage })).toHaveProperty('damage');
  });

  test.each([
    ['that is no JPEG', { jpeg: `iVBORw0K${'A'.repeat(40)}` }],
    ['that is too large', { jpeg: `/9j/${'A'.repeat(200_001)}` }],
    ['that is too wide', { w: 961 }],
  ])('a still is refused %s', (_, damage) => {
    expect(readRecord({ ...still, ...damage })).toHaveProperty('damage');
  });

  test('with a number that could not be read back is not kept at all', () => {
    const broken = { ...FILM, camera: { ...FILM.camera, focalPx: NaN } };
    expect(keepFilmWith(asMap(whole), withFilm, birth, broken, [])).toBeUndefined();
    // Nor a still that the store would not give back: no JPEG, or too large a one.
    for (const jpeg of [`iVBORw0K${'A'.repeat(40)}`, `/9j/${'A'.repeat(200_001)}`, `${JPEG}!`])
      expect(keepFilmWith(asMap(whole), withFilm, birth, FILM, [STILL, { ...STILL, jpeg }])).toBeUndefined();
  });

  test('makes way for the next one with its stills, and can be removed', () => {
    const next = keepFilmWith(asMap(whole), withFilm, birth, FILM, [])!;
    expect(next.remove).toEqual([still.id]);
    const gone = removeFilm(asMap(whole), withFilm, 9000);
    expect(gone.put[0]).not.toHaveProperty('film');
    expect(gone.remove).toEqual([still.id]);
  });

  test('stays with its lesson: not in a copy of the lesson, in a copy of the player, gone with the lesson', () => {
    expect(duplicateLesson(withFilm, birth(), '2026-11-26').put[0]).not.toHaveProperty('film');
    const copies = asMap(duplicatePlayer(asMap(whole), player, birth).put);
    const copied = [...copies.values()].find(({ kind }) => kind === 'lesson')!;
    expect(copied).toMatchObject({ film: FILM });
    expect(stillsOf(copies, copied.id)).toMatchObject([{ jpeg: JPEG }]);
    expect(deleteLesson(asMap(whole), withFilm).remove).toEqual([withFilm.id, still.id]);
  });

  test('comes in with an import; a still without its lesson stays outside', () => {
    const reading = (records: readonly BookRecord[]) =>
      readFile(writeFile(records, 5000)) as Exclude<ReturnType<typeof readFile>, { refused: string }>;
    expect(planImport(new Map(), reading(whole), 'newer').added).toEqual(whole);
    expect(planImport(new Map(), reading([player, still]), 'newer').added).toEqual([player]);
    // A backup without stills leaves those that are here alone.
    expect(planImport(asMap(whole), reading([player, withFilm]), 'theirs')).toMatchObject({
      changed: [],
      left: [],
      same: 2,
    });
  });

  test('goes to the other tab, and is wiped with the player', async () => {
    const [shelf, locks, air] = [createShelf(), createLocks(), createAir()];
    const first = await standBook({ keeper: createKeeper(shelf), locks, channel: air.tune(), name: 'tab-a' });
    await first.clock.go(500);
    const second = await standBook({
      keeper: createKeeper(shelf),
      clock: first.clock,
      locks,
      channel: air.tune(),
      name: 'tab-b',
    });
    first.book.apply(puts(...whole));
    await first.clock.go(1500);
    expect(second.book.state.getState().records.get(withFilm.id)).toEqual(withFilm);
    expect(second.book.state.getState().records.get(still.id)).toEqual(still);
    expect(await first.book.wipe(player.id)).toEqual({ removed: 3, left: 0 });
    await first.clock.go(500);
    expect([shelf.records.size, second.book.state.getState().records.size]).toEqual([0, 0]);
  });
});
