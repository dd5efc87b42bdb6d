import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { liveCall } from '../tools/live-call.ts';
import {
  enter,
  enterInVain,
  entriesOf,
  keptPages,
  READING,
  soon,
  titleOf,
  weakPhone,
} from '../tools/weak-phone.ts';

/**
 * The builder's phone where the signal comes and goes, with a real line that breaks. What must come of it is said by
 * no standard: an entry is kept once, in the order it was made in, or is still in front of whoever made it.
 */

const at = weakPhone();
const readings = () => at.readings();

async function open(path = '/bench/steps/ratio'): Promise<Page> {
  const page = await at.phone.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(`${at.line.base}${path}`);
  return page;
}

it('six readings, entered while the line fails in three ways, are kept once each and in order', async () => {
  at.line.set('answer lost');
  await enterInVain(at.bench, '.561', 1);
  expect(await readings()).toEqual(['.561']);
  expect(await entriesOf(at.bench).first().textContent()).toContain('no answer yet, may have arrived');
  at.line.set('cut');
  await enterInVain(at.bench, '.562', 2);
  at.line.set('down');
  await at.bench.reload();
  await enterInVain(at.bench, '.563', 3);
  await enterInVain(at.bench, 'about nine', 4);
  await at.phone.setOffline(true);
  await enterInVain(at.bench, '.564', 5);
  await enterInVain(at.bench, '.565', 6);
  await enterInVain(at.bench, '.566', 7);
  expect(await at.bench.locator('.tape-unsent').count()).toBe(7);
  await at.bench.close();
  await at.phone.setOffline(false);
  at.line.set('up');
  // Two pages at once: only one of them sends.
  const [one, other] = await Promise.all([open(), open('/bench/steps/cam')]);
  const all = ['.561', '.562', '.563', '.564', '.565', '.566'];
  await soon(readings).toEqual(all);
  for (const page of [one, other]) await soon(() => titleOf(page).textContent()).toBe('1 was not taken.');
  const refused = entriesOf(one).first();
  expect(await entriesOf(one).count()).toBe(1);
  expect(await refused.locator('.unsent-typed').textContent()).toContain('about nine');
  expect(await refused.locator('.unsent-why').textContent()).toMatch(/^Reading at full lift .*\.$/);
  const desk = await at.browser.newContext();
  const [name = '', value = ''] = at.call.cookie.cookie.split('=');
  await desk.addCookies([{ name, value, url: at.line.base }]);
  const atDesk = await desk.newPage();
  await atDesk.goto(`${at.line.base}/calls/${at.call.callId}/steps/ratio`);
  await one.reload();
  for (const page of [atDesk, one]) {
    const tape = (await page.locator('.tape-line:not(.tape-unsent)').allTextContents()).join(' ');
    expect(tape.match(/\.56\d in/g)).toEqual(all.map((typed) => `${typed} in`));
  }
  await desk.close();
});

it('words that were changed after they did arrive are refused: nothing is kept twice', async () => {
  at.line.set('answer lost');
  await enterInVain(at.bench, '.561', 1);
  at.line.set('down');
  await at.bench.reload();
  await entriesOf(at.bench).getByRole('button', { name: 'Change' }).click();
  await soon(() => at.bench.inputValue(READING)).toBe('.561');
  await enterInVain(at.bench, '.571', 1);
  at.line.set('up');
  await at.bench.reload();
  await soon(() => entriesOf(at.bench).locator('.unsent-why').textContent()).toContain('It did arrive');
  expect(await readings()).toEqual(['.561']);
});

it('when the link has ended its pages are gone, and what was not sent can be taken along', async () => {
  at.line.set('down');
  await at.bench.reload();
  await enterInVain(at.bench, '.561', 1);
  const ended = await at.service.app.inject({
    method: 'DELETE',
    url: `/api/v1/calls/${at.call.callId}/share-links/${at.call.linkId}`,
    headers: at.call.desk.bearer,
  });
  expect(ended.statusCode).toBe(200);
  at.line.set('up');
  await at.bench.reload();
  await soon(() => titleOf(at.bench).textContent()).toBe('This link has ended. 1 may have arrived.');
  await soon(() => keptPages(at.bench)).toEqual([]);
  await at.phone.grantPermissions(['clipboard-read', 'clipboard-write']);
  await at.bench.getByRole('button', { name: 'Copy the words' }).click();
  await at.bench.getByText('Copied.').waitFor();
  expect(await at.bench.evaluate(() => navigator.clipboard.readText())).toMatch(
    /^\d\d:\d\d Lobe lift 1 intake, pass 1: Reading at full lift: \.561$/,
  );
  await at.bench.getByRole('button', { name: 'Delete' }).click();
  await at.bench.getByRole('button', { name: 'Delete for good' }).click();
  await soon(() => entriesOf(at.bench).count()).toBe(0);
});

it('what was typed under one link goes into no other', async () => {
  at.line.set('down');
  await at.bench.reload();
  await enterInVain(at.bench, '.561', 1);
  const other = await liveCall(at.service);
  const [name = '', value = ''] = other.bench.cookie.split('=');
  await at.phone.addCookies([{ name, value, url: at.line.base }]);
  at.line.set('up');
  await at.bench.reload();
  await soon(() => titleOf(at.bench).textContent()).toBe('1 of another link not sent.');
  await enter(at.bench, '.581');
  await soon(() => at.readings(other)).toEqual(['.581']);
  expect(await readings()).toEqual([]);
});

it('the worker sends what waits when the browser wakes it, with no page of ours open', async () => {
  at.line.set('down');
  await at.bench.reload();
  await enterInVain(at.bench, '.561', 1);
  const other = await at.phone.newPage();
  await at.bench.close();
  const devtools = await at.phone.newCDPSession(other);
  const registered = new Promise<string>((found) => {
    devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const ours = registrations.find(({ scopeURL }) => scopeURL.startsWith(at.line.base));
      if (ours !== undefined) found(ours.registrationId);
    });
  });
  await devtools.send('ServiceWorker.enable');
  at.line.set('up');
  await devtools.send('ServiceWorker.dispatchSyncEvent', {
    origin: at.line.base,
    registrationId: await registered,
    tag: 'send',
    lastChance: false,
  });
  await soon(readings).toEqual(['.561']);
});

it('over plain http, where a browser has no worker and no locks, an entry waits all the same', async () => {
  const { port } = new URL(at.line.base);
  const base = `http://bench.test:${port}`;
  const [name = '', value = ''] = at.call.bench.cookie.split('=');
  await at.phone.addCookies([{ name, value, url: base }]);
  await at.bench.goto(`${base}/bench/steps/ratio`);
  expect(await at.bench.evaluate(() => [isSecureContext, 'locks' in navigator])).toEqual([false, false]);
  at.line.set('cut');
  await enterInVain(at.bench, '.561', 1);
  await enterInVain(at.bench, '.562', 2);
  at.line.set('up');
  await at.bench.reload();
  await soon(readings).toEqual(['.561', '.562']);
});

it('a picture that does not go through stays chosen, and goes once when it is pressed again', async () => {
  const image = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#456' } }).jpeg();
  await at.bench.goto(`${at.line.base}/bench/photographs`);
  const buffer = await image.toBuffer();
  await at.bench
    .locator('input[type=file]')
    .setInputFiles({ name: 'tip.jpg', mimeType: 'image/jpeg', buffer });
  at.line.set('answer lost');
  const press = () => at.bench.locator('form[enctype] button').click();
  await press();
  await at.bench.getByText('The picture is still chosen here').waitFor();
  at.line.set('up');
  await press();
  await soon(() => at.bench.locator('.photograph').count()).toBe(1);
});
