import type { Tx } from '../../database/database.ts';
import { type Shown, summaryOf } from '../../forms/fields.ts';
import type { PageRequest } from '../../http/page-route.ts';
import type { Page } from '../../pages/render.ts';
import { listApiKeys } from '../api-keys.ts';
import { requireAdministrator } from '../caller.ts';
import { listStaff } from '../staff.ts';
import { keyForms, LABELS, peopleForms } from './desk-forms.ts';
import { keysTable, peopleTable } from './desk-tables.ts';

export async function deskPage(tx: Tx, given: PageRequest, shown: Shown, news?: string): Promise<Page> {
  requireAdministrator(given.caller);
  const people = await listStaff(tx, given.caller);
  const keys = await listApiKeys(tx, given.caller);
  return {
    template: 'plain',
    title: 'The desk',
    place: '/desk',
    data: {
      title: 'The desk',
      intro: 'Who works here, and which programs may come in.',
      errors: summaryOf(shown, LABELS),
      sections: [
        ...(news === undefined
          ? []
          : [{ template: '/parts/notice', data: { kind: 'note', text: news, id: 'news' } }]),
        peopleTable(people),
        ...peopleForms(people, shown, given.caller.id),
        keysTable(keys),
        ...keyForms(keys, shown),
      ],
    },
  };
}
