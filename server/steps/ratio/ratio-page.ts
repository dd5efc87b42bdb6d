import { defined } from '../../../shared/defined.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { questionCards } from '../../call/question-form.ts';
import { type ShownSetUp, shownSetUps } from '../../call/shown-set-up.ts';
import type { StepPageInput } from '../../call/step.ts';
import { TURNING_GUIDE } from '../../call/turning-guide.ts';
import { saidOfSetUp } from '../../mechanics/assessment/ratio/read/said-of-set-up.ts';
import { noticeComponent } from '../../web/components.ts';
import type { PageAsked } from '../../web/page-request.ts';
import { dialComponent } from './dial-view.ts';
import { fromSheetComponents } from './from-sheet.ts';
import { benchLayout, deskLayout, setUpsComponent } from './layouts.ts';
import { nextReading, toPasses } from './next-reading.ts';
import { readingForm } from './reading-form.ts';
import { setUpForm, setUpScreen } from './set-up-form.ts';

const STOPPED = 'No set-up is started and no pass is kept while the stop stands.';

/** The last pass of the kind that is typed beside it: one of another kind was read elsewhere, and looks otherwise. */
function dialComponents({ setUp, readings }: ShownSetUp, followed: string): Component[] {
  const last = readings.findLast(
    ({ kind, replacedBy, struck }) => replacedBy === undefined && !struck && kind === followed,
  );
  const drawn = last === undefined ? undefined : dialComponent(setUp, last, { followed });
  return drawn === undefined ? [] : [drawn];
}

function starting(
  context: CallContext,
  req: PageAsked,
  found: ShownSetUp | undefined,
  rejected?: RejectedForm,
): StepBody {
  if (context.assessment.stop.length > 0) return { forms: [], slots: [noticeComponent(STOPPED)] };
  if (context.side === 'bench' && rejected === undefined) {
    const { form, screens } = setUpScreen(context, found?.setUp, req.query);
    return {
      ...defined({ next: toPasses(context) }),
      forms: [form],
      guide: TURNING_GUIDE,
      slots: [formComponent(form, rejected)],
      screens,
    };
  }
  const whole = setUpForm(context, found?.setUp, req.query);
  // The first one is asked for by the page itself: whoever has not begun it goes on with the call.
  const form: PageForm = { ...whole, givesWay: found === undefined };
  return {
    shows: 'new=yes',
    ...defined({ next: toPasses(context) }),
    forms: [form],
    guide: TURNING_GUIDE,
    slots: [formComponent(form, rejected), ...fromSheetComponents(context)],
  };
}

/** Method first, then passes, what is said of them and what it rests on, and what must be asked before it is believed. */
export function ratioPage({ context, req, rejected }: StepPageInput): StepBody {
  const all = shownSetUps(context);
  const asked = rejected?.typed.setUpId ?? req.query['set-up'];
  const found = all.find(({ setUp }) => setUp.id === asked) ?? all.at(-1);
  if (found === undefined || req.query.new !== undefined || rejected?.typed.form === 'set-up')
    return starting(context, req, found, rejected);
  const stopped = context.assessment.stop.length > 0;
  const said = saidOfSetUp(context.assessment, found.detail);
  const form = readingForm(context, found, req.query);
  const cards = questionCards(context, said.questions, rejected);
  const next = nextReading(context, found, rejected);
  const entry = stopped ? [noticeComponent(STOPPED)] : [formComponent(form, rejected)];
  const parts = {
    found,
    said,
    entry,
    dial: stopped ? [] : dialComponents(found, form.initial?.kind ?? ''),
    cards,
    next,
  };
  const slots = context.side === 'bench' ? benchLayout(context, parts) : deskLayout(context, parts);
  return {
    ...(stopped ? {} : { guide: TURNING_GUIDE }),
    ...defined({ next: next.lead }),
    shows: `set-up=${found.setUp.id}`,
    forms: [...(stopped ? [] : [form]), ...cards.forms, ...next.forms],
    slots: [...slots, setUpsComponent(context, all, found), ...fromSheetComponents(context)],
  };
}
