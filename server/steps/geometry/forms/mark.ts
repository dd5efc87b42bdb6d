import { inSpoken } from '../../../../shared/quantities/authored.ts';
import {
  correctTipMark,
  MARK_FOUND,
  MARK_SIDES,
  newTipMark,
  PUSHROD_OVER,
} from '../../../../shared/schemas/tip-mark.ts';
import { SPRINGS } from '../../../../shared/schemas/words.ts';
import type { Component } from '../../../../views/parts/components.ts';
import type { FormGroup } from '../../../../views/parts/form.examples.ts';
import type { CallContext } from '../../../call/context.ts';
import { correctionForm } from '../../../call/correction-form.ts';
import type { PageForm } from '../../../call/forms.ts';
import { isStopped } from '../../../call/under-stop.ts';
import { valveWords } from '../../../call/valve-words.ts';
import type { TipMark } from '../../../records/tip-marks/tip-mark-table.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
} from '../../../web/forms/fields.ts';
import type { Fields } from '../../../web/forms/read-form.ts';

const MARK_LABELS = {
  cylinder: 'Cylinder',
  valve: 'Valve',
  width: 'Width of the mark',
  side: 'Where its middle sits',
  off: 'Its middle from the stem’s middle',
  pushrod: 'Pushrod it was made with',
  pushrodOver: 'That length is taken',
  shims: 'Shims under the stand',
  stem: 'Stem, or lash cap, across',
  spring: 'Spring on the valve',
  found: 'How the mark came about',
};

const big = (context: CallContext) => (context.side === 'bench' ? { big: true } : {});

/** On a shaft or pedestal the height moves the mark, else the pushrod's length. */
const onStand = ({ build }: CallContext): boolean =>
  ['shaft', 'pedestal'].includes(build.spec.engine?.rockerMounting ?? '');

const pushrodField = (shown: FormState, context: CallContext): Component =>
  quantityField(shown, 'pushrod', MARK_LABELS.pushrod, 'length', {
    optional: true,
    ...(onStand(context) ? {} : { hint: 'So that the next length can be told.' }),
    ...big(context),
  });
const shimsField = (shown: FormState, context: CallContext): Component =>
  quantityField(shown, 'shims', MARK_LABELS.shims, 'length', {
    optional: true,
    hint: 'None is 0: so that the next height can be told.',
    ...big(context),
  });

/** What moves the mark on this mounting; the other one is folded away. */
const madeWith = (shown: FormState, context: CallContext): Component =>
  onStand(context) ? shimsField(shown, context) : pushrodField(shown, context);

function sizeFields(shown: FormState, context: CallContext): Component[] {
  return [
    quantityField(shown, 'width', MARK_LABELS.width, 'length', {
      hint: '1 on the drawing: along the rocker, caliper over the ink.',
      ...(context.side === 'bench' ? { big: true } : { autofocus: true }),
    }),
    choiceField(shown, 'side', MARK_LABELS.side, MARK_SIDES),
    quantityField(shown, 'off', MARK_LABELS.off, 'length', {
      optional: true,
      hint: '2 on the drawing. Centred, or not measured: leave it empty.',
      ...big(context),
    }),
    madeWith(shown, context),
  ];
}

/** Under a stop nothing is inked and turned over: a mark is one that was found. */
const FOUND_ALREADY = { 'after-running': MARK_FOUND['after-running'] };

/** Asked of each mark, since nothing can be taken for said. */
const howMade = (shown: FormState, stopped: boolean): Component[] => [
  selectField(shown, 'found', MARK_LABELS.found, stopped ? FOUND_ALREADY : MARK_FOUND),
  selectField(shown, 'spring', MARK_LABELS.spring, SPRINGS),
];

const folded = (shown: FormState, context: CallContext): FormGroup => ({
  legend: 'The pushrod and the stem',
  fold: shown.faults.some(({ field }) =>
    ['stem', 'pushrodOver', onStand(context) ? 'pushrod' : 'shims'].includes(field),
  )
    ? 'open'
    : 'shut',
  columns: true,
  slots: [
    onStand(context) ? pushrodField(shown, context) : shimsField(shown, context),
    selectField(shown, 'pushrodOver', MARK_LABELS.pushrodOver, PUSHROD_OVER, {
      hint: inSpoken('Over its ends and to a gauge differ by about .017 in.'),
    }),
    quantityField(shown, 'stem', MARK_LABELS.stem, 'length', {
      optional: true,
      hint: 'With it the marks are drawn to scale.',
    }),
  ],
});

/** What the next mark is likely to have in common with the last; how it came about is asked for each. */
function initialOf(last: TipMark | undefined): Fields {
  if (last === undefined) return {};
  return {
    cylinder: String(last.cylinder),
    valve: last.valve,
    pushrodOver: last.pushrodOver,
    stem: last.stem?.readAs ?? '',
  };
}

/** One mark: which valve, its width, where it sits, and the pushrod it was made with. */
export function markForm(context: CallContext, last: TipMark | undefined): PageForm {
  const stopped = isStopped(context);
  const initial = initialOf(last);
  return {
    name: 'mark',
    action: `${context.base}/tip-marks`,
    schema: newTipMark,
    labels: MARK_LABELS,
    ...(stopped ? { title: 'A mark that was found after running' } : {}),
    initial: stopped ? { ...initial, found: 'after-running' } : initial,
    groups: (shown) => [
      {
        columns: true,
        slots: [
          numberField(shown, 'cylinder', MARK_LABELS.cylinder, { inputmode: 'numeric', ...big(context) }),
          selectField(shown, 'valve', MARK_LABELS.valve, valveWords(context), { first: 'Not said' }),
        ],
      },
      { columns: true, slots: sizeFields(shown, context) },
      { columns: true, slots: howMade(shown, stopped) },
      folded(shown, context),
    ],
    buttons: [{ label: 'Keep the mark', kind: 'primary', key: 'k' }],
  };
}

/** A mark put right or struck out: the old one stays where it was, with the reason. */
export function markCorrectionForm(context: CallContext, mark: TipMark): PageForm {
  return correctionForm({
    name: 'correct-mark',
    action: `${context.base}/tip-marks/${mark.id}`,
    schema: correctTipMark,
    back: `${context.base}/steps/geometry?of=marks`,
    labels: MARK_LABELS,
    initial: {
      width: mark.width.readAs,
      side: mark.side,
      off: mark.off?.readAs ?? '',
      pushrod: mark.pushrod?.readAs ?? '',
      pushrodOver: mark.pushrodOver,
      shims: mark.shims?.readAs ?? '',
      stem: mark.stem?.readAs ?? '',
      spring: mark.spring,
      found: mark.found,
    },
    slots: (shown) => [
      ...sizeFields(shown, context),
      ...howMade(shown, false),
      ...folded(shown, context).slots,
    ],
    reasonHint: 'Such as “caliper was on the edge, read again”.',
  });
}

/** What goes along when a mark is put right. */
export const MARK_ALONG = ['side', 'off', 'pushrod', 'pushrodOver', 'shims', 'stem', 'spring', 'found'];
