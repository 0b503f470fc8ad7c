// Writes the icons of the installed app from our mark: assets/icon-*.png. Run it with: node .config/icons.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { browserFlags, resolveBrowser } from './browser.mjs';
import { top } from './install.mjs';

const mark = readFileSync(join(top, 'assets/mark.svg'), 'utf8');
// A maskable icon may be cut to a circle of four fifths: the mark stays well inside it.
const icons = [
  { name: 'icon-180', size: 180, share: 0.66 },
  { name: 'icon-192', size: 192, share: 0.72 },
  { name: 'icon-512', size: 512, share: 0.72 },
  { name: 'icon-maskable-512', size: 512, share: 0.54 },
];

const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: [...browserFlags] });
const page = await browser.newPage({ colorScheme: 'light' });
for (const { name, size, share } of icons) {
  await page.setViewportSize({ width: size, height: size });
  const side = Math.round(size * share);
  await page.setContent(
    `<body style="margin:0;display:grid;place-items:center;height:100vh;background:#f6f0e3">
      <div style="width:${side}px;height:${side}px">${mark}</div></body>`,
  );
  writeFileSync(join(top, 'assets', `${name}.png`), await page.screenshot());
}
await browser.close();
