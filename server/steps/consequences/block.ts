import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import { listComponents } from '../../call/report-parts.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { inches, upperFirst } from '../../mechanics/assessment/common/said.ts';
import { drawingComponent, factsComponent, tableComponent } from '../../web/components.ts';
import { checksNow } from './checks-now.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts } from './figures-tables.ts';
import { titleOf } from './judged.ts';
import { marginsDrawing } from './margins-drawing.ts';

/** Puts what is said of one valve on the tape; there has to be a ratio to keep it for. */
export function keepForm(
  { base, assessment }: CallContext,
  detail: ChangeDetail,
  first: boolean,
): PageForm[] {
  if (detail.after === undefined) return [];
  return [
    {
      name: `keep-${idOf(detail)}`,
      action: `${base}/consequences`,
      labels: {},
      hidden: { about: detail.key },
      groups: () => [{ slots: [] }],
      buttons: [
        {
          label: `Put these figures on the tape: ${titleOf(detail, assessment)}`,
          kind: 'primary',
          ...(first ? { key: 'k' } : {}),
        },
      ],
    },
  ];
}

/** Its key as an id of a page may be. */
const idOf = ({ key }: ChangeDetail): string => key.replace(/[^a-z0-9]+/g, '-');

/** The lash that is taken off; a lift that carries it has none taken off. */
function lashFacts({ lash, after }: ChangeDetail): Fact[] {
  if (after?.lashIn === true) return [{ label: 'Lash', value: 'in the lift as read' }];
  return lash === undefined ? [] : [{ label: 'Lash, taken off once', value: inches(lash) }];
}

const known = (label: string, si: number | undefined) =>
  si === undefined ? [] : [{ label, value: inches(si) }];

/** One valve, or one side: its ratios, what is told of each gap, and the figures behind that. */
export function blockComponent(
  context: CallContext,
  detail: ChangeDetail,
  keep: readonly PageForm[],
  of: { readonly open: boolean; readonly rejected: RejectedForm | undefined },
): Component {
  const { assessment, build } = context;
  const title = upperFirst(titleOf(detail, assessment));
  const drawing = marginsDrawing(build.spec, detail);
  const foldOf = (name: string, summary: string, inside: readonly Component[]) =>
    inside.length === 0 ? [] : [foldComponent(`${name}-${idOf(detail)}`, summary, inside)];
  const slots = [
    factsComponent({
      block: true,
      items: [...ratioFacts(detail), ...known('Lobe lift', detail.lobeLift), ...lashFacts(detail)],
    }),
    tableComponent(gapsTable(detail)),
    ...foldOf('why', 'Why', listComponents('Why', gapReasons(detail))),
    ...foldOf('figures', 'Lift, loads and sweep, before and after', [tableComponent(figuresTable(detail))]),
    ...foldOf('margins', 'Drawn', drawing === undefined ? [] : [drawingComponent(drawing)]),
    ...foldOf('again', 'Look at again', listComponents('Look at again', checksNow(context, detail))),
    ...keep.map((form) => formComponent(form, of.rejected)),
  ];
  return of.open
    ? { template: '/pages/call/group', data: { title, slots } }
    : foldComponent(`change-${idOf(detail)}`, title, slots);
}
