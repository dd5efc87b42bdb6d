import { afterAll, beforeAll, expect } from 'vitest';
import { describeBuild, openCall } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What a person reads of a page. */
export { textBesideDrawings as read } from '../tools/page-text.ts';
/** On record in a field of the page. */
export const inField = (html: string, name: string) =>
  new RegExp(`name="${name}"[^>]*value="([^"]*)"`).exec(html)?.[1];

interface Opened {
  readonly service: TestService;
  readonly person: Person;
  readonly callId: string;
  readonly buildId: string;
}

/** The steps of marks, timing and adjusters as a browser without scripts has them: forms posted, pages read. */
export function measuredPages() {
  let opened: Opened | undefined;
  const open = (): Opened => {
    if (opened === undefined) throw new Error('the service is not open yet');
    return opened;
  };
  beforeAll(async () => {
    const service = await testService();
    opened = { service, person: await service.person(), callId: '', buildId: '' };
  });
  afterAll(() => open().service.close());
  return {
    open,
    async freshCall(spec?: object, goal?: string): Promise<void> {
      const { service, person } = open();
      opened = { service, person, ...(await openCall(service, person, 'Test build', goal)) };
      if (spec !== undefined) await describeBuild(service, person, opened.buildId, spec);
    },
    post(path: string, fields: Record<string, string>) {
      const { service, person, callId } = open();
      const key = crypto.randomUUID();
      return postForm(service, `/calls/${callId}${path}`, { key, ...fields }, { cookies: person.cookies });
    },
    /** A page of the call that is no step: its report, its card. */
    async sheet(name: string): Promise<string> {
      const { service, person, callId } = open();
      const answer = await service.request({ url: `/calls/${callId}/${name}`, cookies: person.cookies });
      expect(answer.statusCode).toBe(200);
      return answer.body;
    },
    async page(at: string): Promise<string> {
      const { service, person, callId } = open();
      const answer = await service.request({ url: `/calls/${callId}/steps/${at}`, cookies: person.cookies });
      expect(answer.statusCode).toBe(200);
      expect(htmlFaults(answer.body)).toEqual([]);
      return answer.body;
    },
  };
}
