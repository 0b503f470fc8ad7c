import 'fake-indexeddb/auto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readEmbedded } from '../../src/export/files/embedded';
import { readText } from '../../src/export/link/link';
import { createIdbStorage } from '../../src/record/storage/idbStorage';
import { openWriteAheadStorage } from '../../src/record/storage/writeAheadStorage';
import { desk, redo, startDesk, undo } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { createClock, createKeeper, makePlayer, standBook } from './record-stand';

/*
 * Files as each version wrote them. They are never edited and none is ever taken away: what people keep has to open.
 * A new version of anything stored or exported gets a new file here.
 */
const place = join(import.meta.dirname, '../fixtures');
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(join(place, name)));
const jsonOf = <T>(name: string): T => JSON.parse(readFileSync(join(place, name), 'utf8')) as T;
interface Wanted {
  readonly wanted: Record<string, unknown>;
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/**
 * What versions 1 and 2 wrote, as it has to open today: the lean about the target line has become side bend (1.16 of it, to a tenth of a
 * degree), every mark was read by eye, and there was no plan. Written out here a second time.
 */
function today<T>(value: T): T {
  if (Array.isArray(value)) return value.map(today) as T;
  if (!isObject(value)) return value;
  const entries = Object.entries(value).map(([key, one]): [string, unknown] =>
    key === 'trailTiltDeg' ? ['trailSideBendDeg', Math.round(Number(one) * 11.6) / 10] : [key, today<unknown>(one)],
  );
  const isDocument = 'movements' in value && 'version' in value;
  return Object.fromEntries([
    ...entries,
    ...('plusMinusCm' in value ? [['from', 'eye']] : []),
    ...(isDocument ? [['version', 3]] : []),
    ...(isDocument && !('plan' in value) ? [['plan', null]] : []),
  ] as [string, unknown][]) as T;
}

/** A record of version 1 as it has to open today: a lesson's target, movements worked on and drills are the plan of its desk. */
function recordToday(record: Record<string, unknown>): unknown {
  if (record['kind'] !== 'lesson') return { ...today(record), version: 3 };
  const { target, plan, drills, ...rest } = record as Record<string, unknown> & {
    target: { movements: unknown; computedCm: unknown } | null;
    plan: string[];
    drills: string[];
    now: Record<string, unknown>;
  };
  const now = today(rest.now);
  const chosen = {
    id: expect.stringMatching(/^[0-9a-z]{16}$/) as string,
    from: now['movements'],
    movements: today(target ? target.movements : now['movements']),
    targetCm: target ? target.computedCm : { leadArmParallel: null, shaftParallel: null },
    drills: drills.slice(0, 3).map((name) => expect.objectContaining({ name }) as unknown),
  };
  const hasPlan = target !== null || plan.length > 0 || drills.length > 0;
  const notes = ['Worked on: ', ...drills.slice(3)].filter((_, at) => at > 0 || plan.length > 0);
  return {
    ...rest,
    version: 3,
    now: { ...now, plan: hasPlan ? (expect.objectContaining(chosen) as unknown) : null },
    notes: expect.toSatisfy((text: string) =>
      [String(rest['notes']), ...notes].every((line) => text.includes(line)),
    ) as unknown,
  };
}
const CHANGED = /lean is now side bend/;

startEffects();
beforeEach(clearDesk);

describe('the desk as it lay in the small storage', () => {
  const lay = (name: string): { texts: Record<string, string> } & Wanted => {
    const frozen = jsonOf<{ texts: Record<string, string> } & Wanted>(name);
    startDesk({ getItem: (key) => frozen.texts[key] ?? null, setItem: () => {} });
    return frozen;
  };

  test('of version 1 opens, with its steps back and forward', () => {
    const { wanted } = lay('desk-v1.json');
    expect(desk.getState().notice).toMatch(CHANGED);
    expect(desk.getState().document).toMatchObject(today(wanted));
    expect(redo()).toBe('Tilt 3°');
    expect([undo(), undo(), undo()]).toEqual(['Tilt 3°', 'Wrist −8°', 'Player']);
    expect(desk.getState().document.player).toEqual({ statureM: 1.78, handed: 'right' });
  });

  test.each([
    ['of the first days, before there was a ball to strike or anything to mark,', 'desk-v1-first.json'],
    ['with a camera for each view', 'desk-v1-cameras.json'],
  ])('%s opens', (_, name) => {
    const { wanted } = lay(name);
    expect(desk.getState().notice).toMatch(CHANGED);
    expect(desk.getState().document).toMatchObject(today(wanted));
  });

  test('of version 2 opens, with its steps back and forward, and nothing is said', () => {
    const { wanted } = lay('desk-v2.json');
    expect(desk.getState().notice).toBeNull();
    expect(desk.getState().document).toEqual(today(wanted));
    expect(desk.getState().document.ball.faceReturned).toBe(0.3);
    expect(redo()).toBe('Side bend 2°');
    expect([undo(), undo()]).toEqual(['Side bend 2°', 'Ball']);
    expect(desk.getState().document.ball).not.toHaveProperty('faceReturned');
  });

  test('of version 3 opens as it is, with what was seen and the plan, and its steps back and forward', () => {
    const { wanted } = lay('desk-v3.json');
    expect(desk.getState().notice).toBeNull();
    expect(desk.getState().document).toEqual(wanted);
    expect(redo()).toBe('What I saw');
    expect([undo(), undo()]).toEqual(['What I saw', 'Plan']);
    expect(desk.getState().document).toEqual({ ...wanted, plan: null });
  });
});

describe('links', () => {
  const links = ['links-v1.json', 'links-v1-cameras.json'].flatMap((name) =>
    Object.entries(jsonOf<Record<string, { text: string } & Wanted>>(name)),
  );
  test.each(links)('of version 1 open: %s', (_, { text, wanted }) => {
    expect(readText(text)).toMatchObject({ document: today(wanted), notice: expect.stringMatching(CHANGED) as string });
  });

  const ofToday = Object.entries(jsonOf<Record<string, { text: string } & Wanted>>('links-v2.json'));
  test.each(ofToday)('of documents of version 2 open: %s', (_, { text, wanted }) => {
    expect(readText(text)).toEqual({ document: today(wanted) });
  });

  const withPlans = Object.entries(jsonOf<Record<string, { text: string } & Wanted>>('links-v3.json'));
  test.each(withPlans)('of documents of version 3 open: %s', (_, { text, wanted }) => {
    expect(readText(text)).toEqual({ document: wanted });
  });
});

describe('pictures, clips and model files', () => {
  const filesOf = (version: number): string[] =>
    readdirSync(place).filter((name) => new RegExp(`^(still|clip|model)-v${version}\\.`).test(name));
  test.each([1, 2])('are kept of every kind, of version %d', (version) => {
    const kinds = filesOf(version).map((name) => name.split('.')[1]);
    expect(kinds.toSorted()).toEqual(['gif', 'glb', 'mp4', 'png', 'svg', 'webm']);
  });
  test.each(filesOf(1))('%s gives back the document it carries', (name) => {
    const { wanted } = jsonOf<Wanted>('files-v1.json');
    expect(readEmbedded(bytesOf(name))).toMatchObject({ document: today(wanted) });
  });
  test.each(filesOf(2))('%s gives back the document it carries', (name) => {
    const { wanted } = jsonOf<Wanted>('files-v2.json');
    expect(readEmbedded(bytesOf(name))).toEqual({ document: today(wanted) });
  });
});

describe('the lesson book', () => {
  interface FrozenStore {
    readonly records: readonly (Record<string, unknown> & { readonly id: string })[];
    readonly meta: unknown;
  }
  /** The store as the first version laid it out, made without a line of ours. */
  const layOut = (name: string, { records, meta }: FrozenStore): Promise<void> =>
    new Promise((resolve, reject) => {
      const opening = indexedDB.open(name, 1);
      opening.onerror = () => reject(new Error('the store does not open'));
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore('records', { keyPath: 'id' }).createIndex('playerId', 'playerId');
        opening.result.createObjectStore('meta');
      };
      opening.onsuccess = () => {
        const transaction = opening.result.transaction(['records', 'meta'], 'readwrite');
        for (const record of records) transaction.objectStore('records').put(record);
        transaction.objectStore('meta').put(meta, 'book');
        transaction.objectStore('meta').put(7, 'claim');
        transaction.oncomplete = () => {
          opening.result.close();
          resolve();
        };
      };
    });

  test.each([1, 2])('in a store with documents of version %d opens whole and goes on from there', async (version) => {
    const frozen = jsonOf<FrozenStore>(`lesson-book-store-v${version}.json`);
    await layOut(`frozen-${version}`, frozen);
    const keeper = createIdbStorage(`frozen-${version}`);
    const clock = createClock(undefined, 60);
    const { book } = await standBook({ keeper: keeper as never, clock });
    const { mode, records, unread } = book.state.getState();
    expect({ mode, unread }).toEqual({ mode: 'writing', unread: { newer: 0, damaged: 0 } });
    expect([...records.keys()].toSorted()).toEqual(frozen.records.map(({ id }) => id).toSorted());
    for (const record of frozen.records) {
      expect(records.get(record.id)).toMatchObject(recordToday(record) as object);
      // Readings of the first model are marked: they are computed anew when the record is opened.
      if (version === 1 && record['kind'] !== 'player') expect(records.get(record.id)).toHaveProperty('computedBy', 1);
    }
    const player = makePlayer();
    book.apply({ label: 'Add', put: [player], remove: [] });
    await clock.go(1000);
    expect((await keeper.load()).records).toHaveLength(frozen.records.length + 1);
  });

  test.each([1, 2])(
    'in a note with documents of version %d, left by a page that had to go, is taken up',
    async (version) => {
      const text = readFileSync(join(place, `lesson-note-v${version}.json`), 'utf8').trim();
      const note = JSON.parse(text) as { records: { id: string }[]; removed: string[]; meta: { openLessonId: string } };
      const journal = openWriteAheadStorage(() => ({ getItem: () => text, setItem: () => {}, removeItem: () => {} }));
      const keeper = createKeeper();
      keeper.shelf.claim = 3;
      keeper.shelf.records.set(note.removed[0], makePlayer({ id: note.removed[0] }));
      const { book } = await standBook({ keeper, journal });
      const { records, meta } = book.state.getState();
      expect([...records.keys()].toSorted()).toEqual(note.records.map(({ id }) => id).toSorted());
      expect(meta.openLessonId).toBe(note.meta.openLessonId);
    },
  );
});
