// npm run pictures: builds the app and takes a picture of every screen at every size, for looking at.
// Into the folder .pictures, or one that is named; `--only` takes those whose name matches; `--readme` those of the README.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { installWhatIsMissing, run, top } from './install.mjs';

const { values, positionals } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    readme: { type: 'boolean', default: false },
    built: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});

installWhatIsMissing();
process.chdir(top);
if (!values.built && run('npm', ['run', '--silent', 'build']) !== 0) process.exit(1);
const { preview } = await import('vite');
const { chromium } = await import('playwright-core');
const { browserFlags, resolveBrowser } = await import('./browser.mjs');

/** @typedef {import('playwright-core').Page} Page */

const SIZES = {
  tablet: { width: 1180, height: 820 },
  upright: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
  laptop: { width: 1440, height: 900 },
};

/** Opens a drawer by its tab, its part of a tab, or the sheet of further drawers. */
const drawer =
  (/** @type {string} */ id, part = '') =>
  async (/** @type {Page} */ page) => {
    await page.locator(`#tab-${id}`).click();
    if (part !== '') await page.locator(`#part-${part}`).click();
  };
const further = (/** @type {string} */ name) => async (/** @type {Page} */ page) => {
  const more = page.locator('#tab-more:visible, #bar-more:visible').first();
  await more.click();
  await page.locator('[popover]').getByRole('button', { name }).click();
};
/** Behind a button of its own where the picture is small. */
const fromShow = (/** @type {string} */ name) => async (/** @type {Page} */ page) => {
  const button = page.getByRole('button', { name });
  if (!(await button.isVisible())) await page.locator('[aria-controls="stage-shows"]').click();
  await button.click();
};

/** @type {Record<string, (page: Page) => Promise<unknown>>} */
const SCREENS = {
  desk: async () => {},
  'typical-swings': (page) => page.locator('button[popovertarget="situations"]:visible').first().click(),
  'player-and-club': drawer('setUp'),
  'what-i-saw': drawer('seen'),
  'why-shares': drawer('ledger'),
  'why-room-for-error': drawer('ledger', 'map'),
  'why-two-swings': drawer('ledger', 'compare'),
  'what-to-change': drawer('plan'),
  'ball-flight': drawer('ball'),
  'show-and-send': drawer('clip'),
  'lesson-book': drawer('lessons'),
  'pose-the-body': further('Pose the body'),
  about: further('About this model'),
  student: fromShow('Show the student'),
  comparison: fromShow('Keep as comparison'),
};
/** A link that a coach sent: its text opens the player's page. Links of every version stay readable. */
const PLAN_LINK = readFileSync('.config/picture/plan-link.txt', 'utf8').trim();
/** Screens that a link opens instead of the desk. */
const BY_LINK = { 'players-page': PLAN_LINK };
/** What the README shows, and at which size. */
const OF_README = { desk: 'tablet', 'why-shares': 'tablet', 'players-page': 'phone' };

/** Opens a link and waits for the figures. */
async function showLink(/** @type {Page} */ page, /** @type {string} */ address) {
  await page.goto(address);
  await page.locator('.twins-canvas canvas').waitFor({ timeout: 60_000 });
}

/** Opens the desk with a cupped wrist, so that every screen has something to say, and goes to a screen. */
async function showScreen(
  /** @type {Page} */ page,
  /** @type {string} */ address,
  /** @type {(page: Page) => Promise<unknown>} */ reach,
) {
  await page.goto(address);
  await page.locator('canvas').waitFor({ timeout: 60_000 });
  const wrist = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
  await wrist.focus();
  for (let i = 0; i < 16; i++) await page.keyboard.press('ArrowLeft');
  await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  await reach(page);
}

const server = await preview({ preview: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: browserFlags });
const folder = values.readme ? '.config/picture' : (positionals[0] ?? '.pictures');
mkdirSync(folder, { recursive: true });

const wanted = Object.keys(SIZES).flatMap((size) =>
  [...Object.keys(SCREENS), ...Object.keys(BY_LINK)]
    .map((screen) => ({ size, screen, name: values.readme ? screen : `${size}-${screen}` }))
    .filter(({ name, screen }) =>
      values.readme ? Reflect.get(OF_README, screen) === size : new RegExp(values.only).test(name),
    ),
);
let failed = 0;
for (const { size, screen, name } of wanted) {
  const page = await browser.newPage({
    viewport: SIZES[/** @type {keyof typeof SIZES} */ (size)],
    deviceScaleFactor: values.readme ? 1.5 : 1,
    reducedMotion: 'reduce',
  });
  page.on('pageerror', (error) => console.error(`${name}: ${error.message}`));
  const address = server.resolvedUrls?.local[0] ?? '';
  try {
    if (screen in BY_LINK) await showLink(page, `${address}#${Reflect.get(BY_LINK, screen)}`);
    else await showScreen(page, address, SCREENS[screen]);
  } catch (error) {
    failed++;
    console.error(`${name}: ${String(error).split('\n')[0]}`);
  }
  await page.waitForTimeout(4000);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  console.log(join(folder, `${name}.png`));
  await page.close();
}
await browser.close();
await server.close();
if (failed > 0) process.exit(1);
