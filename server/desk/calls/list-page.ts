import { defined } from '../../../shared/defined.ts';
import { GOALS, sentence } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { assessmentsOf } from '../../assessment/of-calls.ts';
import type { Tx } from '../../database/database.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import { type ListedCall, listCalls } from '../../records/calls/list-calls.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';
import { waitingText } from './waiting-text.ts';

const PER_PAGE = 25;

const waitingOf = (said: Assessment | undefined): string => (said === undefined ? '' : waitingText(said));

/** Closed, stopped, or open: a stop is the first thing to know of a call. */
function stateOf({ closedAt }: ListedCall, said: Assessment | undefined): string | TableCell {
  if (closedAt !== undefined) return 'closed';
  return (said?.stop.length ?? 0) > 0 ? { text: 'stopped', stopped: true } : 'open';
}

function callsTable(calls: readonly ListedCall[], said: ReadonlyMap<string, Assessment>): TableData {
  return {
    caption: 'Newest first, times in UTC',
    columns: [
      { label: 'Call' },
      { label: 'Build' },
      { label: 'Caller' },
      { label: 'Goal' },
      { label: 'State' },
      { label: 'Waits for' },
      { label: 'Last entry' },
    ],
    rows: calls.map((call) => ({
      cells: [
        `${call.number}`,
        { text: call.buildLabel, href: `/calls/${call.id}`, why: `opened ${momentText(call.openedAt)}` },
        call.callerName || 'not said',
        sentence(GOALS, call.goal),
        stateOf(call, said.get(call.id)),
        waitingOf(said.get(call.id)),
        call.lastChange === undefined
          ? ''
          : { text: momentText(call.lastChange.at), why: call.lastChange.by },
      ],
    })),
  };
}

function emptyComponent(search: string): Component {
  return {
    template: '/parts/empty',
    data:
      search === ''
        ? {
            id: 'no-calls',
            title: 'No call yet',
            text: 'A call ties the caller, the goal and the build together. Open the first one when the phone rings.',
            action: { label: 'New call', kind: 'primary', href: '/calls/new' },
          }
        : {
            id: 'none-found',
            title: `No call found for “${search}”`,
            text: 'Searched in caller, build, goal and call number.',
            action: { label: 'Show all calls', href: '/calls' },
          },
  };
}

function pagerComponent(
  calls: readonly ListedCall[],
  more: boolean,
  search: string,
  before: number | undefined,
): Component {
  const query = (pairs: Record<string, string>) =>
    `/calls?${new URLSearchParams({ ...(search === '' ? {} : { search }), ...pairs }).toString()}`;
  const last = calls.at(-1);
  return {
    template: '/parts/pager',
    data: {
      label: 'Calls',
      ...(before === undefined ? {} : { previous: { href: query({}), label: 'The newest' } }),
      ...(more && last !== undefined
        ? { next: { href: query({ before: String(last.number) }), label: 'Older calls' } }
        : {}),
    },
  };
}

/** The calls of the shop: search, what each waits for, and a new one. */
export async function listPage(tx: Tx, req: PageRequest): Promise<Page> {
  const search = (req.query.search ?? '').trim().slice(0, 200);
  const asked = Number(req.query.before);
  const before = Number.isSafeInteger(asked) && asked > 0 && asked < 2 ** 31 ? asked : undefined;
  const found = await listCalls(tx, req.principal, {
    search: search.replaceAll('\u0000', ''),
    ...defined({ before }),
    limit: PER_PAGE + 1,
  });
  const calls = found.slice(0, PER_PAGE);
  const said = await assessmentsOf(tx, req.principal, calls);
  const more = found.length > PER_PAGE;
  return {
    template: 'calls',
    title: 'Calls',
    place: '/calls',
    data: {
      search,
      slots:
        calls.length === 0
          ? [emptyComponent(search)]
          : [
              tableComponent(callsTable(calls, said)),
              ...(more || before !== undefined ? [pagerComponent(calls, more, search, before)] : []),
            ],
    },
  };
}
