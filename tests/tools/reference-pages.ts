import { afterAll, beforeAll } from 'vitest';
import { controlsOf } from '../../server/compute-forms/form/controls-of.ts';
import { typedOf } from '../../server/compute-forms/form/typed-of.ts';
import { htmlFaults } from './html-faults.ts';
import type { Asked } from './http.ts';
import { madeOnce } from './made-once.ts';
import { type TestService, testService } from './service.ts';

const { computations } = await madeOnce();

export const names = [...computations.keys()];

/** A service for the tests of one file, and its pages of the reference. */
export function referencePages() {
  let service: TestService;
  beforeAll(async () => {
    service = await testService({ COMPUTE_PER_MINUTE: '100000' });
  });
  afterAll(() => service.close());

  const get = async (url: string) => {
    const { statusCode, body } = await service.request({ method: 'GET', url });
    return { status: statusCode, html: body };
  };
  const post = async (name: string, fields: Readonly<Record<string, string>>) => {
    const { statusCode, body } = await service.request({
      method: 'POST',
      url: `/reference/${name}`,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      payload: new URLSearchParams(fields).toString(),
    });
    return { status: statusCode, html: body };
  };
  return { ask: (request: Asked | string) => service.request(request), get, post };
}

/** A computation with the controls of its form and its example as it is typed there. */
export function known(name: string) {
  const each = computations.get(name);
  if (each === undefined) throw new Error(`no computation ${name}`);
  return {
    each,
    controls: controlsOf(each.input),
    typed: typedOf(controlsOf(each.input), each.example.inputs),
  };
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
};

export const plain = (html: string) =>
  html.replace(/&(?:lt|gt|quot|#39|amp);/g, (mark) => ESCAPES[mark] ?? mark);

/** The answer that stands on the page as JSON. */
export function answerOn(html: string): unknown {
  const text = /The answer as JSON.*?<code>(.*?)<\/code>/s.exec(html)?.[1];
  return text === undefined ? undefined : JSON.parse(plain(text));
}

/** MathML says `form="prefix"` of its signs; to HTML that attribute names a form. */
export const faultsOf = (html: string) => htmlFaults(html.replace(/ form="(?:prefix|postfix|infix)"/g, ''));
