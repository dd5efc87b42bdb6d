/**
 * Takes pictures of the parts page as it looks on a desk, on a phone, in the dark and on paper.
 * Usage: node --import tsx tests/tools/show-parts.ts FOLDER
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { launchBrowser } from './browser.ts';
import { partsBody, standalonePage } from './render-parts.ts';

const LOOKS = [
  { name: 'desk', width: 1280, scheme: 'light', media: 'screen' },
  { name: 'phone', width: 360, scheme: 'light', media: 'screen' },
  { name: 'dark', width: 1280, scheme: 'dark', media: 'screen' },
  { name: 'paper', width: 760, scheme: 'light', media: 'print' },
] as const;

/** Height of one picture; taller ones are too small to judge when they are looked at. */
const SHEET = 1600;

async function picture(browser: Browser, url: string, folder: string, look: (typeof LOOKS)[number]) {
  const page = await browser.newPage({
    viewport: { width: look.width, height: 900 },
    colorScheme: look.scheme,
    deviceScaleFactor: 1,
  });
  await page.emulateMedia({ media: look.media });
  await page.goto(url);
  const spill = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  console.log(`${look.name}: ${spill > 0 ? `spills ${spill} px sideways` : 'nothing spills sideways'}`);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  for (let top = 0, sheet = 1; top < height; top += SHEET, sheet += 1) {
    const clip = { x: 0, y: top, width: look.width, height: Math.min(SHEET, height - top) };
    await page.screenshot({ path: join(folder, `${look.name}-${sheet}.png`), fullPage: true, clip });
  }
  await page.close();
}

const folder = process.argv[2];
if (!folder) throw new Error('Name the folder for the pictures: show-parts.ts FOLDER');
await mkdir(folder, { recursive: true });
const file = join(folder, 'parts.html');
await writeFile(file, await standalonePage('Parts', partsBody()));
const browser = await launchBrowser();
try {
  for (const look of LOOKS) await picture(browser, pathToFileURL(file).href, folder, look);
} finally {
  await browser.close();
}
