import type { Component } from '../../../views/parts/components.ts';
import { listApiKeys } from '../../auth/api-keys.ts';
import { requireAdministrator } from '../../auth/principal.ts';
import { listStaff } from '../../auth/staff.ts';
import type { Tx } from '../../database/database.ts';
import { factsComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { type FormState, summaryOf } from '../../web/forms/fields.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';
import { keyComponents, LABELS, peopleComponents } from './desk-forms.ts';
import { keysTable, peopleTable } from './desk-tables.ts';

const securityLink: Component = {
  template: '/parts/button',
  data: { label: 'Who came in', href: '/desk/security' },
};

/** What came of a form, with the link that is shown this once. */
export interface News {
  readonly text: string;
  readonly link?: string;
}

const newsComponents = ({ text, link }: News): Component[] => [
  noticeComponent(text, { id: 'news' }),
  ...(link === undefined ? [] : [factsComponent({ items: [{ label: 'Link', value: link }] })]),
];

export async function deskPage(tx: Tx, req: PageRequest, shown: FormState, news?: News): Promise<Page> {
  requireAdministrator(req.principal);
  const people = await listStaff(tx, req.principal);
  const keys = await listApiKeys(tx, req.principal);
  return {
    template: 'plain',
    title: 'The desk',
    place: '/desk',
    data: {
      title: 'The desk',
      intro: 'Who works here, and which programs may come in.',
      errors: summaryOf(shown, LABELS),
      sections: [
        ...(news === undefined ? [] : newsComponents(news)),
        securityLink,
        tableComponent(peopleTable(people)),
        ...peopleComponents(people, shown, req.principal.id),
        tableComponent(keysTable(keys, people)),
        ...keyComponents(keys, shown),
      ],
    },
  };
}
