import { expect, it } from 'vitest';
import { keptPages, soon, titleOf, weakPhone } from '../tools/weak-phone.ts';

/** The address that the desk sent, opened again where there is no signal; what must come of it is said by no standard. */
const at = weakPhone();

async function newAddress(): Promise<string> {
  const links = `/api/v1/calls/${at.call.callId}/share-links`;
  const { secret } = await at.desk('POST', links, { holder: 'Pat at the engine', days: 1 });
  return `${at.line.base}/b/${String(secret)}`;
}

it('leads to the pages that are kept of its link, and no other address does', async () => {
  const { bench, line } = at;
  const [own, other] = [await newAddress(), await newAddress()];
  await bench.goto(own);
  await bench.getByRole('button', { name: 'Open my build' }).click();
  await bench.waitForURL(/\/bench\/steps\//);
  await soon(() => keptPages(bench)).toContain('/bench/steps/notes');
  const taken = () =>
    bench.evaluate(async () => (await navigator.serviceWorker.getRegistration('/b/'))?.active?.state);
  await soon(taken).toBe('activated');
  line.set('down');
  await bench.goto(own);
  expect(new URL(bench.url()).pathname).toMatch(/^\/bench\/steps\//);
  await soon(() => titleOf(bench).textContent()).toContain('No signal.');
  await bench.goto(other);
  await bench.getByText('This page is not on the phone yet').waitFor();
});
