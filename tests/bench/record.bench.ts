import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';
import { browserFlags, resolveBrowser } from '../../.config/browser.mjs';
import type * as IdbKeeperModule from '../../src/record/storage/idbStorage';
import type * as BookStateModule from '../../src/record/book/bookState';
import type * as ListsModule from '../../src/record/book/lists';
import type * as SayReadingModule from '../../src/words/book/readings';
import type * as KeeperModule from '../../src/record/storage/storagePort';
import type * as DocumentModule from '../../src/store/document/document';
import type * as ValidateModule from '../../src/record/file/validate';
import { quantile, type Row, type Session } from './table';

export const name = 'lesson book';

const LESSONS = 500;
const ROUNDS = 60;
const QUICK_ROUNDS = 20;

interface Times {
  readonly list: number[];
  readonly open: number[];
  readonly commit: number[];
}

/** Runs in the browser, on the real IndexedDB: `load` fetches our own modules from the development server. */
async function measure({ lessons, rounds }: { lessons: number; rounds: number }): Promise<Times> {
  const load = (path: string): Promise<Record<string, never>> => import(/* @vite-ignore */ path) as never;
  const { createIdbStorage } = (await load('/record/storage/idbStorage.ts')) as unknown as typeof IdbKeeperModule;
  const { readStored } = (await load('/record/book/bookState.ts')) as unknown as typeof BookStateModule;
  const { lessonsOf, listPlayers } = (await load('/record/book/lists.ts')) as unknown as typeof ListsModule;
  const { sayBoth } = (await load('/words/book/readings.ts')) as unknown as typeof SayReadingModule;
  const { FRESH_META } = (await load('/record/storage/storagePort.ts')) as unknown as typeof KeeperModule;
  const { DEFAULT_DOCUMENT } = (await load('/store/document/document.ts')) as unknown as typeof DocumentModule;
  const { readRecord } = (await load('/record/file/validate.ts')) as unknown as typeof ValidateModule;
  const base = { version: 3, createdMs: 1000, changedMs: 1000 } as const;
  const player = { kind: 'player', ...base, id: 'bench-player', name: 'Bench', body: DEFAULT_DOCUMENT.player, clubs: [], notes: '', archived: false, example: false } as const; // prettier-ignore
  const make = (at: number) =>
    ({ kind: 'lesson', ...base, id: `bench-lesson-${at}`, playerId: player.id, date: `20${10 + (at % 15)}-0${1 + (at % 9)}-11`, now: DEFAULT_DOCUMENT, computedCm: { leadArmParallel: 1, shaftParallel: 2 }, notes: 'A note of usual length, as a coach writes it.' }) as const; // prettier-ignore
  const keeper = createIdbStorage('bench');
  const claim = await keeper.claim();
  await keeper.commit(claim, { put: [player, ...Array.from({ length: lessons }, (_, at) => make(at))], remove: [], meta: FRESH_META }); // prettier-ignore

  const times: Times = { list: [], open: [], commit: [] };
  const time = async (into: number[], work: () => Promise<unknown>): Promise<void> => {
    const start = performance.now();
    await work();
    into.push(performance.now() - start);
  };
  for (let round = 0; round < rounds; round++) {
    await time(times.list, async () => {
      keeper.reconnect();
      const { records } = readStored(await keeper.load());
      listPlayers(records, '', 'lastLesson', false);
      const lines = lessonsOf(records, player.id).map(({ now, computedCm }) =>
        sayBoth(now.seen, computedCm, now.units),
      );
      if (lines.length !== lessons) throw new Error(`${lines.length} lessons listed`);
    });
    await time(times.open, async () => {
      const [raw] = await keeper.readBack([`bench-lesson-${(round * 37) % lessons}`]);
      if (!('record' in readRecord(raw))) throw new Error('the lesson does not open');
    });
    const lesson = { ...make((round * 53) % lessons), notes: `round ${round}`, changedMs: 2000 + round };
    // A commit comes some time after the last change, not on the heels of listing five hundred lessons.
    await new Promise((rested) => setTimeout(rested, 60));
    await time(times.commit, async () => {
      await keeper.commit(claim, { put: [lesson], remove: [], meta: FRESH_META });
      const [there] = await keeper.readBack([lesson.id]);
      if (JSON.stringify(there) !== JSON.stringify(lesson)) throw new Error('the commit reads back differently');
    });
  }
  return times;
}

export async function run({ quick, put }: Session): Promise<void> {
  const server = await createServer({
    configFile: fileURLToPath(new URL('../../vite.config.ts', import.meta.url)),
    root: fileURLToPath(new URL('../../src', import.meta.url)),
    logLevel: 'error',
    server: { port: 0 },
  });
  await server.listen();
  const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: [...browserFlags] });
  try {
    const page = await browser.newPage();
    // The runner names functions through a helper of its own, which the page does not have.
    await page.addInitScript('globalThis.__name = (work) => work');
    await page.goto(new URL('mark.svg', server.resolvedUrls!.local[0]).href);
    const times = await page.evaluate(measure, { lessons: LESSONS, rounds: quick ? QUICK_ROUNDS : ROUNDS });
    const row = (what: string, values: readonly number[], share: number, goal?: string): Row => ({
      what: `${what}, ${share === 0.5 ? 'median' : 'p95'}`,
      value: quantile(values, share),
      unit: 'ms',
      goal,
    });
    put(
      row(`open the store and list ${LESSONS} lessons`, times.list, 0.5),
      row(`open the store and list ${LESSONS} lessons`, times.list, 0.95, 'at most 1000'),
      row('open one lesson', times.open, 0.5),
      row('open one lesson', times.open, 0.95, 'at most 300'),
      row('commit one lesson and read it back', times.commit, 0.5),
      row('commit one lesson and read it back', times.commit, 0.95, 'at most 20'),
    );
  } finally {
    await browser.close();
    await server.close();
  }
}
