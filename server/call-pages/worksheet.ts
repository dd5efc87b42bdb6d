import { speaking } from '../../shared/quantities/spoken-units.ts';
import { GOALS, sentence } from '../../shared/schemas/words.ts';
import type { CallContext } from '../call/context.ts';
import { isStopped } from '../call/under-stop.ts';
import { forBench } from '../mechanics/assessment/for-bench.ts';
import type { Page } from '../web/pages/render.ts';
import type { DeskReached } from './desk-reached.ts';
import { type CallFrame, stepsFor } from './frame.ts';
import { qrCode } from './qr-code.ts';
import { stopFlag } from './report/call-summary.ts';

/** Rows without a name, for readings that nobody foresaw. */
const SPARE = ['', ''];

/** A blank sheet for the bench: a line for all that is missing, and what each step puts on it. */
export const worksheetPage = (frame: CallFrame, context: CallContext, desk: DeskReached): Page =>
  speaking(context.build.units, () =>
    sheetOf(frame, { ...context, assessment: forBench(context.assessment) }, desk),
  );

/** What is next first, then all that is missing: each is a line to fill in. */
function lacksOf({ assessment: { next, missing } }: CallContext): string[] {
  const asked = [...(next === undefined || next.closes === true ? [] : [next]), ...missing];
  return [...new Set(asked.filter(({ step }) => step !== 'notes').map(({ sentence: text }) => text))];
}

function sheetOf(frame: CallFrame, context: CallContext, desk: DeskReached): Page {
  const { call, build, base, side } = context;
  // At the desk the call’s own address opens the desk’s sign-in, and the builder’s link is not kept to be shown again.
  const address = side === 'bench' ? `${desk.origin}${base}` : undefined;
  const rows = stepsFor(frame, context).map((step) => step.worksheet(context));
  return {
    template: 'worksheet',
    title: `Worksheet of call ${call.number}`,
    place: '/calls',
    data: {
      back: base,
      title: `Worksheet: ${sentence(GOALS, call.goal).toLowerCase()}`,
      about: `Call ${call.number}, ${build.label}`,
      phone: desk.phone ?? '',
      ...(address === undefined ? {} : { online: { address, code: qrCode(address) } }),
      stop: stopFlag(context),
      lacks: lacksOf(context),
      valves: rows.flatMap(({ valves }) => valves),
      choices: rows.flatMap(({ choices }) => choices),
      blanks: rows.flatMap(({ blanks }) => blanks),
      passes: isStopped(context) ? [] : [...rows.flatMap(({ passes }) => passes), ...SPARE],
      dials: rows.flatMap(({ dials }) => dials),
    },
  };
}
