import { defined } from '../../shared/defined.ts';
import { inSpoken } from '../../shared/quantities/authored.ts';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import type { CallPageData } from '../../views/pages/pages.ts';
import type { Component } from '../../views/parts/components.ts';
import type { CallContext } from '../call/context.ts';
import { foldComponent } from '../call/fold.ts';
import { errorsOf, formComponent, type Guide, type RejectedForm, type StepBody } from '../call/forms.ts';
import { withLead } from '../call/headline.ts';
import type { Step } from '../call/step.ts';
import { isStopped, wordsUnderStop } from '../call/under-stop.ts';
import { noticeComponent } from '../web/components.ts';
import type { Page } from '../web/pages/render.ts';
import { barOf } from './bar.ts';
import { besides, type CallFrame, stepNamed } from './frame.ts';
import { heldBack } from './held-back.ts';
import { holdOf, isHeld, stopForm } from './hold.ts';
import { missingOf } from './missing.ts';
import { tapeOf } from './tape.ts';
import { unitsForm } from './units-form.ts';
import { fieldOfNext } from './way-on-page.ts';

function pagerOf(
  frame: CallFrame,
  context: CallContext,
  name: string,
  screens: StepBody['screens'],
): Component {
  const { alone, ...own } = screens ?? {};
  const { before, after } = alone === true ? {} : besides(frame, context, name);
  const link = (to: Step) => ({ href: `${context.base}/steps/${to.name}`, label: to.words.link });
  return {
    template: '/parts/pager',
    data: {
      label: 'Steps',
      ...(before === undefined ? {} : { previous: link(before) }),
      ...(after === undefined ? {} : { next: link(after) }),
      ...own,
    },
  };
}

/** What is asked at the desk, or how it is done at the bench. */
function wordsFor(context: CallContext, words: { say: string; how: string }): { say?: string; how?: string } {
  return context.side === 'desk' ? { say: inSpoken(words.say) } : { how: inSpoken(words.how) };
}

/** What the step is called and says; under a stop nobody is asked to turn anything, nor told how. */
function wordsOf(frame: CallFrame, context: CallContext, name: string) {
  const own = stepNamed(frame, name)?.words;
  const said = own?.sayNow?.(context);
  const words = (own === undefined || said === undefined ? own : { ...own, say: said }) ?? {
    title: name,
    link: name,
    say: '',
    how: '',
    turns: false,
  };
  const why = words.turns ? wordsUnderStop(context) : undefined;
  return why === undefined ? words : { ...words, ...why, title: words.link };
}

interface PlaceOfPage {
  readonly step: string;
  readonly title?: string;
  readonly position?: string;
  /** It is of the call, and of none of its steps: none is marked as open. */
  readonly ofCall?: true;
}

/** A step in the frame of its side: missing, step and tape at the desk; one step and the tape at the bench. */
export function stepPage(
  frame: CallFrame,
  context: CallContext,
  at: PlaceOfPage,
  body: StepBody,
  rejected: RejectedForm | undefined,
): Page {
  return speaking(context.build.units, () => framed(frame, context, at, body, rejected));
}

/** How the step is done, and what to mind: one line in sight, the rest a tap away. */
function guideComponents(how: string | undefined, guide: Guide | undefined): Component[] {
  const slots = [...(how === undefined ? [] : [noticeComponent(how)]), ...(guide?.slots ?? [])];
  return slots.length === 0
    ? []
    : [
        foldComponent(
          'how',
          guide?.summary ?? (how?.startsWith('Ask:') === true ? 'What this step asks' : 'How to do it'),
          slots,
        ),
      ];
}

function framed(
  frame: CallFrame,
  context: CallContext,
  at: PlaceOfPage,
  body: StepBody,
  rejected: RejectedForm | undefined,
): Page {
  const units = unitsForm(context, at.step);
  const { lead, slots } = withLead(body.slots);
  const stop = stopForm(context);
  const hold = holdOf(context);
  const words = wordsOf(frame, context, at.step);
  const title = at.title ?? words.title;
  // A page beside the steps has its own business; what the step asks does not stand on it.
  const { say, how } = at.title === undefined ? wordsFor(context, body.words ?? words) : {};
  // What is next is what is asked: beside it the usual question of the step is one tap away.
  const isNext = context.assessment.next?.step === at.step && !isStopped(context);
  const header: Component = {
    template: '/parts/step-header',
    data: {
      title,
      position: at.position ?? `Call ${context.call.number}, ${context.build.label}`,
      // Under a stop its box says why nothing is asked.
      ...defined({ say: isNext || isStopped(context) ? undefined : say }),
    },
  };
  const guide = guideComponents(isNext && say !== undefined ? `Ask: “${say}”` : how, body.guide);
  const forms = [...body.forms, stop, units];
  const held = heldBack(context, forms, rejected);
  const shown = { forms: body.forms, shows: body.shows, isBeside: at.title !== undefined };
  const nextField = context.assessment.next?.step === at.step ? fieldOfNext(context, shown) : undefined;
  const step = [
    header,
    ...held.slots,
    barOf(frame, context, at.step, { lead, next: body.next, shown }),
    ...guide,
    ...slots,
    ...(context.side === 'bench' ? [pagerOf(frame, context, at.step, body.screens)] : []),
  ];
  return {
    template: 'call',
    title: `${title}, call ${context.call.number}`,
    place: '/calls',
    live: {
      stream: context.side === 'desk' ? `/live/calls/${context.call.id}` : '/live/bench',
      steps: `${context.base}/steps`,
      step: at.step,
      seq: context.build.version,
      stopped: isStopped(context),
      ...defined({ nextField }),
      ...(body.shows === undefined ? {} : { at: `${context.base}/steps/${at.step}?${body.shows}` }),
    },
    data: {
      errors: errorsOf(forms, rejected),
      ...defined({ errorTitle: held.errorTitle }),
      side: context.side,
      ...linksOf(context),
      units: formComponent(units, rejected),
      ...(isHeld(context)
        ? {}
        : { stop: { form: formComponent(stop, rejected), open: rejected?.typed.form === stop.name } }),
      missing: missingOf(frame, context, at.ofCall === true ? undefined : at.step),
      step,
      tape: tapeOf(frame, context),
      ...defined({ hold }),
    },
  };
}

/** What can be done with the call beside its steps: at hand, and what is wanted less often. */
function linksOf({ base, side }: CallContext): Pick<CallPageData, 'links' | 'more'> {
  const sheets = [
    { href: `${base}/report`, label: 'Report', key: 'r' },
    { href: `${base}/worksheet`, label: 'Worksheet', key: 'w' },
    { href: `${base}/photographs`, label: 'Photographs', key: 'p' },
  ];
  if (side === 'bench') return { links: [], more: { summary: 'All steps', links: sheets } };
  return {
    links: [
      ...sheets,
      { href: `${base}/takeover`, label: 'Takeover card', key: 'o' },
      { href: `${base}/share`, label: 'Share with the builder', key: 'b' },
    ],
    more: {
      summary: 'More',
      links: [
        { href: `${base}/export.json`, label: 'Export as JSON' },
        { href: `${base}/close`, label: 'Close the call' },
      ],
    },
  };
}
