import type { HoldData } from '../../views/parts/hold.examples.ts';
import { unanswered } from '../assessment/stops/lift-stop.ts';
import type { CallContext } from '../call/context.ts';
import type { PageForm } from '../call/forms.ts';
import { isEvent } from '../events/read-events.ts';
import { TRIAGE_EVENTS } from '../records/calls/events.ts';
import { momentText } from '../web/dates.ts';
import { textField } from '../web/forms/fields.ts';

/** A person said stop, on this call or on another about the same engine. */
export const isHeld = ({ assessment }: CallContext): boolean =>
  assessment.stop.some(({ code }) => code === 'held' || code === 'contact');

/** Who said stop, and when; a stop that the readings raise has nobody. */
function setBy(context: CallContext): Pick<HoldData, 'set'> {
  if (!isHeld(context)) return {};
  const { call, events } = context;
  const set = events.findLast((event) => isEvent(event, TRIAGE_EVENTS['hold-set']));
  const at = set?.at ?? call.openedAt;
  return { set: { who: set?.by ?? 'The desk', at: at.toISOString(), when: momentText(at) } };
}

function titleOf({ stop, notToRun }: CallContext['assessment']): string {
  if (stop.length > 0) return 'Stop: nobody turns it';
  return notToRun.every(({ what }) => what === 'fit')
    ? 'Not to be fitted as planned'
    : 'Not to be run in this state';
}

/** Everything that stops it in sight; of plans that are short the first, the others below it. */
function reasonsOf({ stop, notToRun }: CallContext['assessment']): Pick<HoldData, 'reasons' | 'more'> {
  const said = (all: readonly { readonly sentence: string; readonly wayOut: string }[]) =>
    all.map(({ sentence, wayOut }) => ({ sentence, wayOut }));
  const shown = [...stop, ...notToRun].slice(0, Math.max(1, stop.length));
  const rest = [...stop, ...notToRun].slice(shown.length);
  if (rest.length === 0) return { reasons: said(shown) };
  const summary = rest.length === 1 ? 'One more reason' : `${rest.length} more reasons`;
  return { reasons: said(shown), more: { summary, reasons: said(rest) } };
}

/** The banner while nobody may turn the engine: whatever stops it, whoever said so. */
export function holdOf(context: CallContext): HoldData | undefined {
  const { stop, notToRun } = context.assessment;
  if (stop.length + notToRun.length === 0) return undefined;
  const liftable = context.side === 'desk' && stop.length > 0 && unanswered(stop).length === 0;
  return {
    id: 'hold',
    title: titleOf(context.assessment),
    ...reasonsOf(context.assessment),
    ...setBy(context),
    ...(liftable ? { lift: { label: 'Lift the stop', href: `${context.base}/hold`, key: 'h' } } : {}),
  };
}

/** Anyone on the call may say stop, at any step, with or without a reason. */
export function stopForm(context: CallContext): PageForm {
  return {
    name: 'stop',
    action: `${context.base}/hold`,
    labels: { reason: 'What was felt or seen' },
    groups: (shown) => [
      {
        slots: [
          textField(shown, 'reason', 'What was felt or seen', {
            hint: 'Can be left empty: stop first, say why later.',
          }),
        ],
      },
    ],
    buttons: [{ label: 'Stop: nobody turns it', kind: 'danger' }],
  };
}

export function liftPageForm(context: CallContext): PageForm {
  return {
    name: 'lift-hold',
    action: `${context.base}/hold/lift`,
    title: 'Lift the stop',
    labels: { reason: 'Why it may be turned again' },
    groups: (shown) => [
      {
        slots: [
          textField(shown, 'reason', 'Why it may be turned again', {
            autofocus: true,
            hint: 'What was looked at, by whom, and what was found.',
          }),
        ],
      },
    ],
    buttons: [
      { label: 'Lift the stop', kind: 'danger' },
      { label: 'Leave the stop', href: context.base },
    ],
  };
}
