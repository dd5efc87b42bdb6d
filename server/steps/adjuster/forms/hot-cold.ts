import { memberOf } from '../../../../shared/member.ts';
import type { BuildSpec } from '../../../../shared/schemas/build-spec.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { inField, lastInput, textInField } from '../../../call/worked/in-field.ts';
import { knownOf } from '../../../call/worked/known-inputs.ts';
import { atBench, firstAt, type PartForm, sameField } from '../../../call/worked/part-form.ts';
import type { Working } from '../../../records/workings/workings.ts';
import { numberField, quantityField, selectField } from '../../../web/forms/fields.ts';
import { newestFound } from '../lash-text.ts';

const CASTINGS = { 'cast-iron': 'Cast iron', aluminium: 'Aluminium' } as const;
const PUSHRODS = { steel: 'Steel', 'aluminium-6061': 'Aluminium', titanium: 'Titanium' } as const;
const VALVES = {
  steel: 'Steel',
  stainless: 'Stainless, as many exhausts are',
  titanium: 'Titanium',
} as const;

const LABELS = {
  hotLash: 'Lash wanted hot',
  coldFound: 'Lash found cold',
  temperatureRise: 'How much it warms up',
  ratio: 'Rocker ratio',
  'materials.block': 'Block',
  'materials.head': 'Head',
  'materials.pushrod': 'Pushrods',
  'materials.valve': 'Valves',
  'heights.block': 'Base circle of the cam up to the deck',
  'heights.head': 'Deck up to the pivot',
  'heights.seat': 'Deck up to the valve seat',
  'heights.valve': 'Seat up to the valve’s tip',
  'heights.pushrod': 'Base circle up to the pushrod’s cup',
};

const HEIGHTS = ['block', 'head', 'seat', 'valve', 'pushrod'] as const;
const PARTS = ['block', 'head', 'pushrod', 'valve'] as const;

/** As the caller described the engine: `iron block, aluminium heads`; a casting that is not described is asked for. */
function described({ engine }: BuildSpec): Record<string, string> {
  const said = engine?.description?.toLowerCase() ?? '';
  const is = (metal: string, part: string) =>
    new RegExp(`\\b(?:${metal})(?: cylinder)? ${part}|\\ball[- ](?:${metal})`).test(said);
  const of = (part: string): string => {
    if (is('alumini?um|alloy', part)) return 'aluminium';
    return is('iron', part) ? 'cast-iron' : '';
  };
  return { block: of('block'), head: of('heads?'), pushrod: 'steel', valve: 'steel' };
}

function materialsOf(spec: BuildSpec, workings: readonly Working[]): Record<string, string> {
  const last = lastInput(workings, ['lash-hot-cold'], 'materials');
  const first = described(spec);
  return Object.fromEntries(
    PARTS.map((part) => [`materials.${part}`, textInField(memberOf(last, part)) || (first[part] ?? '')]),
  );
}

/** The lash to set cold for one that is wanted hot, from what the parts are made of. */
export const hotColdForm: PartForm = {
  labels: LABELS,
  button: 'Save hot and cold',
  initial: (context, workings) => {
    const { spec } = context.build;
    const found = newestFound(context);
    const { hotLash, ratio } = knownOf('lash-hot-cold', spec);
    const heights = lastInput(workings, ['lash-hot-cold'], 'heights');
    const card = found === undefined ? hotLash : (spec.cam?.[sideOfValve(found.valve)]?.lash ?? hotLash);
    return {
      hotLash: inField(card),
      coldFound: found?.engine === 'cold' ? found.inForm : '',
      temperatureRise: inField(lastInput(workings, ['lash-hot-cold'], 'temperatureRise')) || '70 degC',
      ratio: textInField(ratio),
      ...materialsOf(spec, workings),
      ...Object.fromEntries(HEIGHTS.map((name) => [`heights.${name}`, inField(memberOf(heights, name))])),
    };
  },
  groups: (shown, context) => [
    {
      columns: true,
      slots: [
        quantityField(shown, 'hotLash', LABELS.hotLash, 'length', {
          hint: 'As the card has it, where it says hot.',
          ...firstAt(context),
        }),
        quantityField(shown, 'coldFound', LABELS.coldFound, 'length', {
          optional: true,
          hint: 'Tells what it becomes hot.',
          ...atBench(context),
        }),
        selectField(shown, 'materials.block', LABELS['materials.block'], CASTINGS, { first: 'Not said' }),
        selectField(shown, 'materials.head', LABELS['materials.head'], CASTINGS, { first: 'Not said' }),
        selectField(shown, 'materials.pushrod', LABELS['materials.pushrod'], PUSHRODS),
        selectField(shown, 'materials.valve', LABELS['materials.valve'], VALVES),
        numberField(shown, 'ratio', LABELS.ratio),
        quantityField(shown, 'temperatureRise', LABELS.temperatureRise, 'temperature-rise', {
          hint: 'From 20 to 90 °C is 70 °C, or 126 °F.',
        }),
      ],
    },
    {
      legend: 'Heights of this engine, if a drawing has them; else an ordinary one is taken, and said',
      fold:
        shown.faults.some(({ field }) => field.startsWith('heights')) ||
        HEIGHTS.some((name) => (shown.typed[`heights.${name}`] ?? '') !== '')
          ? 'open'
          : 'shut',
      columns: true,
      slots: HEIGHTS.map((name) =>
        quantityField(shown, `heights.${name}`, LABELS[`heights.${name}`], 'length', { optional: true }),
      ),
    },
  ],
  toTyped: (fields) => Object.fromEntries(Object.keys(LABELS).map((name) => [name, fields[name] ?? ''])),
  faultAt: sameField,
};
