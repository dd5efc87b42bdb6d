import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall } from '../tools/call.ts';
import { loadDemoCatalogue } from '../tools/demo-catalogue.ts';
import { makeLink } from '../tools/filled-call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as text } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let owner: Person;
let callId: string;
let at: string;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  await loadDemoCatalogue(service, owner);
  ({ callId } = await openCall(service, owner, 'Two parts in the hand'));
  at = `/calls/${callId}`;
});
afterAll(() => service.close());

const see = (url: string, cookies: Record<string, string> = owner.cookies) =>
  service.request({ method: 'GET', url, cookies });
const post = (url: string, fields: Record<string, string>, cookies: Record<string, string> = owner.cookies) =>
  postForm(service, url, fields, { cookies });

describe('several parts, and how they were read', () => {
  test('the half-width of each reading stands beside it; a guess is called one', async () => {
    for (const fields of [
      { kind: 'roller-diameter', size: '.5', tool: 'guess' },
      { kind: 'roller-diameter', size: '.496', tool: 'caliper', within: '.003' },
    ])
      expect((await post(`${at}/part-readings`, { form: 'part', ...fields })).statusCode).toBe(303);
    const page = await see(`${at}/steps/identify`);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(text(page.body)).toContain('a guess, ± .060 in');
    expect(text(page.body)).toContain('by caliper, ± .003 in');
    expect(text(page.body)).toMatch(/roller diameter \.500 in ± \.060 \(a guess\)/);
    expect(text(page.body)).toContain('Against ordinary sizes');
    // The tool of the last reading is offered for the next.
    expect(page.body).toMatch(/<option value="caliper" selected/);
  });

  test('what goes with the part is asked with a drawing of its own', async () => {
    for (const kind of ['stud-diameter', 'stud-pitch', 'stem-diameter']) {
      const page = await see(`${at}/steps/identify?ask=${kind}`);
      expect(htmlFaults(page.body), kind).toEqual([]);
      expect(page.body).toContain(`name="kind" value="${kind}"`);
      expect(page.body).toContain('id="part-drawing-desc"');
    }
    const kept = await post(`${at}/part-readings`, {
      form: 'part',
      kind: 'stud-pitch',
      size: '.500',
      count: '10',
      tool: 'caliper',
    });
    expect(kept.statusCode).toBe(303);
    expect(text((await see(`${at}/steps/identify`)).body)).toContain('10 threads over .500 in');
  });

  test('another part: added, chosen, read by itself; the bench may add one too', async () => {
    const added = await post(`${at}/hand-parts`, { form: 'hand-part', name: 'from the <box>' });
    expect(added.statusCode).toBe(303);
    const address = String(added.headers.location);
    expect(address).toMatch(/\?part=[0-9a-f-]{36}&kept=\d+$/);
    const page = await see(address);
    expect(htmlFaults(page.body)).toEqual([]);
    expect(page.body).toContain('from the &lt;box&gt;');
    const partId = /part=([0-9a-f-]{36})/.exec(address)?.[1] ?? '';
    expect(page.body).toContain(`name="partId" value="${partId}"`);
    const read = await post(`${at}/part-readings`, {
      form: 'part',
      kind: 'hole-across-trunnion',
      size: '.3735',
      partId,
    });
    expect(String(read.headers.location)).toContain(`?part=${partId}&kept=`);
    expect(text((await see(address)).body)).toContain('3/8-16 UNC or 3/8-24 UNF');
    const first = await see(`${at}/steps/identify?part=part`);
    expect(text(first.body)).not.toContain('Fastener the hole takes');
    expect(text(first.body)).toContain('Parts in the hand');
    const twice = await post(`${at}/hand-parts`, { form: 'hand-part', name: 'from the <box>' });
    expect(twice.statusCode).toBe(422);
    expect(text(twice.body)).toContain('already has a part in the hand');
    const nameless = await post(`${at}/hand-parts`, { form: 'hand-part', name: ' ' });
    expect(nameless.statusCode).toBe(422);
    expect(htmlFaults(nameless.body)).toEqual([]);
    const link = { 'benchcall-bench': (await makeLink(service, owner, callId)).bench };
    const atBench = await post('/bench/hand-parts', { form: 'hand-part', name: 'the third' }, link);
    expect(atBench.statusCode).toBe(303);
    expect(htmlFaults((await see(String(atBench.headers.location), link)).body)).toEqual([]);
  });

  test('a size that cannot be is asked on the step, and answered there', async () => {
    // Without its unit it can be millimetres: that is asked at the field, and nothing is kept.
    const bare = await post(`${at}/part-readings`, { form: 'part', kind: 'body-width', size: '8.41' });
    expect(bare.statusCode).toBe(422);
    expect(text(bare.body)).toContain('Is it 8.41 mm?');
    expect(bare.body).toContain('value="8.41"');
    const kept = await post(`${at}/part-readings`, { form: 'part', kind: 'body-width', size: '8.41 in' });
    expect(kept.statusCode).toBe(303);
    const page = await see(`${at}/steps/identify?part=part`);
    expect(text(page.body)).toContain('Body width at the pivot of 8.41 in cannot be');
    expect(text(page.body)).toContain('waits for an answer, and does not count before it');
    const form = /<form[^>]*action="[^"]*\/answers"[^>]*>(.*?)<\/form>/s.exec(page.body)?.[1] ?? '';
    const hidden = Object.fromEntries(
      [...form.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)].map(([, name, value]) => [
        name ?? '',
        (value ?? '').replaceAll('&quot;', '"').replaceAll('&amp;', '&'),
      ]),
    );
    expect(form).toContain('value="dot-left"');
    const answer = await post(`${at}/answers`, {
      ...hidden,
      answer: 'dot-left',
      words: 'read the dot again',
    });
    expect(answer.statusCode).toBe(303);
    const after = text((await see(`${at}/steps/identify?part=part`)).body);
    expect(after).toContain('meant as .841 in');
    expect(after).toContain('8.41 in');
  });

  test('the report has each part with how it was read', async () => {
    const report = await see(`${at}/report`);
    expect(report.statusCode).toBe(200);
    expect(htmlFaults(report.body)).toEqual([]);
    expect(text(report.body)).toContain('In the hand: from the <box>');
    expect(text(report.body)).toContain('± .060 in (a guess)');
    expect(text(report.body)).toContain('± .003 in by caliper');
  });
});
