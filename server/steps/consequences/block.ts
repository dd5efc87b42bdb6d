import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type PageForm, type RejectedForm } from '../../call/forms.ts';
import { listComponents } from '../../call/report-parts.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { inches, keyOf, subjectSaid, upperFirst } from '../../mechanics/assessment/common/said.ts';
import { drawingComponent, factsComponent, noticeComponent, tableComponent } from '../../web/components.ts';
import { figuresTable, gapReasons, gapsTable, ratioFacts } from './figures-tables.ts';
import { gapBarComponents } from './gap-bars.ts';
import { judgementsOf } from './judged.ts';
import { marginsDrawing } from './margins-drawing.ts';

/** Puts what is said of one valve on the tape; there has to be a ratio to keep it for. */
export function keepForm({ base }: CallContext, { about, after }: ChangeDetail, first: boolean): PageForm[] {
  if (after === undefined) return [];
  return [
    {
      name: `keep-${keyOf(about)}`,
      action: `${base}/consequences`,
      labels: {},
      hidden: { about: keyOf(about) },
      groups: () => [{ slots: [] }],
      buttons: [
        {
          label: `Put these figures on the tape: ${subjectSaid(about)}`,
          kind: 'primary',
          ...(first ? { key: 'k' } : {}),
        },
      ],
    },
  ];
}

const known = (label: string, si: number | undefined) =>
  si === undefined ? [] : [{ label, value: inches(si) }];

/** One valve, or one side: its ratios, what is told of each gap, and the figures behind that. */
export function blockComponent(
  { assessment, build }: CallContext,
  detail: ChangeDetail,
  keep: readonly PageForm[],
  of: { readonly open: boolean; readonly rejected: RejectedForm | undefined },
): Component {
  const title = upperFirst(subjectSaid(detail.about));
  const drawing = marginsDrawing(build.spec, detail);
  const slots = [
    factsComponent({
      block: true,
      items: [...ratioFacts(detail), ...known('Lobe lift', detail.lobeLift), ...known('Lash', detail.lash)],
    }),
    ...listComponents(
      'Gaps, worst first',
      judgementsOf(assessment, detail).map(({ sentence }) => sentence),
    ),
    tableComponent(gapsTable(detail)),
    ...listComponents('Why', gapReasons(detail)),
    ...gapBarComponents(detail),
    tableComponent(figuresTable(detail)),
    ...(drawing === undefined ? [] : [drawingComponent(drawing)]),
    noticeComponent(detail.adjusters),
    ...keep.map((form) => formComponent(form, of.rejected)),
  ];
  return of.open
    ? { template: '/pages/call/group', data: { title, slots } }
    : foldComponent(`change-${keyOf(detail.about)}`, title, slots);
}
