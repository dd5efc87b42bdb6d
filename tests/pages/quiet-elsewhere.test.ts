import { afterAll, beforeAll, expect, test } from 'vitest';
import { keepReading, METHOD, openCall, startSetUp } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { asWritten } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/**
 * Of what another step has next, and of its answer, a step has one quiet line with a link: nothing above its own entry
 * outweighs that.
 */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service?.close());

/** A call whose ratio step is next: the running spring was read, and nothing else. */
async function pages() {
  const { buildId, callId } = await openCall(service, desk);
  const setUpId = await startSetUp(service, desk, buildId, { ...METHOD, spring: 'running' });
  for (const lobe of ['.350 in', '.3505 in', '.3495 in'])
    await keepReading(service, desk, buildId, setUpId, 'lobe-lift', lobe);
  for (const lift of ['.543 in', '.5435 in', '.5425 in'])
    await keepReading(service, desk, buildId, setUpId, 'valve-lift', lift);
  return async (step: string): Promise<string> => {
    const { body } = await service.app.inject({
      url: `/calls/${callId}/steps/${step}`,
      cookies: desk.cookies,
    });
    expect(htmlFaults(body)).toEqual([]);
    return body;
  };
}

const part = (html: string, start: RegExp, end: string): string => {
  const from = html.search(start);
  return from < 0 ? '' : html.slice(from, html.indexOf(end, from));
};
const nextOf = (html: string) => part(html, /<div class="bar-next/, '</div>');
const answerOf = (html: string) => part(html, /<p class="bar-answer/, '</p>');

test('on another step: a link and no button, and no large answer', async () => {
  const page = await pages();
  for (const step of ['build', 'parts', 'geometry']) {
    const html = await page(step);
    const elsewhere = [nextOf(html), answerOf(html)].filter((each) => each.includes('/steps/ratio"'));
    expect(elsewhere.length, step).toBeGreaterThan(0);
    for (const line of elsewhere) {
      expect(line, step).toContain('bar-elsewhere');
      expect(line, step).not.toContain('button');
      expect(line, step).not.toContain('headline-sentence');
    }
  }
});

test('on its own step the answer is large, with its interval; on a form of that step it is the same one', async () => {
  const page = await pages();
  // .543 / .350 = 1.551.
  for (const at of ['ratio', 'ratio?new=yes']) {
    const answer = answerOf(await page(at));
    expect(answer, at).toContain('headline-sentence');
    expect(asWritten(answer), at).toMatch(/1\.551 ± \.\d{3} on the running spring/);
  }
});
