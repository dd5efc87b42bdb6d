import { VALVES } from '../../../shared/schemas/words.ts';
import type { Slot } from '../../../views/parts/part.ts';
import { type Again, formSlot, type PageForm, type StepBody } from '../../calls/pages/forms-on-page.ts';
import { momentText } from '../../calls/pages/moments.ts';
import { type Sight, valveName } from '../../calls/pages/sight.ts';
import { numberField, selectField, textField } from '../../forms/fields.ts';
import { ROCKER_GROUP } from './spec-fields.ts';
import { type OtherSide, specForm } from './spec-form.ts';

const ARM = {
  name: 'Name of this arm on the call',
  family: 'Family, if known',
  ratioStamp: 'What looks like a ratio on it',
  otherNumber: 'Every other number or letter on it',
  boxLabel: 'What the box or invoice says',
};
const PLACE = {
  armId: 'Which arm',
  cylinder: 'Cylinder',
  valve: 'Which valve',
  reason: 'Why it sits there now',
};

export function armForm(sight: Sight): PageForm {
  const big = sight.side === 'bench' ? { big: true } : {};
  return {
    name: 'arm',
    action: `${sight.base}/arms`,
    title: 'Put an arm on record',
    labels: ARM,
    groups: (shown) => [
      {
        hint: 'Three marks, three fields, word for word. Nothing is copied from one to another.',
        slots: [
          textField(shown, 'name', ARM.name, {
            hint: 'Such as “arm C”, as written on it with a pen.',
            ...big,
          }),
          textField(shown, 'ratioStamp', ARM.ratioStamp, { optional: true, ...big }),
          textField(shown, 'otherNumber', ARM.otherNumber, { optional: true, ...big }),
          textField(shown, 'boxLabel', ARM.boxLabel, { optional: true, ...big }),
          textField(shown, 'family', ARM.family, { optional: true, ...big }),
        ],
      },
    ],
    buttons: [{ label: 'Keep this arm', kind: sight.arms.length === 0 ? 'primary' : 'plain' }],
  };
}

export function placeForm(sight: Sight): PageForm {
  const arms = Object.fromEntries(sight.arms.map((arm) => [arm.id, arm.name]));
  return {
    name: 'place',
    action: `${sight.base}/placements`,
    title: 'Say where an arm sits now',
    labels: PLACE,
    groups: (shown) => [
      {
        columns: true,
        slots: [
          selectField(shown, 'armId', PLACE.armId, arms),
          numberField(shown, 'cylinder', PLACE.cylinder, {
            hint: 'In the engine’s own numbering.',
            ...(sight.side === 'desk' ? { autofocus: true } : {}),
          }),
          selectField(shown, 'valve', PLACE.valve, VALVES),
          textField(shown, 'reason', PLACE.reason, {
            hint: 'Such as “swapped for the swap test”.',
            optional: true,
          }),
        ],
      },
    ],
    buttons: [{ label: 'Keep this place', kind: 'primary', key: 'k' }],
  };
}

const mark = (text: string) => (text === '' ? 'not said' : `“${text}”`);

export function armsTable(sight: Sight): Slot {
  const seats = new Map(sight.now.map((placement) => [placement.armId, valveName(placement)]));
  return {
    template: '/parts/table',
    data: {
      caption: 'Arms on record, and the valve each sits on now',
      columns: [
        { label: 'Arm' },
        { label: 'Ratio stamp' },
        { label: 'Other number' },
        { label: 'Box label' },
        { label: 'Sits on now' },
      ],
      rows: sight.arms.map((arm) => ({
        cells: [
          arm.name,
          mark(arm.ratioStamp),
          mark(arm.otherNumber),
          mark(arm.boxLabel),
          seats.get(arm.id) ?? 'no valve',
        ],
      })),
      empty: 'No arm on record yet. Put the first one on record below.',
    },
  };
}

/** Every placement in order: the swaps of a call are what decides between part and position. */
export function swapsTable(sight: Sight): Slot {
  const names = new Map(sight.arms.map((arm) => [arm.id, arm.name]));
  return {
    template: '/parts/table',
    data: {
      caption: 'Swaps, in order',
      columns: [
        { label: 'Line' },
        { label: 'Arm' },
        { label: 'Put on' },
        { label: 'Why' },
        { label: 'Who, when' },
      ],
      rows: sight.placements.map((placement) => ({
        cells: [
          String(placement.seq),
          names.get(placement.armId) ?? 'an arm',
          valveName(placement),
          placement.reason || 'not said',
          `${placement.by}, ${momentText(placement.at)}`,
        ],
      })),
    },
  };
}

/** Arms with their three marks, where each sits now, and the swaps. */
export function partsStep(sight: Sight, again: Again | undefined, other?: OtherSide): StepBody {
  const arm = armForm(sight);
  const place = placeForm(sight);
  const sold = specForm({
    name: 'rockers',
    action: `${sight.base}/spec/rockers`,
    groups: [ROCKER_GROUP],
    spec: sight.build.spec,
    revision: sight.build.revision,
    other,
    bench: sight.side === 'bench',
    alone: false,
    part: '',
  });
  const swaps = sight.placements.length > 1 ? [swapsTable(sight)] : [];
  const forms = [arm, place, sold];
  if (sight.arms.length === 0)
    return { forms, slots: [armsTable(sight), formSlot(arm, again), formSlot(sold, again)] };
  const others =
    sight.side === 'bench'
      ? [fold(arm, 'Put another arm on record', again), fold(sold, 'What the rockers are sold as', again)]
      : [formSlot(arm, again), formSlot(sold, again)];
  return { forms, slots: [armsTable(sight), formSlot(place, again), ...others, ...swaps] };
}

/** At the bench a form that is seldom wanted is one tap away; it stands open when it has come back. */
function fold(form: PageForm, summary: string, again: Again | undefined): Slot {
  return {
    template: '/pages/call/fold',
    data: {
      id: `fold-${form.name}`,
      summary,
      open: again?.typed.form === form.name,
      slots: [formSlot(form, again)],
    },
  };
}
