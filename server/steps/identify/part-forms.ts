import { defined } from '../../../shared/defined.ts';
import { inSpoken } from '../../../shared/quantities/authored.ts';
import type { FieldRange } from '../../../shared/quantities/field-range.ts';
import { correctPartReading, newPartReading, PART_CAN_BE } from '../../../shared/schemas/part-reading.ts';
import {
  FEATURE_WORDS,
  isMeasured,
  isPartFeature,
  PART_FEATURES,
  PART_FITTINGS,
  PART_MARKS,
  PART_SIZES,
  PART_TOOLS,
} from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import type { PageForm } from '../../call/forms.ts';
import { inField } from '../../call/worked/in-field.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
  textField,
} from '../../web/forms/fields.ts';
import type { AskedKind } from './asked-now.ts';
import type { PartSeen } from './of-part.ts';

const PLACE = 'Where on the part, or how it was done';
export const partTitle = (kind: AskedKind): string =>
  ({ ...PART_SIZES, ...PART_FEATURES, ...PART_FITTINGS })[kind];

const HOW = {
  count: 'Threads counted over that length',
  tool: 'Read with',
  within: 'How far off it may be, ±',
} as const;

/** With what a size was read and how far off it may be; of a pitch also over how many threads. */
const howFields = (shown: FormState, kind: string): Component[] => [
  ...(kind === 'stud-pitch'
    ? [
        numberField(shown, 'count', HOW.count, {
          optional: true,
          hint: inSpoken('Such as 10 over .500 in. Left empty where the pitch itself is entered.'),
        }),
      ]
    : []),
  selectField(shown, 'tool', HOW.tool, PART_TOOLS),
  quantityField(shown, 'within', HOW.within, 'length', {
    optional: true,
    hint: 'Left empty: as that tool usually is.',
  }),
];

const bigAt = (context: CallContext) => (context.side === 'bench' ? { big: true } : { autofocus: true });

/** The tool of the reading before: the next one is mostly read with it too. A guess is not carried on. */
function lastTool({ standing }: PartSeen): string {
  const { tool = 'not-said' } = standing.filter(({ kind }) => isMeasured(kind)).at(-1) ?? {};
  return tool === 'guess' || tool === 'thread-gauge' ? 'not-said' : tool;
}

const ofPart = ({ detail }: PartSeen): Record<string, string> =>
  detail.about.partId === undefined ? {} : { partId: detail.about.partId };

/** What the size of that kind can be, for the line that says how it is read. */
function rangeFor(kind: string) {
  const found = new Map<string, FieldRange>(Object.entries(PART_CAN_BE)).get(kind);
  return defined({ range: found });
}

/** The one thing asked for now: a size with its unit, or one of a few words. */
export function partForm(context: CallContext, seen: PartSeen, kind: AskedKind): PageForm {
  const title = partTitle(kind);
  const place = (shown: FormState) =>
    textField(shown, 'place', PLACE, { optional: true, hint: 'Such as “turned a quarter turn”.' });
  return {
    name: 'part',
    action: `${context.base}/part-readings`,
    schema: newPartReading,
    // The other side may have read it meanwhile: who has not begun goes on to what is asked then.
    givesWay: true,
    hidden: { kind, ...ofPart(seen) },
    labels: { size: title, word: title, place: PLACE, ...HOW },
    initial: { tool: lastTool(seen) },
    groups: (shown) => [
      {
        slots: isPartFeature(kind)
          ? [choiceField(shown, 'word', title, FEATURE_WORDS[kind], { inline: true }), place(shown)]
          : [
              quantityField(shown, 'size', title, 'length', { ...rangeFor(kind), ...bigAt(context) }),
              ...howFields(shown, kind),
              place(shown),
            ],
      },
    ],
    buttons: [{ label: 'Save reading', kind: 'primary', key: 'k' }],
  };
}

const HINTS: Readonly<Record<keyof typeof PART_MARKS, string>> = {
  'ratio-stamp': 'Exactly as it stands there, dot and all. Nothing there: leave it empty.',
  'other-number': 'Letters too. It may be a lot number; it is not a part number.',
  'box-label': 'Not from the part: from the box or the invoice alone.',
};

function markGroup(shown: FormState, kind: keyof typeof PART_MARKS): FormGroup {
  return {
    legend: PART_MARKS[kind],
    hint: HINTS[kind],
    slots: [
      textField(shown, `${kind}.mark`, 'Word for word'),
      textField(shown, `${kind}.place`, 'Where, how high, stamped, engraved or cast', { optional: true }),
    ],
  };
}

/** The three marks: each has its own field, and nothing is copied from one to another. */
export function marksForm(context: CallContext, seen: PartSeen): PageForm {
  const kinds = keysOf(PART_MARKS);
  return {
    name: 'marks',
    action: `${context.base}/part-marks`,
    title: 'Marks, word for word',
    hidden: ofPart(seen),
    labels: Object.fromEntries(kinds.map((kind) => [`${kind}.mark`, PART_MARKS[kind]])),
    groups: (shown) => kinds.map((kind) => markGroup(shown, kind)),
    buttons: [{ label: 'Save these marks', kind: 'plain' }],
  };
}

/** A reading of the part put right or struck out. */
export function partCorrectionForm(context: CallContext, reading: PartReading): PageForm {
  const { kind, id } = reading;
  const labels = {
    size: 'Size as it should be',
    word: 'What it should be',
    mark: 'The mark as it should be',
    place: PLACE,
    ...HOW,
  };
  const hint = standsAs(reading);
  return correctionForm({
    name: 'correct-part',
    action: `${context.base}/part-readings/${id}/correct`,
    schema: correctPartReading,
    back: `${context.base}/steps/identify`,
    labels,
    initial: {
      place: reading.place,
      tool: reading.tool,
      within: inField(reading.within),
      count: reading.count === undefined ? '' : String(reading.count),
    },
    slots: (shown) => [
      isMeasured(kind)
        ? quantityField(shown, 'size', labels.size, 'length', { hint, ...bigAt(context) })
        : isPartFeature(kind)
          ? choiceField(shown, 'word', labels.word, FEATURE_WORDS[kind], { inline: true, hint })
          : textField(shown, 'mark', labels.mark, { hint, ...bigAt(context) }),
      ...(isMeasured(kind) ? howFields(shown, kind) : []),
      textField(shown, 'place', PLACE, { optional: true }),
    ],
    reasonHint: 'Such as “jaws were cocked, read again”.',
  });
}
