import { inSpoken } from '../../../../shared/quantities/authored.ts';
import { MARK_FOUND, markSidesOf, PUSHROD_OVER } from '../../../../shared/schemas/tip-mark.ts';
import { SPRINGS } from '../../../../shared/schemas/words.ts';
import type { Component } from '../../../../views/parts/components.ts';
import type { FormGroup } from '../../../../views/parts/form.examples.ts';
import type { CallContext } from '../../../call/context.ts';
import { choiceField, type FormState, quantityField, selectField } from '../../../web/forms/fields.ts';

export const MARK_LABELS = {
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

/** At the bench fields are pressed with a thumb: they are large there. */
export const big = (context: CallContext) => (context.side === 'bench' ? { big: true } : {});

const gearOf = ({ build }: CallContext) => build.spec.engine?.valveGear;
const isFollower = (context: CallContext): boolean => gearOf(context) === 'finger-follower';

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

/** How wide the mark is, where it sits, and what it was made with. */
export function sizeFields(shown: FormState, context: CallContext): Component[] {
  return [
    quantityField(shown, 'width', MARK_LABELS.width, 'length', {
      hint: `Along the ${isFollower(context) ? 'follower' : 'rocker'}, caliper over the ink; width 1 on the drawing.`,
      ...(context.side === 'bench'
        ? { big: true }
        : (shown.typed.cylinder ?? '') === ''
          ? {}
          : { autofocus: true }),
    }),
    choiceField(shown, 'side', MARK_LABELS.side, markSidesOf(gearOf(context))),
    quantityField(shown, 'off', MARK_LABELS.off, 'length', {
      optional: true,
      hint: 'From the middle of the stem to the middle of the mark, 2 on the drawing. Centred, or not measured: leave it empty.',
      ...big(context),
    }),
    ...(isFollower(context) ? [] : [madeWith(shown, context)]),
  ];
}

/** Under a stop nothing is inked and turned over: a mark is one that was found. */
const FOUND_ALREADY = { 'after-running': MARK_FOUND['after-running'] };

/** Asked of each mark, since nothing can be taken for said. */
export const howMade = (shown: FormState, stopped: boolean): Component[] => [
  selectField(shown, 'found', MARK_LABELS.found, stopped ? FOUND_ALREADY : MARK_FOUND),
  selectField(shown, 'spring', MARK_LABELS.spring, SPRINGS),
];

const stemField = (shown: FormState): Component =>
  quantityField(shown, 'stem', MARK_LABELS.stem, 'length', {
    optional: true,
    hint: 'With it the marks are drawn to scale.',
  });

/** A follower has neither pushrod nor stand. */
const foldedOfFollower = (shown: FormState): FormGroup => ({
  legend: 'The stem',
  fold: shown.faults.some(({ field }) => field === 'stem') ? 'open' : 'shut',
  columns: true,
  slots: [stemField(shown)],
});

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
    stemField(shown),
  ],
});

/** What is seldom said of a mark, folded away, in the words of the valve gear. */
export const foldedOf = (shown: FormState, context: CallContext): FormGroup =>
  isFollower(context) ? foldedOfFollower(shown) : folded(shown, context);
