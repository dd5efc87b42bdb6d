import { expect, test } from 'vitest';
import { keepReading, METHOD, sendJson, startSetUp } from '../tools/call.ts';
import { measuredPages } from './measured-pages.ts';

const { freshCall, open, page } = measuredPages();

/** A set-up of which one thing is not said, read over a known lobe: what is next is the answer to that. */
async function readWithout(left: 'spring' | 'lifter' | 'lash'): Promise<string> {
  await freshCall({
    engine: { cylinders: 8, rockerMounting: 'stud' },
    cam: { intake: { lobeLift: '.350 in', lash: '.016 in' }, assumedRatio: 1.6 },
  });
  const { service, person, buildId, callId } = open();
  await sendJson(service, person.bearer, 'PUT', `/api/v1/calls/${callId}/triage`, {
    engineState: 'apart',
    contact: 'none',
  });
  const method = { ...METHOD, spring: 'light', [left]: 'not-said' };
  const setUpId = await startSetUp(service, person, buildId, method);
  for (const [kind, peak] of [
    ['lobe-lift', '.350 in'],
    ['valve-lift', '.560 in'],
  ] as const)
    for (const _pass of [1, 2, 3]) await keepReading(service, person, buildId, setUpId, kind, peak);
  return page('ratio');
}

test.each(['spring', 'lifter', 'lash'] as const)(
  'the %s that nobody said is next, with the way to its question beside it',
  async (left) => {
    const html = await readWithout(left);
    const card = /href="[^"]*#([^"]+)"[^>]*>\s*Answer it/.exec(html)?.[1];
    expect(card).toBeDefined();
    expect(html).toContain(`id="${card}"`);
    expect(html.slice(html.indexOf(`id="${card}"`)).slice(0, 1500)).toMatch(new RegExp(left, 'i'));
  },
);
