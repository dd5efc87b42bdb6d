import type { Component } from '../../../views/parts/components.ts';
import { listApiKeys } from '../../auth/api-keys.ts';
import { requireAdministrator } from '../../auth/principal.ts';
import { listStaff } from '../../auth/staff.ts';
import type { Tx } from '../../database/database.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';
import { type FormState, summaryOf } from '../../web/forms/fields.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';
import { keyComponents, LABELS, peopleComponents } from './desk-forms.ts';
import { keysTable, peopleTable } from './desk-tables.ts';

const securityLink: Component = {
  template: '/parts/button',
  data: { label: 'Who came in', href: '/desk/security' },
};

export async function deskPage(tx: Tx, req: PageRequest, shown: FormState, news?: string): Promise<Page> {
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
        ...(news === undefined ? [] : [noticeComponent(news, { id: 'news' })]),
        securityLink,
        tableComponent(peopleTable(people)),
        ...peopleComponents(people, shown, req.principal.id),
        tableComponent(keysTable(keys)),
        ...keyComponents(keys, shown),
      ],
    },
  };
}
