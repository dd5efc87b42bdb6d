import { CALLER_ROLES, CONTACT, ENGINE_STATES, GOALS } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { listComponents, runComponents, sectionComponent } from '../../call/report-parts.ts';
import { turningCaution } from '../../mechanics/cam/caution.ts';
import { shortCaution } from '../../mechanics/consequences/consequences.ts';
import { makerFirst } from '../../mechanics/springs/caution.ts';
import { promiseState } from '../../steps/notes/notes-step.ts';
import { armsTable, swapsTable } from '../../steps/parts/parts-step.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';
import { dayText, momentText } from '../../web/dates.ts';
import type { Page } from '../../web/pages/render.ts';
import { holdOf } from '../hold.ts';
import { tapeOf } from '../tape.ts';
import { sentence } from '../tape-text.ts';
import { partsInOrder } from './order.ts';
import type { ReportData } from './report-data.ts';
import { specFacts } from './sections/spec-facts.ts';
import { workingCautions } from './sections/workings.ts';
import { summaryComponent } from './summary.ts';

const CAUTIONS = [
  'The part maker’s figure and local codes go before every default here.',
  'Where something hit, bent, cracked or turns tight, or a limit is not met: stop, and have a qualified shop look.',
  'Turn by hand at the crank bolt only. Any resistance: stop, back off, find out.',
  'Error limits without a source are common practice, no published source. Fastener torque, bearing fit and grinding are the part maker’s or a qualified shop’s.',
];

function callFacts({ call, build }: CallContext, now: Date): Fact[] {
  return [
    { label: 'Caller', value: call.callerName || 'not said', note: sentence(CALLER_ROLES, call.callerRole) },
    { label: 'Call back', value: call.callBack || 'not said' },
    { label: 'Goal', value: sentence(GOALS, call.goal) },
    { label: 'Engine', value: sentence(ENGINE_STATES, call.engineState) },
    { label: 'Contact', value: sentence(CONTACT, call.contact) },
    { label: 'Opened', value: dayText(call.openedAt) },
    {
      label: call.closedAt === undefined ? 'State' : 'Closed',
      value: call.closedAt === undefined ? 'open' : dayText(call.closedAt),
    },
    { label: 'Build revision', value: String(build.revision) },
    { label: 'Printed from the record', value: `${momentText(now)} UTC` },
  ];
}

function holdComponent(context: CallContext): Component[] {
  const hold = holdOf(context);
  if (hold === undefined) return [];
  const { lift: _, ...banner } = hold;
  return [{ template: '/parts/hold', data: banner }];
}

function buildSection({ build }: CallContext): Component {
  const groups = specFacts(build.spec);
  return sectionComponent(
    `The build as it stands, revision ${build.revision}`,
    groups.length === 0
      ? [noticeComponent('Nothing of the build is entered yet.')]
      : groups.flatMap(({ legend, facts }) => runComponents(legend, facts)),
  );
}

function armsComponents(context: CallContext): Component[] {
  if (context.arms.length === 0) return [];
  const arms = [...context.arms].sort((a, b) => a.name.localeCompare(b.name));
  return [
    tableComponent(armsTable({ ...context, arms })),
    // Where no arm has moved, the table above says where each sits.
    ...(context.placements.length > context.arms.length ? [tableComponent(swapsTable(context))] : []),
  ];
}

function notesComponents({ notes }: CallContext): Component[] {
  if (notes.length === 0) return [];
  const data: TableData = {
    caption: 'What was said and promised',
    columns: [{ label: 'Line' }, { label: 'Words' }, { label: 'Rests on, or whose' }, { label: 'Who, when' }],
    rows: notes.map((note) => ({
      cells: [
        `${note.seq} ${note.kind}`,
        note.body,
        note.kind === 'promise' ? promiseState(note) : note.restsOn || '\u2013',
        `${note.by}, ${momentText(note.at)}`,
      ],
    })),
  };
  return [{ template: '/parts/table', data }];
}

/** Said by the sheet’s own cautions already. */
const SAID_BEFORE: readonly string[] = [turningCaution, makerFirst, shortCaution];

/** What goes with the figures above, each said once. */
function cautionsOf(report: ReportData): string[] {
  const { context, consequences } = report;
  const own = [
    ...context.ratios.flatMap(({ cautions }) => cautions),
    ...consequences.flatMap(({ cautions }) => cautions),
    ...workingCautions(report),
  ];
  return [...new Set([...CAUTIONS, ...own.filter((text) => !SAID_BEFORE.includes(text))])];
}

/** The call as a sheet to print and keep: in short, the parts that have something to say, the tape as its back page. */
export function reportPage(report: ReportData, now: Date): Page {
  const { context } = report;
  const { call, build } = context;
  return {
    template: 'report',
    title: `Report of call ${call.number}`,
    place: '/calls',
    data: {
      back: context.base,
      title: `Call ${call.number}: ${build.label}`,
      facts: callFacts(context, now),
      sections: [
        ...holdComponent(context),
        summaryComponent(report),
        ...partsInOrder(report),
        ...notesComponents(context),
        ...armsComponents(context),
        buildSection(context),
        ...listComponents('Before anyone acts on this sheet', cautionsOf(report)),
      ],
      tape: tapeOf(context),
    },
  };
}
