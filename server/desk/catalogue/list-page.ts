import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { ratioText, sizeText } from '../../call/family-words.ts';
import type { Tx } from '../../database/database.ts';
import { countFamilies, listFamilies, type PartFamily } from '../../records/catalogue/families.ts';
import { tableComponent } from '../../web/components.ts';
import { textField } from '../../web/forms/fields.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';

const ON_A_PAGE = 40;

const size = (inches: number | undefined) =>
  inches === undefined ? '\u2013' : sizeText(inches).replace(/ in$/, '');

function familiesTable(families: readonly PartFamily[]): TableData {
  return {
    caption: 'Part families',
    columns: [
      { label: 'Code' },
      { label: 'Name' },
      { label: 'Nominal ratio', number: true },
      { label: 'Hole, in', number: true },
      { label: 'Width across, in', number: true },
    ],
    rows: families.map((family) => ({
      cells: [
        family.code,
        { text: family.name, href: `/catalogue/${family.id}`, why: family.fits },
        family.nominalRatio === undefined ? '\u2013' : ratioText(family.nominalRatio),
        size(family.sizes['hole-across-trunnion']),
        size(family.sizes['width-across-trunnion']),
      ],
    })),
    empty: 'No family has these words. Search for fewer of them.',
  };
}

/** What a load did, told on the page it leads to; only whole numbers are taken from the address. */
function doneComponents(query: PageRequest['query']): Component[] {
  const { added, changed, unchanged, left } = query;
  const numbers = [added, changed, unchanged, left];
  if (!numbers.every((each) => each !== undefined && /^\d{1,5}$/.test(each))) return [];
  const kept = left === '0' ? '' : ` ${left} rows with a fault were left out.`;
  const text = `Loaded: ${added} added, ${changed} changed, ${unchanged} as they stood.${kept}`;
  return [{ template: '/parts/notice', data: { text } }];
}

const actions: readonly Component[] = [
  { template: '/parts/button', data: { label: 'Load part families', href: '/catalogue/load' } },
  { template: '/parts/button', data: { label: 'Save as a file', href: '/catalogue/file' } },
];

function emptyComponents(): Component[] {
  return [
    {
      template: '/parts/empty',
      data: {
        id: 'catalogue-empty',
        title: 'No part family yet',
        text: 'Part families that the shop knows are listed here. A rocker in the hand is ranked against them.',
        action: { label: 'Load part families', kind: 'primary', href: '/catalogue/load' },
      },
    },
  ];
}

const searchComponent = (search: string): Component => ({
  template: '/parts/form',
  data: {
    method: 'get',
    action: '/catalogue',
    slots: [
      textField({ typed: { search }, faults: [] }, 'search', 'Code, name or engine', { type: 'search' }),
    ],
    buttons: [{ label: 'Search', kind: 'primary' }],
  },
});

function pagerComponent(search: string, after: string): Component {
  const next = new URLSearchParams({ ...(search === '' ? {} : { search }), after });
  return {
    template: '/parts/pager',
    data: { label: 'Catalogue', next: { href: `/catalogue?${next}`, label: 'Further families' } },
  };
}

/** The catalogue: search, and the families by code. */
export async function cataloguePage(tx: Tx, req: PageRequest): Promise<Page> {
  const search = (req.query.search ?? '').slice(0, 200);
  const after = req.query.after === undefined ? undefined : req.query.after.slice(0, 60);
  const all = await countFamilies(tx, req.principal);
  const families = await listFamilies(tx, req.principal, { search, after, limit: ON_A_PAGE });
  const last = families.length === ON_A_PAGE ? families.at(-1)?.code : undefined;
  return {
    template: 'plain',
    title: 'Catalogue',
    place: '/catalogue',
    data: {
      title: 'Catalogue',
      wide: true,
      ...(all === 0 ? {} : { intro: `${all} part ${all === 1 ? 'family' : 'families'} of this shop.` }),
      sections: [
        ...doneComponents(req.query),
        ...(all === 0
          ? emptyComponents()
          : [
              searchComponent(search),
              tableComponent(familiesTable(families)),
              ...(last === undefined ? [] : [pagerComponent(search, last)]),
              ...actions,
            ]),
      ],
    },
  };
}
