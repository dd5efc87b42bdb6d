import { readdir } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { LayoutFrame } from '../../views/layout.ts';
import { frames, parts } from '../../views/parts/registry.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { eta, partsBody, standalonePage } from '../tools/render-parts.ts';

const examples = parts.flatMap((part) =>
  part.examples.map((example) => ({ part, name: `${part.name}: ${example.title}`, data: example.data })),
);

/** Templates that are only ever a piece of another part. */
const PIECES = ['asks', 'cell-input', 'hatches', 'mark', 'scale'];

describe('every example of every part', () => {
  it.each(examples)('$name is well-formed and complete', ({ part, data }) => {
    const html = eta.render(part.template, data);
    const unlinked = htmlFaults(html).filter((fault) => !fault.startsWith('nothing has the id'));
    expect(unlinked).toEqual([]);
    expect(html).not.toMatch(/undefined|NaN|\[object|>null</);
  });

  it.each(examples)('$name lets no text become markup', ({ part, data }) => {
    const html = eta.render(part.template, data);
    expect(html).not.toMatch(/<script|<img src=x|<i>|" ?onclick/i);
    if (JSON.stringify(data).includes('<script>')) expect(html).toContain('&lt;script&gt;');
  });

  it('every part shows itself with hostile text', () => {
    const without = parts.filter((part) => !JSON.stringify(part.examples).includes('<script>'));
    // The tape is made of tape lines, which have theirs.
    expect(without.map((part) => part.name)).toEqual(['tape']);
  });

  it('every template is a part, a frame or a piece of one', async () => {
    const files = await readdir(new URL('../../views/parts', import.meta.url));
    const found = files.filter((file) => file.endsWith('.eta')).map((file) => file.slice(0, -'.eta'.length));
    const framed = frames.map((frame) => frame.template.slice('/parts/'.length));
    const named = new Set([...parts.map((part) => part.name), ...framed, ...PIECES]);
    expect(found.sort()).toEqual([...named].sort());
  });
});

describe('whole pages', () => {
  it('the page of all parts has no fault, every id once and every reference answered', async () => {
    expect(htmlFaults(await standalonePage('Parts', partsBody()))).toEqual([]);
  });

  it.each(frames)('frame $name has no fault and one main heading', async ({ template, data, side }) => {
    const html = await standalonePage('Frame', eta.render(template, data), side);
    expect(htmlFaults(html)).toEqual([]);
    expect(html.match(/<h1/g)).toHaveLength(1);
  });

  it('the layout links style and script and escapes what it is given', () => {
    const frame: LayoutFrame = {
      title: '<b>Error: one</b>',
      styleHref: '/s.css',
      skip: 'Skip to the step',
      script: { href: '/b.js', nonce: '"n1' },
      side: 'desk',
      nav: [{ href: '/calls', label: '<i>Calls</i>', current: true }],
      signedIn: { name: '<i>Ann</i>' },
    };
    const html = eta.render('/layout', { body: '<p>ready</p>', frame });
    expect(html).toContain('<title>&lt;b&gt;Error: one&lt;/b&gt; · Benchcall</title>');
    expect(html).toContain('<link rel="stylesheet" href="/s.css">');
    expect(html).toContain('<script type="module" src="/b.js" nonce="&quot;n1"></script>');
    expect(html).toContain('<p>ready</p>');
    expect(html).not.toContain('<i>');
    expect(html).toContain('aria-current="page"');
  });
});

describe('what the parts promise', () => {
  it('a part takes nothing from the page that includes it', () => {
    const page = "<%~ include('/parts/field', { id: 'lift', label: 'Valve lift' }) %>";
    const html = eta.renderString(page, {
      error: 'from the page',
      hint: 'from the page',
      value: 'from the page',
    });
    expect(html).toContain('Valve lift');
    expect(html).not.toContain('from the page');
  });

  it('a field is text without a length limit, and its fault and hint are read with it (B1, B2)', () => {
    const html = eta.render('/parts/field', {
      id: 'lift',
      label: 'Lift',
      hint: 'h',
      unit: 'in',
      error: 'e',
      value: '-.004',
    });
    expect(html).toContain('type="text" value="-.004"');
    expect(html).not.toContain('maxlength');
    expect(html).toContain('aria-describedby="lift-hint lift-unit lift-error"');
    expect(html).toContain('aria-invalid="true"');
    for (const off of ['autocomplete="off"', 'autocapitalize="off"', 'spellcheck="false"'])
      expect(html).toContain(off);
  });

  it('what was typed into a longer field comes back byte for byte, a first empty line too', () => {
    const html = eta.render('/parts/textarea', { id: 't', label: 'T', value: '\n two\n' });
    // HTML drops exactly one newline right after the opening tag (HTML Living Standard, 13.1.2.5).
    expect(html).toContain('>\n\n two\n</textarea>');
  });

  it('the status line is empty in the first page, polite and whole (ARIA22)', () => {
    expect(eta.render('/parts/status-line', { id: 's' }).trim()).toBe(
      '<p class="status-line" role="status" aria-live="polite" aria-atomic="true" id="s"></p>',
    );
  });

  it.each([
    ['agrees', 'good'],
    ['cannot-tell', 'unsure'],
    ['differs', 'bad'],
    ['clear', 'good'],
    ['close', 'unsure'],
    ['short', 'bad'],
  ])('%s has its word, a mark of its own and its hatch', (word, tone) => {
    const html = eta.render('/parts/verdict', { word });
    expect(html).toContain(word.replace('-', ' '));
    expect(html).toContain(`url(#hatch-${tone})`);
    expect(html.match(/<path d="M[^"]+"/g)).toHaveLength(1);
  });
});

describe('the checker of pages', () => {
  it.each([
    ['<p><b>x</p></b>', '</p> closes <b>'],
    ['<p><div></div></p>', '<div> inside <p>'],
    ['<p id="a"></p><p id="a"></p>', 'id a stands 2 times'],
    ['<p style="x">', '<p> has an inline style'],
    ['<p onclick="x"></p>', '<p> has the inline handler onclick'],
    ['<p class="a" class="b"></p>', '<p> has class twice'],
    ['<label for="b"></label>', 'nothing has the id b'],
    ['<p>a < b</p>', '"<" is not a tag'],
  ])('finds the fault in %s', (html, fault) => {
    expect(htmlFaults(html)).toContain(fault);
  });
});
