import { describe, expect, test } from 'vitest';
import { createViews } from '../../views/engine.ts';
import { withWholeFigures } from '../../views/whole-figures.ts';
import { asWritten, textOf } from '../tools/page-text.ts';

const wholeIn = (text: string): string[] =>
  [...withWholeFigures(text).matchAll(/<span class="num">([^<]*)<\/span>/g)].map(([, figure = '']) => figure);

describe('a figure stands in one line', () => {
  /* A number and its unit are not parted at the end of a line: ISO 80000-1, 7.1.4, and the SI brochure, 5.4.3. */
  test.each([
    ['1.747 ± .006 on a light spring', ['1.747 ± .006']],
    ['.043 to .103 in, against .050 in', ['.043 to .103 in', '.050 in']],
    ['7/16-20 UNF on the stud, 10 turns', ['7/16-20 UNF', '10 turns']],
    ['12,24 mm; 350 lbf/in; −3 to 4 deg', ['12,24 mm', '350 lbf/in', '−3 to 4 deg']],
    ['within 2 %, 1 1/2 in of it', ['2 %', '1 1/2 in']],
  ])('%s', (text, whole) => expect(wholeIn(text)).toEqual(whole));

  test('what has nothing to break at, and what is no figure, is left as it is', () => {
    for (const text of ['a 1.6', '36°', 'on 2026-03-14', 'call 1041', 'M10×1.25', 'SBC350 4'])
      expect(withWholeFigures(text)).toBe(text);
  });

  test('letters that mean something in HTML are escaped on either side of it', () => {
    expect(withWholeFigures('<b> & .482 in "so"')).toBe(
      '&lt;b&gt; &amp; <span class="num">.482 in</span> &quot;so&quot;',
    );
    expect(asWritten(withWholeFigures('a & .482 in'))).toBe('a &amp; .482 in');
    expect(textOf(withWholeFigures('1.6 ± .02, it said'))).toBe('1.6 ± .02, it said');
  });
});

describe('in a template', () => {
  const views = createViews();
  const rendered = (template: string) => views.renderString(template, { said: '.482 in' });
  const WHOLE = '<span class="num">.482 in</span>';

  test('text is written so, in whatever it stands and after a branch', () => {
    expect(rendered('<p><%= it.said %></p>')).toBe(`<p>${WHOLE}</p>`);
    expect(rendered('<p<% if (it.said) { %> class="a"<% } %>><%= it.said %></p>')).toContain(`>${WHOLE}<`);
    expect(rendered('<% [1].map(() => { %><i><%= it.said %></i><% }) %>')).toBe(`<i>${WHOLE}</i>`);
  });

  test('an attribute, and an element of letters alone, keeps its letters', () => {
    expect(rendered('<a title="<%= it.said %>"><%= it.said %></a>')).toBe(`<a title=".482 in">${WHOLE}</a>`);
    for (const name of ['title', 'textarea', 'option', 'text', 'desc', 'pre', 'code'])
      expect(rendered(`<${name}><%= it.said %></${name}><b><%= it.said %></b>`)).toBe(
        `<${name}>.482 in</${name}><b>${WHOLE}</b>`,
      );
  });
});
