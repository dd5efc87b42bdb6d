import { asEntered, asTold } from '../../../shared/quantities/as-entered.ts';
import type { Component } from '../../../views/parts/components.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { questionsOf, questionTexts } from '../../call/question-form.ts';
import {
  besideComponent,
  inFront,
  type ReportSides,
  saidComponents,
  sectionOf,
} from '../../call/report-parts.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { drawingComponent, tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { scanDrawings } from './drawing.ts';
import { scanNamed } from './scan-named.ts';

/** Every reading of the scans that stand, as it was entered: a line for each scan. */
function readingsTable(context: CallContext): Component[] {
  const scans = stillStanding(context.record.gapScans);
  if (scans.length === 0) return [];
  return [
    tableComponent({
      caption: 'Piston to valve over the crank, as read',
      columns: [{ label: 'Valve' }, { label: 'Gaps' }, { label: 'Who, when' }],
      rows: scans.map((scan) => ({
        cells: [
          scanNamed(scan, context),
          scan.readings
            .toSorted((a, b) => a.crankAngle.value - b.crankAngle.value)
            .map(({ crankAngle, gap }) => `${crankAngle.readAs} ${asEntered(gap.readAs)}`)
            .join('; '),
          `line ${scan.seq}, ${scan.by}, ${momentText(scan.at)}`,
        ],
      })),
    }),
  ];
}

/** What no longer stands, with the reason: it stays on record. */
function struckOnes({ record: { gapScans } }: CallContext): string[] {
  return gapScans.flatMap((old) => {
    const later = gapScans.find(({ id }) => id === old.replacedBy);
    if (later === undefined) return [];
    const what = `Scan ${valveName(old)}: ${asTold(old.readAs)}`;
    return [
      later.struck
        ? `${what}, struck out by ${later.by}: ${later.reason}`
        : `${what}, now ${asTold(later.readAs)} by ${later.by}: ${later.reason}`,
    ];
  });
}

/** Each scan with its curve, its readings and what it asks; its sentence stands at the head of the sheet. */
export function scansReport(context: CallContext): ReportSides {
  if (context.record.gapScans.length === 0) return inFront([]);
  const { scans } = context.assessment.details.scans;
  const drawings = scans.flatMap(scanDrawings).map(({ table: _, ...drawing }) => drawingComponent(drawing));
  return {
    components: sectionOf('Piston to valve over the crank', [
      ...saidComponents('They ask', questionTexts(questionsOf(context, 'scan'))),
      ...(drawings.length === 0 ? [] : [besideComponent(...drawings)]),
    ]),
    back: sectionOf('Piston to valve, as read', [
      ...readingsTable(context),
      ...saidComponents('Struck out or replaced', struckOnes(context)),
    ]),
  };
}
