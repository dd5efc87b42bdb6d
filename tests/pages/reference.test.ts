import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { bodyOf } from '../../server/reference/form/body-of.ts';
import { controlsOf } from '../../server/reference/form/controls-of.ts';
import { typedOf } from '../../server/reference/form/typed-of.ts';
import { HOSTILE } from '../../views/parts/part.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { type TestService, testService } from '../tools/service.ts';

const computations = await loadComputations();
const names = [...computations.keys()];

let service: TestService;
beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '100000' });
});
afterAll(() => service.close());

const get = async (url: string) => {
  const { statusCode, body } = await service.app.inject({ method: 'GET', url });
  return { status: statusCode, html: body };
};

async function post(name: string, fields: Readonly<Record<string, string>>) {
  const { statusCode, body } = await service.app.inject({
    method: 'POST',
    url: `/reference/${name}`,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    payload: new URLSearchParams(fields).toString(),
  });
  return { status: statusCode, html: body };
}

function known(name: string) {
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
const plain = (html: string) => html.replace(/&(?:lt|gt|quot|#39|amp);/g, (mark) => ESCAPES[mark] ?? mark);

/** The answer that stands on the page as JSON. */
function answerOn(html: string): unknown {
  const text = /The answer as JSON.*?<code>(.*?)<\/code>/s.exec(html)?.[1];
  return text === undefined ? undefined : JSON.parse(plain(text));
}

/** MathML says `form="prefix"` of its signs; to HTML that attribute names a form. */
const faultsOf = (html: string) => htmlFaults(html.replace(/ form="(?:prefix|postfix|infix)"/g, ''));

const NUMBER = /^-?\d/;
function sameWithin(computed: unknown, documented: unknown, where: string): void {
  if (typeof documented === 'number') {
    expect(typeof computed, where).toBe('number');
    const far = Math.abs(Number(computed) - documented);
    expect(far, where).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, Math.abs(documented)));
    return;
  }
  if (typeof documented !== 'object' || documented === null) {
    expect(computed, where).toEqual(documented);
    return;
  }
  const keys = Object.keys(documented);
  if (typeof computed !== 'object' || computed === null) throw new Error(`${where}: nothing was computed`);
  expect(
    Object.keys(computed)
      .filter((key) => !NUMBER.test(key))
      .sort(),
    where,
  ).toEqual(keys.filter((key) => !NUMBER.test(key)).sort());
  for (const key of keys)
    sameWithin(Reflect.get(computed, key), Reflect.get(documented, key), `${where}/${key}`);
}

describe('every computation', () => {
  it.each(names)('%s: its page shows the worked example, and the result that is documented', async (name) => {
    const { each } = known(name);
    const { status, html } = await get(`/reference/${name}`);
    expect(status).toBe(200);
    expect(faultsOf(html)).toEqual([]);
    expect(html).toContain('<math');
    expect(/undefined|NaN|\[object| style=/.exec(html.replace(/ nonce="[^"]*"/, ''))).toBeNull();
    sameWithin(answerOn(html), each.example.result, name);
  });

  it.each(names)('%s: the form as it stands makes the body of the example', (name) => {
    const { each, controls, typed } = known(name);
    const { body, faults } = bodyOf(controls, typed);
    expect(faults).toEqual([]);
    expect(each.run(body, 'inch').result).toEqual(each.run(each.example.inputs, 'inch').result);
  });

  it.each(names)('%s: posted as typed it answers what JSON answers, in either units', async (name) => {
    const { each, typed } = known(name);
    for (const units of ['inch', 'metric'] as const) {
      const page = await post(name, { ...typed, units });
      expect(page.status).toBe(200);
      const json = await service.app.inject({
        method: 'POST',
        url: `/api/v1/compute/${name}?units=${units}`,
        payload: each.example.inputs,
      });
      expect(answerOn(page.html)).toEqual(json.json().result);
    }
  });

  it.each(names)(
    '%s: an empty form is refused with each missing field named, nothing computed',
    async (name) => {
      const { status, html } = await post(name, {});
      expect(status).toBe(422);
      expect(html).toContain('put this right first');
      expect(html).toContain('<title>Error: ');
      expect(answerOn(html)).toBeUndefined();
      expect(faultsOf(html)).toEqual([]);
    },
  );

  it.each(names)('%s: hostile text in every field comes back whole and is never markup', async (name) => {
    const { typed } = known(name);
    const hostile = Object.fromEntries(Object.keys(typed).map((field) => [field, `${HOSTILE} ${field}`]));
    const { status, html } = await post(name, hostile);
    // A text that is read rather than measured may be refused or answered; nothing else may be taken.
    expect([200, 422]).toContain(status);
    expect(html).not.toMatch(/<script>alert|<img src=x/);
    expect(faultsOf(html)).toEqual([]);
    const { controls } = known(name);
    const choices = new Set(Object.keys(typed).filter((field) => isChoice(controls, field)));
    for (const [field, text] of Object.entries(hostile)) {
      if (!choices.has(field)) expect(plain(html), field).toContain(text);
    }
  });

  it.each(names)('%s: absurd numbers are refused or answered, never a failure', async (name) => {
    const { typed } = known(name);
    for (const absurd of ['1e308 in', '-1e308', '0', 'Infinity', '1e-320 mm', '9'.repeat(400)]) {
      const { status, html } = await post(
        name,
        Object.fromEntries(Object.keys(typed).map((field) => [field, absurd])),
      );
      expect([200, 422], absurd).toContain(status);
      expect(html).not.toMatch(/>NaN<|>Infinity<|undefined/);
    }
  });
});

function isChoice(controls: ReturnType<typeof controlsOf>, field: string): boolean {
  return controls.some((control) => {
    switch (control.kind) {
      case 'leaf':
        return control.name === field && ['word', 'truth'].includes(control.entry.as);
      case 'group':
        return isChoice(control.parts, field);
      default:
        return (
          field.startsWith(`${control.name}.`) &&
          isChoice(control.item(Number(field.split('.')[1])).parts, field)
        );
    }
  });
}

describe('what is typed', () => {
  const lift = { lobeLift: '350 thou', ratio: '1.6', lash: '.016' };

  it('is taken as the forms of the desk take it: thou, and the unit beside the field where none is typed', async () => {
    const { html } = await post('lift', lift);
    // .350 × 1.6 − .016 = .544
    expect(html).toContain('<span class="result-value">.544</span>');
    expect(html).toContain('read as <b>.016 in</b>');
  });

  it('a ratio is read out with its interval, digits no finer than it', async () => {
    const { html } = await get('/reference/ratio-at-full-lift');
    // Interval 1.4939496 to 1.5060504 (check of JCGM 100 in the example): half of it is .00605.
    expect(html).toContain(
      '<span class="result-value">1.5000</span> <span class="result-spread num">± .0061</span>',
    );
  });

  it('can be sent in the address, so that an answer has one', async () => {
    const { html } = await post('lift', lift);
    const link = /<a href="(\/reference\/lift\?[^"#]+)#answer">/.exec(html)?.[1];
    const again = await get(plain(link ?? 'missing'));
    expect(answerOn(again.html)).toEqual(answerOn(html));
  });

  it('stays where it was, with the fault at its field, in the summary, and with what came', async () => {
    const { status, html } = await post('lift', { lobeLift: '.35 lbf', ratio: 'abc', lash: '.02' });
    expect(status).toBe(422);
    expect(html).toContain('value=".35 lbf"');
    expect(html).toContain('value="abc"');
    expect(html).toContain('value=".02"');
    expect(html).toContain('<a href="#f-lobeLift">Lobe lift: ');
    expect(html).toContain('<a href="#f-ratio">Ratio: ');
    expect(plain(html)).toContain('“abc” came');
    expect(html.match(/aria-invalid="true"/g)).toHaveLength(2);
  });

  it('is refused where it is impossible together, at the fields that are named', async () => {
    const { status, html } = await post('lift', { lobeLift: '.01 in', ratio: '1.5', lash: '.5 in' });
    expect(status).toBe(422);
    expect(html).toMatch(/<a href="#f-lash">Lash: [^<]*the valve would not open/);
  });

  it('a long list is computed whole', async () => {
    const angles = Array.from({ length: 2000 }, (_, index) => `${index % 720} deg`).join('\n');
    const { status, html } = await post('piston-drop', {
      stroke: '3.48',
      rodLength: '5.7',
      crankAngles: angles,
      from: 'true-tdc',
    });
    expect(status).toBe(200);
    expect(html).toContain('Drops: 2000 rows');
  });

  it('one item too many is refused with the list left as it was', async () => {
    const angles = Array.from({ length: 2001 }, () => '1').join('\n');
    const { status, html } = await post('piston-drop', {
      stroke: '3.48',
      rodLength: '5.7',
      crankAngles: angles,
      from: 'true-tdc',
    });
    expect(status).toBe(422);
    expect(html).toContain('has 2001 items; 2000 at the most');
    expect(html).toContain(angles);
  });

  it('a line of a list that is wrong is named by its number and its part', async () => {
    const { typed } = known('lobe-profile');
    const { status, html } = await post('lobe-profile', { ...typed, durations: '0 in; 280 deg\n.05 in; x' });
    expect(status).toBe(422);
    expect(plain(html)).toMatch(/Durations: no\. 2, duration [^<]*“x” came|Durations: no\. 2, duration /);
  });

  it('a line with an entry too many is refused, not cut', async () => {
    const { typed } = known('lobe-profile');
    const { status, html } = await post('lobe-profile', { ...typed, durations: '0 in; 280 deg; 5' });
    expect(status).toBe(422);
    expect(html).toContain('line 1 has 3 entries');
  });

  it('a material is a name of the table, or an expansion of one’s own', async () => {
    const { typed } = known('lash-hot-cold');
    const own = await post('lash-hot-cold', { ...typed, 'materials.block': '11.7e-6 1/K' });
    expect(own.status).toBe(200);
    const none = await post('lash-hot-cold', { ...typed, 'materials.block': 'cheese' });
    expect(none.status).toBe(422);
    expect(none.html).toContain('<a href="#f-materials-block">Materials, block: ');
  });

  it('a row can be added without scripts, and nothing is lost by it', async () => {
    const { typed } = known('explain-readings');
    const { status, html } = await post('explain-readings', { ...typed, more: 'readings' });
    expect(status).toBe(200);
    expect(html).toContain(`name="readings.1.value"`);
    expect(html).toContain(`value="${typed['readings.0.value'] ?? 'missing'}"`);
  });
});

describe('the list', () => {
  it('has every computation, each once, and leads to the API and the parts', async () => {
    const { html } = await get('/reference');
    for (const name of names) expect(html.split(`href="/reference/${name}"`), name).toHaveLength(2);
    expect(html).toContain('href="/reference/api"');
    expect(html).toContain('href="/reference/parts"');
    expect(faultsOf(html)).toEqual([]);
  });

  // What a builder would type, and what it must find among the first three.
  it.each([
    ['coil bind', 'spring-load'],
    ['will the valve hit the piston', 'piston-to-valve'],
    ['PTV', 'piston-to-valve'],
    ['degree wheel pointer', 'top-dead-centre'],
    ['ICL', 'centreline'],
    ['how far is the cam advanced', 'cam-timing'],
    ['what ratio is it', 'ratio-at-full-lift'],
    ['half turn preload', 'adjuster'],
    ['witness mark on the valve tip', 'roller-sweep'],
    ['valve float', 'separation-speed'],
    ['7/16-20', 'thread'],
    ['valve cover', 'cover-room'],
    ['Coil-Bind', 'spring-load'],
    ['springs', 'spring-load'],
    ['dial indicater runs backwards', 'dial-reading'],
  ])('“%s” finds %s', async (asked, wanted) => {
    const { html } = await get(`/reference?q=${encodeURIComponent(asked)}`);
    const found = Array.from(
      html.matchAll(/class="shelf-link" href="\/reference\/([a-z-]+)"/g),
      ([, name]) => name,
    );
    expect(found.slice(0, 3)).toContain(wanted);
  });

  it('says so when nothing is found, and escapes what was asked', async () => {
    const { status, html } = await get(`/reference?q=${encodeURIComponent('<script>zzqq')}`);
    expect(status).toBe(200);
    expect(html).toContain('0 found for “&lt;script&gt;zzqq”');
    expect(html).not.toContain('<script>zz');
  });
});

describe('the other pages', () => {
  it('the parts are shown in every state', async () => {
    const { status, html } = await get('/reference/parts');
    expect(status).toBe(200);
    expect(html).toContain('The parts these pages are made of');
  });

  it('the API page has every operation of the document, each leading somewhere', async () => {
    const { status, html } = await get('/reference/api');
    expect(status).toBe(200);
    expect(faultsOf(html)).toEqual([]);
    const document = (await service.app.inject('/api/v1/openapi.json')).json<{
      paths: Record<string, object>;
    }>();
    const missing = Object.keys(document.paths).filter((path) => !html.includes(`<code>${path}</code>`));
    // Each computation's two operations stand at one address, told of once.
    expect(missing).toEqual([]);
    expect(/undefined|\[object/.exec(html)).toBeNull();
  });

  it('the type of a problem leads to its page', async () => {
    const problem = await service.app.inject({ method: 'POST', url: '/api/v1/compute/lift', payload: {} });
    const { type, title } = problem.json<{ type: string; title: string }>();
    const { status, html } = await get(type);
    expect(status).toBe(200);
    expect(plain(html)).toContain(`<h1>${title}</h1>`);
    expect(faultsOf(html)).toEqual([]);
    expect((await get('/problems')).html).toContain(`href="${type}"`);
  });

  it('an unknown computation or problem is not found', async () => {
    for (const url of [
      '/reference/nothing',
      '/problems/nothing',
      '/problems/__proto__',
      '/reference/constructor',
    ]) {
      expect((await get(url)).status, url).toBe(404);
    }
  });
});
