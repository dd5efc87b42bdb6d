import { readdir } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { VIEWS } from '../../views/engine.ts';
import { programOf, readTemplate, typeFaults } from '../tools/typed-templates.ts';

const files = (await readdir(VIEWS, { recursive: true })).filter((file) => file.endsWith('.eta'));
const names = files.map((file) => `/${file.slice(0, -'.eta'.length)}`).sort();

/** The type of what a template is given, as the types of the views name it. */
function dataOf(name: string): string {
  if (name === '/layout') return 'LayoutData';
  if (name === '/parts/hatches') return 'undefined';
  const page = /^\/pages\/([^/]+)\/page$/.exec(name)?.[1];
  return page === undefined ? `Pieces['${name}']` : `Pages['${page}']`;
}

const fileName = (name: string): string => name.slice(1).replaceAll('/', '-');

describe('the templates against the types of their data', () => {
  test('each reads only what its data has, and gives each part that it includes what that part needs', async () => {
    const programs = await Promise.all(
      names.map(async (name) => [fileName(name), programOf(await readTemplate(name), dataOf(name))] as const),
    );
    expect(programs.length).toBeGreaterThan(40);
    expect(Object.fromEntries(typeFaults(new Map(programs)))).toEqual({});
  });

  test.each([
    ['a member that the data has not', '<%= it.captoin %>', "Property 'captoin' does not exist"],
    [
      'a member of an item',
      '<% for (const row of it.rows) { %><%= row.cels %><% } %>',
      "'cels' does not exist",
    ],
    ['a part that is none', "<%~ include('/parts/tabel', it) %>", '"/parts/tabel"'],
    ['a part without what it needs', "<%~ include('/parts/tag', { txt: 'odd' }) %>", "'txt' does not exist"],
    ['a member that may be left out, printed', '<%= it.note %>', "'undefined' is not assignable"],
  ])('%s is found', (_, source, fault) => {
    const found = typeFaults(new Map([['wrong', programOf(source, "Pieces['/parts/table']")]]));
    expect(found.get('wrong')?.join('\n')).toContain(fault);
  });
});

describe('components and pages against their types', () => {
  const typed = (text: string) =>
    typeFaults(
      new Map([
        [
          'typed',
          `import type { Component } from '../parts/components.ts';
           import type { PageContent } from '../pages/pages.ts';
           ${text}`,
        ],
      ]),
    ).get('typed') ?? [];

  test.each([
    [
      'a member misspelt',
      "const c: Component = { template: '/parts/table', data: { captoin: 'a', columns: [], rows: [] } };",
      'captoin',
    ],
    [
      'a template that is none',
      "const c: Component = { template: '/parts/tabel', data: { caption: 'a', columns: [], rows: [] } };",
      '/parts/tabel',
    ],
    [
      'data of another template',
      "const c: Component = { template: '/parts/notice', data: { caption: 'a', columns: [], rows: [] } };",
      'caption',
    ],
    [
      'a page without a member',
      "const p: PageContent = { template: 'calls', data: { search: '' } };",
      'slots',
    ],
    [
      'a page that is none',
      "const p: PageContent = { template: 'call-list', data: { search: '', slots: [] } };",
      'call-list',
    ],
  ])('%s does not compile', (_, text, named) => {
    expect(typed(text).join('\n')).toContain(named);
  });

  test('what is right compiles', () => {
    expect(
      typed(
        "const c: Component = { template: '/parts/table', data: { caption: 'a', columns: [], rows: [] } }; const p: PageContent = { template: 'calls', data: { search: '', slots: [c] } };",
      ),
    ).toEqual([]);
  });
});
