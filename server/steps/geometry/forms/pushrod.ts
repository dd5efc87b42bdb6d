import { isSolidLifter } from '../../../../shared/lifters.ts';
import { inSpoken } from '../../../../shared/quantities/authored.ts';
import type { FormGroup } from '../../../../views/parts/form.examples.ts';
import type { CallContext } from '../../../call/context.ts';
import { inField, lastInput, textInField } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm } from '../../../call/worked/part-form.ts';
import type { Working } from '../../../records/workings/workings.ts';
import {
  areaField,
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../../../web/forms/fields.ts';

const COMPUTATION = ['pushrod-length'];

/** How the length is to be told; the computation leaves the first one out. */
const TOLD = {
  '': 'As the checker is told, whichever that is',
  overall: 'Over the ends, and the checker was read so',
  effective: 'Gauge length, from a checker read over its ends',
} as const;

const LABELS = {
  checkerAtZero: 'The checker, screwed together',
  perTurn: 'Its thread, or what one turn adds',
  turns: 'Turns it was screwed out',
  add: 'Preload to add',
  lash: 'Lash to take off, at the valve',
  ratio: 'Rocker ratio',
  convention: 'How the length is to be told',
  stock: 'Lengths that can be had',
};

const THREAD = /^\s*m\s*\d|\d\s*["”]?\s*[-–]\s*\d/i;

/** A bare figure of less than an inch is what a turn adds, in inches; a larger one could be threads to the inch. */
const BARE = /^\s*0?\.\d+\s*$/;

/** What is said of one turn: a thread by its designation, or the length that it adds. */
function ofTurn(text: string): Record<string, string> {
  if (THREAD.test(text)) return { thread: text };
  return { pitch: BARE.test(text) ? `${text.trim()} in` : text };
}

const isSolid = ({ build }: CallContext): boolean => isSolidLifter(build.spec.engine?.lifter);

function allowances(shown: FormState, context: CallContext): FormGroup {
  const preload = quantityField(shown, 'add', LABELS.add, 'length', {
    optional: true,
    hint: inSpoken('At the plunger, as the lifter’s maker has it; .020 to .060 is usual (trade press).'),
  });
  const lash = [
    quantityField(shown, 'lash', LABELS.lash, 'length', {
      optional: true,
      hint: 'Where no adjuster sets it. The pushrod gives up the lash over the ratio.',
    }),
    numberField(shown, 'ratio', LABELS.ratio, { optional: true }),
  ];
  const lifter = context.build.spec.engine?.lifter;
  return {
    legend: 'What the lifter wants',
    columns: true,
    slots: lifter === undefined ? [preload, ...lash] : isSolid(context) ? lash : [preload],
  };
}

const initialFor = (context: CallContext, workings: readonly Working[]) => {
  const last = (name: string) => lastInput(workings, COMPUTATION, name);
  const { lash, ratio } = knownOf('pushrod-length', context.build.spec);
  const perTurn = last('thread') ?? last('pitch');
  return {
    checkerAtZero: inField(last('checkerAtZero')),
    perTurn: textInField(perTurn) || inField(perTurn) || inSpoken('.050 in'),
    convention: textInField(last('convention')),
    lash: isSolid(context) ? inField(lash) : '',
    ratio: textInField(ratio),
  };
};

/** The length to order from an adjustable checker: what it was screwed out to, and what the lifter wants of it. */
export const pushrodForm: PartForm = {
  labels: LABELS,
  button: 'Save the length',
  initial: initialFor,
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'checkerAtZero', LABELS.checkerAtZero, 'length', {
          hint: 'Both halves turned in until they touch.',
          ...firstAt(context),
        }),
        numberField(shown, 'turns', LABELS.turns, {
          hint: 'Whole turns and parts: 3, 2.5, 1 1/4.',
          ...atBench(context),
        }),
        textField(shown, 'perTurn', LABELS.perTurn, {
          hint: inSpoken('.050 is common; or 1/4-20, M6×1, 20 tpi.'),
        }),
        selectField(shown, 'convention', LABELS.convention, TOLD, {
          hint: inSpoken('Over the ends and gauge length are about .017 in apart.'),
        }),
      ],
    },
    allowances(shown, context),
    {
      slots: [
        areaField(shown, 'stock', LABELS.stock, {
          optional: true,
          rows: 2,
          hint: inSpoken('Told in the same way, as 7.850 in, 7.900 in, 7.950 in.'),
        }),
      ],
    },
  ],
  toTyped: ({ checkerAtZero = '', perTurn = '', turns = '', add = '', lash = '', ratio = '', ...rest }) => ({
    checkerAtZero,
    ...ofTurn(perTurn),
    turns,
    add,
    lash,
    // Without a lash there is nothing that the ratio is for.
    ...(lash.trim() === '' ? {} : { ratio }),
    convention: rest.convention ?? '',
    stock: rest.stock ?? '',
  }),
  faultAt: ({ field, detail }) => ({
    field: field === 'thread' || field === 'pitch' ? 'perTurn' : field,
    detail: detail.replace('; or give pitch', ''),
  }),
};
