import { STEPS } from '../../call/steps.ts';
import { ASK } from '../../steps/ratio/cause-words.ts';
import { nextStep } from '../needs.ts';
import type { ReportData } from './report-data.ts';
import { nextOfSetUp } from './sections/explained.ts';
import { nextOfReport } from './sections/identified.ts';

/** The swap that would tell part from position, where one is still to be done. */
function swapToDo({ sheet }: ReportData): string | undefined {
  return sheet?.springs
    .flatMap(({ sides }) => sides.flatMap(({ odd }) => odd.map(({ swap }) => swap)))
    .find((swap) => swap !== undefined);
}

/** Where only a running-spring ratio is there, nothing can be set against the stamp yet. */
function lightSpring({ context }: ReportData): string | undefined {
  const read = context.ratios.filter(({ result }) => result !== undefined);
  return read.length > 0 && read.every(({ setUp }) => setUp.method.spring !== 'light')
    ? ASK['light-spring-solid-lifter']
    : undefined;
}

/** `Pivot to cup. It would raise the chance …`: below a heading that says “Next” already. */
function partToMeasure(report: ReportData): string | undefined {
  const next = nextOfReport(report);
  if (next?.measure === undefined) return next?.why;
  return `${next.measure.charAt(0).toUpperCase()}${next.measure.slice(1)}. ${next.why}`;
}

/** The next reading, by what the call is about; the step that is open where no reading is worth more. */
export function nextSentences(report: ReportData): string[] {
  const { context, explained } = report;
  if (context.call.held) return ['Photographs only, until the desk lifts the hold.'];
  const newest = context.setUps.findLast(({ id }) => explained.has(id));
  const ofRatio = newest === undefined ? undefined : explained.get(newest.id);
  const reading = (ofRatio === undefined ? undefined : nextOfSetUp(ofRatio)) ?? lightSpring(report);
  const part = partToMeasure(report);
  const swap = swapToDo(report);
  const wanted =
    context.call.goal === 'identify'
      ? [part, reading, swap]
      : [reading, swap, reading === undefined ? part : undefined];
  const said = wanted.filter((each) => each !== undefined).slice(0, 2);
  if (said.length > 0) return said;
  const next = nextStep(context);
  return [`${STEPS[next.step].link}. ${next.why}`];
}
