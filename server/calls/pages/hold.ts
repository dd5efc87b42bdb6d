import type { HoldData } from '../../../views/parts/hold.examples.ts';
import { textField } from '../../forms/fields.ts';
import type { PageForm } from './forms-on-page.ts';
import { momentText } from './moments.ts';
import type { Sight } from './sight.ts';

/** The banner while nobody may turn the engine. */
export function holdOf(sight: Sight): HoldData | undefined {
  if (!sight.call.held) return undefined;
  const set = sight.events.findLast((event) => event.kind === 'hold-set');
  const at = set?.at ?? sight.call.openedAt;
  return {
    id: 'hold',
    reason: sight.call.holdReason,
    who: set?.by ?? 'The desk',
    at: at.toISOString(),
    when: momentText(at),
    ...(sight.side === 'desk'
      ? { lift: { label: 'Lift the hold', href: `${sight.base}/hold#lift-hold`, key: 'l' } }
      : {}),
  };
}

/** Anyone on the call may say stop, at any step, with or without a reason. */
export function stopForm(sight: Sight): PageForm {
  return {
    name: 'stop',
    action: `${sight.base}/hold`,
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

export function liftForm(sight: Sight): PageForm {
  return {
    name: 'lift-hold',
    action: `${sight.base}/hold/lift`,
    title: 'Lift the hold',
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
      { label: 'Lift the hold', kind: 'danger' },
      { label: 'Leave it held', href: sight.base },
    ],
  };
}
