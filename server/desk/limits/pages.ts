import type { FastifyInstance } from 'fastify';
import { newLimit } from '../../../shared/schemas/limits.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { requireAdministrator } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { isLimitName } from '../../mechanics/kit/limits.ts';
import { LIMIT_NAMES, type Limit, titleOf } from '../../records/limits/known-limits.ts';
import { changeLimits, listLimits } from '../../records/limits/limits.ts';
import { tableComponent } from '../../web/components.ts';
import type { Deps } from '../../web/deps.ts';
import { postForm } from '../../web/form-route.ts';
import {
  type FormState,
  FRESH,
  quantityField,
  selectField,
  summaryOf,
  textField,
} from '../../web/forms/fields.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { getPage } from '../../web/page-route.ts';
import type { Page } from '../../web/pages/render.ts';

const LABELS = { name: 'Limit', value: 'Figure', source: 'Where it is from' };
const URL = '/desk/limits';

/** Who set it, and when; of one that nobody has set, nothing. */
const setBy = ({ at, by }: Limit): { readonly why?: string } =>
  at === undefined ? {} : { why: `set ${at.toISOString().slice(0, 10)} by ${by ?? 'somebody'}` };

function limitsTable(limits: readonly Limit[]): TableData {
  return {
    caption: 'Limits of this shop',
    columns: [{ label: 'Limit' }, { label: 'Figure', number: true }, { label: 'Where it is from' }],
    rows: limits.map((limit) => ({
      cells: [
        limit.title,
        { text: limit.value.readAs, href: `${URL}?limit=${limit.name}#f-value` },
        { text: limit.source, ...setBy(limit) },
      ],
    })),
    note: 'The part maker’s figure goes first. Each is the default where nobody is named as having set it. Choose a figure to change it.',
  };
}

function limitFormComponent(state: FormState): Component {
  const shown = { ...state, schema: newLimit };
  const words = Object.fromEntries(LIMIT_NAMES.map((name) => [name, titleOf(name)]));
  return {
    template: '/parts/form',
    data: {
      title: 'Change a limit',
      action: URL,
      key: crypto.randomUUID(),
      slots: [
        selectField(shown, 'name', LABELS.name, words),
        quantityField(shown, 'value', LABELS.value, 'length'),
        textField(shown, 'source', LABELS.source, {
          hint: 'Shown wherever the limit is used, e.g. the part maker’s sheet and its date.',
        }),
      ],
      buttons: [{ kind: 'primary', label: 'Set this limit' }],
    },
  };
}

/** The form as the address asks for it: one limit with its figure. */
function chosen(limits: readonly Limit[], name: string | undefined): FormState {
  const limit = limits.find((each) => each.name === name);
  if (limit === undefined) return FRESH;
  return {
    typed: { name: limit.name, value: limit.value.readAs, source: limit.revision === 0 ? '' : limit.source },
    faults: [],
  };
}

async function limitsPage(tx: Tx, req: PageRequest, rejected?: FormState): Promise<Page> {
  requireAdministrator(req.principal);
  const limits = await listLimits(tx, req.principal);
  const shown = rejected ?? chosen(limits, req.query.limit);
  return {
    template: 'plain',
    title: 'Limits',
    place: URL,
    data: {
      title: 'Limits',
      wide: true,
      intro:
        'What each gap is set against. A change counts from now on; figures judged before keep the limit they were judged by.',
      errors: summaryOf(shown, LABELS),
      sections: [tableComponent(limitsTable(limits)), limitFormComponent(shown)],
    },
  };
}

/** The administrator's page of limits. */
export function limitsPages(app: FastifyInstance, deps: Deps): void {
  const route = { url: URL, side: 'desk' as const, page: limitsPage };
  getPage(app, deps, route);
  postForm(app, deps, {
    ...route,
    run: async (tx, { principal, fields }) => {
      const { key: _, ...typed } = fields;
      const read = readForm(newLimit, typed, { lengths: 'in' });
      if (!read.ok) return { faults: read.faults, typed };
      if (!isLimitName(read.data.name))
        return { faults: [{ field: 'name', detail: 'is no limit of the list' }], typed };
      await changeLimits(tx, principal, [read.data]);
      return { goTo: URL };
    },
  });
}
