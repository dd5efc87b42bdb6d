import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as text } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let desk: Person;
let opened: { callId: string; buildId: string };
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
  opened = await openCall(service, desk, 'Questions of a sheet');
  // Invented: the fifth intake .100 low at the valve, one turn of a usual dial (common practice, no source).
  const readings = ['.565', '.564', '.566', '.565', '.464', '.565', '.566', '.564'].flatMap((lift, index) => [
    { cylinder: index + 1, valve: 'intake', kind: 'lobe-lift', reading: `.35${index % 3} in` },
    { cylinder: index + 1, valve: 'intake', kind: 'valve-lift', reading: `${lift} in` },
  ]);
  const how = { spring: 'light', lifter: 'solid', tool: 'indicator' };
  await sendJson(service, desk.bearer, 'POST', `/api/v1/builds/${opened.buildId}/sheet`, {
    ...how,
    readings,
  });
});
afterAll(() => service.close());

const see = async (url: string, cookies: Record<string, string>) => {
  const page = await service.request({ method: 'GET', url, cookies });
  expect(page.statusCode).toBe(200);
  expect(htmlFaults(page.body)).toEqual([]);
  return page.body;
};
const asksIn = (html: string) => [
  ...html.matchAll(/<span class="cell-asks">(?:<a href="([^"]*)">)?([^<]*)(?:<\/a>)?<\/span>/g),
];

test.each(['', '?order=bank'])('a question in a cell of the sheet leads to its card %s', async (query) => {
  const bench = { 'benchcall-bench': (await makeLink(service, desk, opened.callId)).bench };
  const pages = [
    await see(`/calls/${opened.callId}/steps/sheet${query}`, desk.cookies),
    await see(`/bench/steps/sheet${query}`, bench),
  ];
  for (const page of pages) {
    const asks = asksIn(page);
    expect(asks.length).toBeGreaterThan(0);
    for (const [, href = '', ask = ''] of asks) {
      expect(href).toMatch(/^#./);
      const card =
        new RegExp(`<article[^>]* id="${href.slice(1)}"[\\s\\S]*?</article>`).exec(page)?.[0] ?? '';
      expect(text(card)).toContain(ask);
    }
  }
});

test('on paper the questions stand on the back page, and the cell says so', async () => {
  const paper = await see(`/calls/${opened.callId}/report`, desk.cookies);
  const asks = asksIn(paper);
  expect(asks.map(([, href, said]) => [href, said])).toEqual([[undefined, 'see back']]);
  const behind = text(paper.slice(paper.indexOf('class="report-behind')));
  expect(behind).toMatch(/Asked of these figures.*5 intake: .*turn/);
});
