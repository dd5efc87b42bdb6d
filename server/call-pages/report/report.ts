import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { CALLER_ROLES, ENGINE_STATES, GOALS, sentence } from '../../../shared/schemas/words.ts';
import { REPORT_PARTS, type ReportPartName } from '../../../shared/steps.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import { SAID_BY_THE_SHEET } from '../../call/cautions.ts';
import { contactText } from '../../call/contact-text.ts';
import type { CallContext } from '../../call/context.ts';
import { notCoveredComponents } from '../../call/not-covered.ts';
import {
  inFront,
  listComponents,
  onTheBack,
  type ReportPart,
  type ReportSides,
} from '../../call/report-parts.ts';
import { isStopped } from '../../call/under-stop.ts';
import { countedWorkings } from '../../call/worked/counted.ts';
import { workingCautions, workingsReport } from '../../call/worked/report.ts';
import { type Computations, workingLines } from '../../call/worked/text.ts';
import type { Working } from '../../records/workings/workings.ts';
import { dayText, momentText } from '../../web/dates.ts';
import type { Page } from '../../web/pages/render.ts';
import type { DeskReached } from '../desk-reached.ts';
import { photographsReport } from '../photographs/report.ts';
import { tapeOf } from '../tape.ts';
import type { WholeCall } from './call-summary.ts';
import { summaryComponent } from './summary.ts';

/** When it is printed, and how the desk is reached from it. */
interface Printing {
  readonly now: Date;
  readonly desk: DeskReached;
  /** Without its back pages. */
  readonly frontOnly?: boolean;
}

/** Said while it may be turned. */
const TURNING = 'Turn by hand at the crank bolt only. Any resistance: stop, back off, find out.';

const CAUTIONS = [
  'The part maker’s figure and local codes go before every default here.',
  'Where something hit, bent, cracked or turns tight, or a limit is not met: stop, and have a qualified shop look.',
  'Error limits without a source are common practice, no published source. Fastener torque, bearing fit and grinding are the part maker’s or a qualified shop’s.',
];

function callFacts(context: CallContext, { now, desk }: Printing): Fact[] {
  const { call } = context;
  return [
    {
      label: 'Caller',
      value: call.callerName || 'not said',
      ...(call.callerRole === '' ? {} : { note: sentence(CALLER_ROLES, call.callerRole) }),
    },
    { label: 'Call back', value: call.callBack || 'not said' },
    { label: 'Goal', value: sentence(GOALS, call.goal) },
    { label: 'Engine', value: sentence(ENGINE_STATES, call.engineState) },
    { label: 'Hit or loose', value: contactText(context) },
    { label: 'Opened', value: dayText(call.openedAt, now) },
    {
      label: call.closedAt === undefined ? 'State' : 'Closed',
      value: call.closedAt === undefined ? 'open' : dayText(call.closedAt, now),
    },
    { label: 'Printed from the record', value: `${momentText(now)} UTC` },
    ...(desk.phone === undefined ? [] : [{ label: 'Desk', value: desk.phone }]),
  ];
}

/** What goes with the figures above, each said once. */
function cautionsOf({ open, context }: WholeCall, workings: readonly Working[]): string[] {
  const stopped = isStopped(context);
  // Those of a working say how it is turned and set.
  const worked = stopped ? [] : workingCautions(workings);
  const own = [...[...open.values()].flatMap((step) => step.cautions()), ...worked];
  const turning = stopped ? [] : [TURNING];
  return [...new Set([...turning, ...CAUTIONS, ...own.filter((text) => !SAID_BY_THE_SHEET.includes(text))])];
}

/** The parts that have something to say, in the order of the call's goal. */
function partsInOrder({ context, open }: WholeCall, own: readonly ReportPart[]): ReportSides {
  const parts = [...[...open.values()].flatMap((step) => step.report()), ...own];
  const first = context.plan.report;
  const order = [...first, ...REPORT_PARTS.filter((name) => !first.includes(name))];
  const inOrder = order.flatMap((name) => parts.filter((part) => part.name === name));
  return {
    components: inOrder.flatMap(({ components }) => components),
    back: inOrder.flatMap(({ back }) => back),
  };
}

/** What the call is about stands in front; what only goes with it, on the back. */
const whereAsked = ({ plan }: CallContext, name: ReportPartName, components: readonly Component[]) => ({
  name,
  ...(plan.report.includes(name) ? inFront(components) : onTheBack(components)),
});

/** The call as a sheet to print and keep: in short and the answers in front, what they rest on and the tape behind. */
export const reportPage = (whole: WholeCall, computations: Computations, printing: Printing): Page =>
  speaking(whole.context.build.units, () => printed(whole, computations, printing));

function printed(whole: WholeCall, computations: Computations, printing: Printing): Page {
  const { context } = whole;
  const { call, build } = context;
  const workings = countedWorkings(context, computations);
  const { components, back: behind } = partsInOrder(whole, [
    whereAsked(context, 'workings', workingsReport(context, workings, computations)),
    whereAsked(context, 'photographs', photographsReport(context)),
  ]);
  return {
    template: 'report',
    title: `Report of call ${call.number}`,
    place: '/calls',
    data: {
      back: context.base,
      other:
        printing.frontOnly === true
          ? { href: `${context.base}/report`, label: 'With its back pages' }
          : { href: `${context.base}/report?pages=front`, label: 'Without its back pages' },
      title: `Call ${call.number}: ${build.label}`,
      facts: callFacts(context, printing),
      sections: [
        summaryComponent(whole, workingLines(context, workings, computations)),
        ...listComponents('Before anyone acts on this sheet', cautionsOf(whole, workings)),
        ...notCoveredComponents(context),
        ...components,
      ],
      behind: printing.frontOnly === true ? [] : behind,
      ...(printing.frontOnly === true ? {} : { tape: tapeOf(whole.frame, context) }),
    },
  };
}
