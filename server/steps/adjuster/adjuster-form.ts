import { knownOf } from '../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm, sameField } from '../../call/worked/part-form.ts';
import { numberField, quantityField, selectField, textField } from '../../web/forms/fields.ts';

const MOUNTS = {
  'stud-nut': 'Nut on the stud',
  'cup-screw': 'Screw at the pushrod, on a shaft',
  'valve-end-screw': 'Screw at the valve, on a shaft',
} as const;
const LIFTERS = {
  hydraulic: 'Hydraulic: a plunger to press down',
  solid: 'Solid: a gap to set',
} as const;

const LABELS = {
  turns: 'Turns from zero lash',
  preload: 'Or the preload that is wanted',
  thread: 'Thread of the adjuster',
  ratio: 'Rocker ratio',
  mount: 'Where the adjuster is',
  lifter: 'Lifter',
};

const text = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';

/** What turns of an adjuster do: turns and thread first, the rest as the build has it. */
export const adjusterForm: PartForm = {
  labels: LABELS,
  button: 'Keep what the turns do',
  initial: (context) => {
    const { ratio, mount, lifter } = knownOf('adjuster', context.build.spec);
    return { ratio: text(ratio), mount: text(mount) || 'stud-nut', lifter: text(lifter) || 'hydraulic' };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        numberField(shown, 'turns', LABELS.turns, {
          hint: 'Tightening is positive: .5, 3/4. Zero lash by up-and-down play.',
          optional: true,
          ...firstAt(context),
        }),
        textField(shown, 'thread', LABELS.thread, {
          hint: 'Such as 7/16-20, 3/8-24 or M8×1.25.',
          ...atBench(context),
        }),
      ],
    },
    {
      legend: 'As the build has it',
      fold: (shown.typed.ratio ?? '') === '' || shown.faults.length > 0 ? 'open' : 'shut',
      columns: true,
      slots: [
        numberField(shown, 'ratio', LABELS.ratio),
        selectField(shown, 'mount', LABELS.mount, MOUNTS),
        selectField(shown, 'lifter', LABELS.lifter, LIFTERS),
        quantityField(shown, 'preload', LABELS.preload, 'length', {
          optional: true,
          hint: 'Instead of turns, hydraulic lifters alone: answers how many turns.',
        }),
      ],
    },
  ],
  toTyped: ({ turns = '', preload = '', thread = '', ratio = '', mount = '', lifter = '' }) => ({
    turns,
    preload,
    thread,
    ratio,
    mount,
    lifter,
  }),
  faultAt: sameField,
};
