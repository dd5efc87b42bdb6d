import type { FormGroup } from '../../../../views/parts/form.examples.ts';
import { lastInput, textInField } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import {
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../../../web/forms/fields.ts';
import { knownThread, placeIn, placesOf, SUCH_AS, ZERO_FOUND } from './common.ts';

const LIFTERS = {
  hydraulic: 'Hydraulic: a plunger to press down',
  solid: 'Solid: a gap to set',
} as const;

const LABELS = {
  turns: 'Turns from zero lash',
  lashFound: 'Lash found',
  lashWanted: 'Lash wanted',
  preloadWanted: 'Preload wanted',
  thread: 'Thread of the adjuster',
  ratio: 'Rocker ratio',
  mount: 'Where the adjuster is',
  lifter: 'Lifter',
  zeroFoundBy: 'How zero lash was found',
};
const NAMES = [
  'turns',
  'lashFound',
  'lashWanted',
  'preloadWanted',
  'thread',
  'ratio',
  'mount',
  'lifter',
  'zeroFoundBy',
];

/** The computation's own names in a fault, as the labels of this form have them. */
const IN_WORDS = [
  [
    'or give preload, or lashFound and lashWanted, or preloadWanted',
    'or the lashes found and wanted, or the preload',
  ],
  ['lashFound', 'the lash found'],
  ['lashWanted', 'the lash wanted'],
  ['preloadWanted', 'the preload wanted'],
] as const;

/** Open where something is typed in it, where its fault stands, or where the lifter is of its kind. */
const foldOf = ({ typed, faults }: FormState, names: readonly string[], ofLifter: boolean) =>
  ofLifter ||
  names.some((name) => (typed[name] ?? '') !== '') ||
  faults.some(({ field }) => names.includes(field))
    ? ('open' as const)
    : ('shut' as const);

function wantedGroups(shown: FormState): FormGroup[] {
  const solid = shown.typed.lifter === 'solid';
  const lash: FormGroup = {
    legend: 'Or a solid lifter’s lash: answers how far to turn, and which way',
    fold: foldOf(shown, ['lashFound', 'lashWanted'], solid),
    columns: true,
    slots: [
      quantityField(shown, 'lashFound', LABELS.lashFound, 'length', {
        optional: true,
        hint: 'At the valve tip, lifter on the base circle.',
      }),
      quantityField(shown, 'lashWanted', LABELS.lashWanted, 'length', {
        optional: true,
        hint: 'Cold if found cold, hot if found hot.',
      }),
    ],
  };
  const preload: FormGroup = {
    legend: 'Or a hydraulic lifter’s preload: answers how far to turn',
    fold: foldOf(shown, ['preloadWanted'], shown.typed.lifter === 'hydraulic'),
    columns: true,
    slots: [
      quantityField(shown, 'preloadWanted', LABELS.preloadWanted, 'length', {
        optional: true,
        hint: 'At the plunger, from zero lash.',
      }),
    ],
  };
  return shown.typed.lifter === 'hydraulic' ? [preload, lash] : [lash, preload];
}

/** What turns of an adjuster do, or the turns that a lash or preload needs; the rest as the build has it. */
export const adjusterForm: PartForm = {
  labels: LABELS,
  button: 'Save the turns',
  initial: (context, workings) => {
    const { ratio, mount, lifter } = knownOf('adjuster', context.build.spec);
    const last = (name: string) => textInField(lastInput(workings, ['adjuster'], name));
    // Only a solid lifter has a gap that stands in the log; where nothing tells, nothing is presumed.
    const isSolid = context.record.lashLines.length > 0;
    return {
      thread: knownThread(workings),
      ratio: textInField(ratio) || last('ratio'),
      mount: placeIn(mount) || last('mount'),
      lifter: textInField(lifter) || last('lifter') || (isSolid ? 'solid' : ''),
    };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        numberField(shown, 'turns', LABELS.turns, {
          hint: 'Tightening is positive: .5, 3/4. Leave it empty to be told the turns.',
          optional: true,
          ...firstAt(context),
        }),
        textField(shown, 'thread', LABELS.thread, {
          hint: SUCH_AS,
          ...atBench(context),
        }),
        selectField(shown, 'zeroFoundBy', LABELS.zeroFoundBy, ZERO_FOUND),
      ],
    },
    ...wantedGroups(shown),
    {
      legend: 'Of this engine',
      fold:
        ['ratio', 'mount', 'lifter'].some((name) => (shown.typed[name] ?? '') === '') ||
        shown.faults.length > 0
          ? 'open'
          : 'shut',
      columns: true,
      slots: [
        numberField(shown, 'ratio', LABELS.ratio),
        selectField(shown, 'mount', LABELS.mount, placesOf(shown)),
        selectField(shown, 'lifter', LABELS.lifter, {
          ...((shown.typed.lifter ?? '') === '' ? { '': 'Not said' } : {}),
          ...LIFTERS,
        }),
      ],
    },
  ],
  toTyped: (fields) => Object.fromEntries(NAMES.map((name) => [name, fields[name] ?? ''])),
  faultAt: ({ field, detail }) => ({
    field,
    detail: IN_WORDS.reduce((told, [name, words]) => told.replaceAll(name, words), detail),
  }),
};
