import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { createMeter, spentMs } from './drag';
import { findFirsts, lookOut, type Firsts } from './firstPicture';
import type { Seat } from './site';
import { SLOW, slowDown } from './slowed';
import { quantile, type Session } from './table';

export const name = 'opening';

const OPENINGS = 3;
const QUICK_OPENINGS = 1;
/** After this long nothing is left to do, ms; watched for so long. */
const SETTLING_MS = 2000;
const WATCHED_MS = 5000;
const QUICK_WATCHED_MS = 2000;

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Scripts and style sheets that a first visit has asked for when it draws its first picture, gzip, kB. */
async function payloadOf(page: Page, drawn: number, folder: string): Promise<number> {
  const asked = await page.evaluate(
    (end) =>
      performance
        .getEntriesByType('resource')
        .filter(({ startTime }) => startTime <= end)
        .map((entry) => new URL(entry.name).pathname),
    drawn,
  );
  const files = new Set(asked.filter((file) => /\.(js|css)$/.test(file)));
  let bytes = 0;
  for (const file of files) bytes += gzipSync(readFileSync(join(folder, file)), { level: 9 }).length;
  return bytes / 1000;
}

/** A first visit of a slow device over a slow network. */
async function openSlowly({ address, newVisitor }: Seat): Promise<Firsts> {
  const page = await newVisitor();
  await slowDown(page);
  await lookOut(page);
  await page.goto(address, { waitUntil: 'commit' });
  const firsts = await findFirsts(page);
  await page.context().close();
  return firsts;
}

interface Visit {
  /** See `payloadOf`. */
  readonly payload: number;
  /** Of a page that nobody touches: script of its own thread, and processor time of all its threads, ms a second. */
  readonly script: number;
  readonly processor: number;
}

/** A first visit that is left alone once it has its picture. */
async function visit({ address, browser, folder, newVisitor }: Seat, watchedMs: number): Promise<Visit> {
  const page = await newVisitor();
  await lookOut(page);
  await page.goto(address);
  const { drawn } = await findFirsts(page);
  const { clock } = await createMeter(page);
  const system = await browser.newBrowserCDPSession();
  const processorMs = async (): Promise<number> => {
    const { processInfo } = await system.send('SystemInfo.getProcessInfo');
    return processInfo.reduce((sum, { type, cpuTime }) => sum + (type === 'renderer' ? cpuTime * 1000 : 0), 0);
  };
  await wait(SETTLING_MS);
  const before = [(await spentMs(clock)).script, await processorMs()];
  await wait(watchedMs);
  const after = [(await spentMs(clock)).script, await processorMs()];
  const [script, processor] = after.map((ms, i) => ((ms - before[i]) * 1000) / watchedMs);
  const payload = await payloadOf(page, drawn, folder);
  await page.context().close();
  return { payload, script, processor };
}

export const run = ({ quick, withPage, put }: Session): Promise<void> =>
  withPage(async (seat) => {
    await seat.page.context().close();
    const { payload, script, processor } = await visit(seat, quick ? QUICK_WATCHED_MS : WATCHED_MS);
    put(
      {
        what: 'scripts and style sheets until the first picture, gzip',
        value: payload,
        unit: 'kB',
        goal: 'at most 420',
      },
      { what: 'page left alone, from 2 s after its picture: script', value: script, unit: 'ms/s', goal: 'at most 5' },
      { what: 'the same, processor time of the page with its workers', value: processor, unit: 'ms/s' },
    );
    const firsts: Firsts[] = [];
    for (let i = 0; i < (quick ? QUICK_OPENINGS : OPENINGS); i++) firsts.push(await openSlowly(seat));
    const median = (what: keyof Firsts): number => {
      const times = firsts.map((one) => one[what]);
      return quantile(times, 0.5);
    };
    put(
      { what: `${SLOW}: words on both plates`, value: median('words'), unit: 'ms', goal: 'at most 1500' },
      { what: `${SLOW}: 3D picture`, value: median('picture'), unit: 'ms', goal: 'at most 4500' },
    );
  });
