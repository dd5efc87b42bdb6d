/**
 * Takes pictures of the parts page as it looks on a desk, on a phone, in the dark and on paper.
 * Usage: node --import tsx tests/tools/show-parts.ts FOLDER
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { frames } from '../../views/parts/registry.ts';
import { launchBrowser } from './browser.ts';
import { eta, partsBody, standalonePage } from './render-parts.ts';

const LOOKS = [
  { name: 'desk', width: 1280, scheme: 'light', media: 'screen' },
  { name: 'phone', width: 360, scheme: 'light', media: 'screen' },
  { name: 'dark', width: 1280, scheme: 'dark', media: 'screen' },
  { name: 'paper', width: 760, scheme: 'light', media: 'print' },
] as const;

/** Height of one picture; taller ones are too small to judge when they are looked at. */
const SHEET = 1600;

type Look = (typeof LOOKS)[number];

async function picture(browser: Browser, folder: string, page: string, look: Look) {
  const name = `${page}-${look.name}`;
  const context = await browser.newContext({
    viewport: { width: look.width, height: 900 },
    colorScheme: look.scheme,
  });
  const tab = await context.newPage();
  await tab.emulateMedia({ media: look.media });
  await tab.goto(pathToFileURL(join(folder, `${page}.html`)).href);
  const [height, spill] = await tab.evaluate(() => {
    const root = document.documentElement;
    return [root.scrollHeight, root.scrollWidth - window.innerWidth] as const;
  });
  if (spill > 0) console.log(`${name} spills ${spill} px sideways`);
  for (let top = 0, sheet = 1; top < height; top += SHEET, sheet += 1) {
    const clip = { x: 0, y: top, width: look.width, height: Math.min(SHEET, height - top) };
    await tab.screenshot({ path: join(folder, `${name}-${sheet}.png`), fullPage: true, clip });
  }
  if (look.media === 'print') await tab.pdf({ path: join(folder, `${page}.pdf`), format: 'A4' });
  await context.close();
}

const folder = process.argv[2];
if (!folder) throw new Error('Name the folder for the pictures: show-parts.ts FOLDER');
await mkdir(folder, { recursive: true });
const pages = [
  { name: 'parts', html: await standalonePage('Parts', partsBody()) },
  ...(await Promise.all(
    frames.map(async (frame) => ({
      name: frame.name,
      html: await standalonePage('Frame', eta.render(frame.template, frame.data), frame.side),
    })),
  )),
];
const browser = await launchBrowser();
try {
  for (const page of pages) {
    await writeFile(join(folder, `${page.name}.html`), page.html);
    for (const look of LOOKS) await picture(browser, folder, page.name, look);
  }
} finally {
  await browser.close();
}
