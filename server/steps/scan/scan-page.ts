import { asEntered, asTold } from '../../../shared/quantities/as-entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type LookedAt, lookedScan } from '../../assessment/gap-scans/looked.ts';
import type { CallContext } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { formComponent, type StepBody } from '../../call/forms.ts';
import { sentenceComponents, stepHeadlines } from '../../call/headline.ts';
import { oneAtATime, questionCards, questionsOf } from '../../call/question-form.ts';
import { listComponents } from '../../call/report-parts.ts';
import type { StepPageInput } from '../../call/step.ts';
import type { ScansDetail } from '../../mechanics/assessment/scans/detail.ts';
import { readScanRows, type ScanRows } from '../../records/gap-scans/scan-rows.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { scanDrawings } from './drawing.ts';
import { pasteForm, readPastedScan } from './forms/paste.ts';
import { rowsForm } from './forms/rows.ts';
import { scanNamed } from './scan-named.ts';

/** Every scan of the record, each with the way to put it right; one that no longer stands with its reason. */
function scansTable(context: CallContext): Component[] {
  const { record, base } = context;
  if (record.gapScans.length === 0) return [];
  return [
    tableComponent({
      caption: 'Scans on record',
      columns: [{ label: 'Valve' }, { label: 'Scan' }],
      rows: record.gapScans.toReversed().map((scan) => ({
        cells: [
          scanNamed(scan, context),
          scan.replacedBy === undefined && !scan.struck
            ? { text: asTold(scan.readAs), href: `${base}/gap-scans/${scan.id}`, why: scan.by }
            : {
                text: `${scan.struck ? 'struck: ' : 'replaced: '}${asTold(scan.readAs)}`,
                why: [scan.reason, scan.by].filter((text) => text !== '').join('; '),
              },
        ],
      })),
    }),
  ];
}

/** Pasted rows as they were read, with what would be said of them. */
const lookedComponents = ({ readings }: ScanRows, { detail, questions }: LookedAt): Component[] => [
  ...sentenceComponents(detail === undefined ? [] : [{ sentence: detail.said, more: [] }]),
  ...listComponents(
    'It would be asked',
    questions.map(({ ask, size }) => `${ask} ${size ?? ''}`.trim()),
  ),
  tableComponent({
    caption: 'As it was read; nothing of it is kept yet',
    columns: [{ label: 'Line' }, { label: 'Crank angle' }, { label: 'Gap', number: true }],
    rows: readings.map(({ line, crankAngle, gap }) => ({
      cells: [String(line), crankAngle.readAs, asEntered(gap.readAs)],
    })),
    empty: 'No row could be read.',
  }),
];

/** The scans: what they say and are asked, each as a curve, and the forms that take another. */
export function scanPage({ scans }: ScansDetail, { context, rejected }: StepPageInput): StepBody {
  const pastedBack = rejected?.typed.form === 'paste-scan' ? readPastedScan(rejected.typed) : undefined;
  const rows = pastedBack?.ok ? readScanRows(pastedBack.data.text, pastedBack.data.unit) : undefined;
  const looked = rows !== undefined && rows.faults.length === 0;
  const rowsIn = rowsForm(context);
  const paste = pasteForm(context, looked);
  const cards = questionCards(context, questionsOf(context, 'scan'), rejected);
  const pasting = formComponent(paste, rejected);
  return {
    forms: [rowsIn, paste, ...cards.forms],
    slots: [
      ...(pastedBack?.ok && rows !== undefined
        ? [
            ...lookedComponents(rows, lookedScan(context.record, context.call, pastedBack.data, rows)),
            pasting,
          ]
        : []),
      ...stepHeadlines(context, 'scan'),
      ...oneAtATime(cards),
      ...scans.flatMap(scanDrawings).map(drawingComponent),
      formComponent(rowsIn, rejected),
      ...(pastedBack?.ok
        ? []
        : [foldComponent('paste-a-scan', 'Paste a scan', [pasting], rejected?.typed.form === paste.name)]),
      ...scansTable(context),
    ],
  };
}
