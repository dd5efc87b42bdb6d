import type { CallContext } from '../../call/context.ts';
import { STEP_NAMES, type StepName } from '../../call/steps.ts';
import { needsOf } from '../needs.ts';
import type { ReportData } from './report-data.ts';

/** The steps that a goal is about, beside what every call waits for. */
const ABOUT: Readonly<Record<string, readonly StepName[]>> = {
  identify: ['identify'],
  'verify-ratio': ['ratio'],
  'choose-ratio': ['cam', 'build', 'consequences'],
  'clearances-after-a-change': ['cam', 'build', 'consequences'],
  geometry: ['geometry'],
  'cam-timing': ['timing', 'cam'],
  adjuster: ['adjuster'],
  'noise-or-failure': ['adjuster', 'sheet'],
  'returned-part': ['parts', 'identify'],
};
/** What these lack is not something a person reads on the engine. */
const NOT_READ: readonly StepName[] = ['notes'];

export interface Lack {
  readonly step: StepName;
  readonly text: string;
  readonly isQuestion: boolean;
}

/** What is still missing for the goal of the call: all of its own steps, and what the answer waits for elsewhere. */
export function lacksOf(context: CallContext): Lack[] {
  const own = ABOUT[context.call.goal] ?? [];
  return STEP_NAMES.filter((step) => !NOT_READ.includes(step)).flatMap((step) =>
    needsOf(step, context)
      .filter((need) => !need.have && (need.must || own.includes(step)))
      .map(({ text, isQuestion = false }) => ({ step, text, isQuestion })),
  );
}

/** The same as sentences, with the gaps that nothing is known of. */
export function missingForGoal({ context, consequences }: ReportData): string[] {
  const gaps = consequences.flatMap(({ gaps: rows, found }) => {
    const unknown = rows
      .filter(({ verdict }) => verdict === undefined)
      .map(({ title }) => title.toLowerCase());
    return unknown.length === 0
      ? []
      : [`Gaps not known on ${found.setUp.cylinder} ${found.setUp.valve}: ${unknown.join(', ')}.`];
  });
  const lacks = lacksOf(context);
  const asked = lacks.filter(({ isQuestion }) => isQuestion).map(({ text }) => text);
  const wanted = lacks.filter(({ isQuestion }) => !isQuestion).map(({ text }) => text);
  const first = wanted.join('; ');
  return [...(first === '' ? [] : [`${first.charAt(0).toUpperCase()}${first.slice(1)}.`]), ...asked, ...gaps];
}
