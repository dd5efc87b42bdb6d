import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { faultsOf, names, plain, referencePages } from '../tools/reference-pages.ts';

const { ask, get } = referencePages();

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
    ['checking pushrod', 'pushrod-length'],
    ['pump-up', 'lifter-preload'],
    ['bucket shim', 'lash-shim'],
    ['stand shim', 'stand-height'],
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
    const document = z
      .looseObject({ paths: z.record(z.string(), z.unknown()) })
      .parse((await ask('/api/v1/openapi.json')).json());
    const missing = Object.keys(document.paths).filter((path) => !html.includes(`<code>${path}</code>`));
    // Each computation's two operations stand at one address, told of once.
    expect(missing).toEqual([]);
    expect(/undefined|\[object/.exec(html)).toBeNull();
  });

  it('the type of a problem leads to its page', async () => {
    const problem = await ask({ method: 'POST', url: '/api/v1/compute/lift', payload: {} });
    const { type, title } = z.looseObject({ type: z.string(), title: z.string() }).parse(problem.json());
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
