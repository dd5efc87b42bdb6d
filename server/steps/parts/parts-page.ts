import type { Component } from '../../../views/parts/components.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { formComponent, type PageForm, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { oneAtATime, questionCards, questionsOf } from '../../call/question-form.ts';
import { againstNewest } from '../../call/spec/against-newest.ts';
import { ROCKER_GROUP } from '../../call/spec/spec-fields.ts';
import { specForm } from '../../call/spec/spec-form.ts';
import type { StepPageInput } from '../../call/step.ts';
import { valveWords } from '../../call/valve-words.ts';
import { SOLD_AS_KNOWN } from '../../mechanics/assessment/ratio/claims/sold-as.ts';
import { movesOf } from '../../records/arms/placements.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { numberField, selectField, textField } from '../../web/forms/fields.ts';

const ARM = {
  name: 'Name of this arm on the call',
  family: 'Family',
  ratioStamp: 'What looks like a ratio on it',
  otherNumber: 'Every other number or letter on it',
  boxLabel: 'What the box or invoice says',
};
const MARKS = {
  armId: 'Which arm',
  ratioStamp: ARM.ratioStamp,
  otherNumber: ARM.otherNumber,
  boxLabel: ARM.boxLabel,
  reason: 'Why it is another than before',
};
const PLACE = {
  armId: 'Which arm',
  cylinder: 'Cylinder',
  valve: 'Which valve',
  reason: 'Why it sits there now',
};

function armForm(context: CallContext): PageForm {
  const big = context.side === 'bench' ? { big: true } : {};
  return {
    name: 'arm',
    action: `${context.base}/arms`,
    ...(context.arms.length === 0 ? { title: 'Put an arm on record' } : {}),
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
    buttons: [{ label: 'Save this arm', kind: context.arms.length === 0 ? 'primary' : 'plain' }],
  };
}

/** Marks of an arm that is on record: read again, or those that nobody had read. */
function marksForm(context: CallContext): PageForm {
  const arms = Object.fromEntries(context.arms.map((arm) => [arm.id, arm.name]));
  const [only, ...others] = context.arms;
  const asked = context.assessment.next?.about;
  // What is next names the arm; with several, and none named, it is picked.
  const named = asked?.of === 'arm' ? asked.armId : others.length === 0 ? only?.id : undefined;
  return {
    name: 'marks',
    action: `${context.base}/arms/marks`,
    labels: MARKS,
    initial: { armId: named ?? '' },
    groups: (shown) => [
      {
        hint: 'Word for word. What is left empty stays on record.',
        slots: [
          selectField(shown, 'armId', MARKS.armId, arms, { first: 'Which one' }),
          textField(shown, 'ratioStamp', MARKS.ratioStamp, { optional: true }),
          textField(shown, 'otherNumber', MARKS.otherNumber, { optional: true }),
          textField(shown, 'boxLabel', MARKS.boxLabel, { optional: true }),
          textField(shown, 'reason', MARKS.reason, {
            hint: 'Such as “read with a glass”, “more of it after cleaning”.',
            optional: true,
          }),
        ],
      },
    ],
    buttons: [{ label: 'Save these marks', kind: 'plain' }],
  };
}

function placeForm(context: CallContext): PageForm {
  const arms = Object.fromEntries(context.arms.map((arm) => [arm.id, arm.name]));
  const seated = new Set(context.now.map(({ armId }) => armId));
  // The arm that was put on record last and sits nowhere yet; with none the arm is picked, never moved unseen.
  const next = context.arms.findLast(({ id }) => !seated.has(id));
  return {
    name: 'place',
    action: `${context.base}/placements`,
    title: 'Say where an arm sits now',
    labels: PLACE,
    initial: { armId: next?.id ?? '' },
    groups: (shown) => [
      {
        columns: true,
        slots: [
          selectField(shown, 'armId', PLACE.armId, arms, { first: 'Which one' }),
          numberField(shown, 'cylinder', PLACE.cylinder, {
            hint: 'In the engine’s own numbering.',
            ...(context.side === 'desk' ? { autofocus: true } : {}),
          }),
          selectField(shown, 'valve', PLACE.valve, valveWords(context)),
          textField(shown, 'reason', PLACE.reason, {
            hint: 'Such as “swapped for the swap test”.',
            optional: true,
          }),
        ],
      },
    ],
    buttons: [{ label: 'Save this place', kind: 'primary', key: 'k' }],
  };
}

const mark = (text: string) => (text === '' ? 'not said' : `“${text}”`);

export function armsTable(context: CallContext): TableData {
  const seats = new Map(context.now.map((placement) => [placement.armId, valveName(placement)]));
  return {
    caption: 'Arms on record, and the valve each sits on now',
    columns: [
      { label: 'Arm' },
      { label: 'Ratio stamp' },
      { label: 'Other number' },
      { label: 'Box label' },
      { label: 'Sits on now' },
    ],
    rows: context.arms.map((arm) => ({
      cells: [
        arm.name,
        mark(arm.ratioStamp),
        mark(arm.otherNumber),
        mark(arm.boxLabel),
        seats.get(arm.id) ?? 'no valve',
      ],
    })),
    empty: 'No arm on record yet. Put the first one on record below.',
  };
}

/** The arms that were moved, in order: the swaps of a call are what decides between part and position. */
export function swapsTable(context: CallContext): TableData {
  const names = new Map(context.arms.map((arm) => [arm.id, arm.name]));
  return {
    caption: 'Swaps, in order',
    columns: [
      { label: 'Line' },
      { label: 'Arm' },
      { label: 'From' },
      { label: 'Put on' },
      { label: 'In place of' },
      { label: 'Why' },
      { label: 'Who, when' },
    ],
    rows: movesOf(context.placements).map(({ placement, from, inPlaceOf }) => ({
      cells: [
        String(placement.seq),
        names.get(placement.armId) ?? 'an arm',
        from === undefined ? 'no valve' : valveName(from),
        valveName(placement),
        inPlaceOf === undefined ? 'none' : (names.get(inPlaceOf) ?? 'an arm'),
        placement.reason || 'not said',
        `${placement.by}, ${momentText(placement.at)}`,
      ],
    })),
  };
}

/** Said where it is asked, also before it is a question: nobody knows, and it is asked for no more. */
function unknownForm({ assessment, base }: CallContext): PageForm[] {
  const { needs, questions } = assessment;
  const isWanted = needs.some(({ id, have }) => id === 'need:parts:sold-as' && !have);
  if (!isWanted || questions.some(({ code }) => code === SOLD_AS_KNOWN)) return [];
  return [
    {
      name: 'sold-as-unknown',
      action: `${base}/answers`,
      labels: {},
      hidden: {
        step: 'parts',
        question: 'Which ratio are the rockers sold as?',
        code: SOLD_AS_KNOWN,
        answer: 'not-known',
      },
      groups: () => [],
      buttons: [{ label: 'Nobody knows what they are sold as', kind: 'plain' }],
    },
  ];
}

/** Arms with their three marks, where each sits now, and the swaps. */
export function partsPage({ context, rejected: posted }: StepPageInput): StepBody {
  const { rejected, other } = againstNewest(context, posted);
  const arm = armForm(context);
  const marks = marksForm(context);
  const place = placeForm(context);
  const sold = specForm({
    name: 'rockers',
    action: `${context.base}/spec/rockers`,
    groups: [ROCKER_GROUP],
    spec: context.build.spec,
    revision: context.build.revision,
    other,
    bench: context.side === 'bench',
    alone: false,
    part: '',
  });
  const swaps = movesOf(context.placements).length > 0 ? [tableComponent(swapsTable(context))] : [];
  const cards = questionCards(context, questionsOf(context, 'parts'), rejected);
  const unknown = unknownForm(context);
  const ofUnknown = unknown.map((form) => formComponent(form, rejected));
  const forms = [arm, ...(context.arms.length === 0 ? [] : [marks]), place, sold, ...unknown, ...cards.forms];
  if (context.arms.length === 0)
    return {
      forms,
      slots: [
        tableComponent(armsTable(context)),
        formComponent(arm, rejected),
        formComponent(sold, rejected),
        ...ofUnknown,
        ...oneAtATime(cards),
      ],
    };
  const others = [
    foldedComponent(marks, 'Put the marks of an arm right, or add to them', rejected, {
      open: context.assessment.next?.at?.form === marks.name,
    }),
    foldedComponent(arm, 'Put another arm on record', rejected),
    ...(context.build.spec.rockers?.nominalRatio === undefined
      ? [formComponent(sold, rejected), ...ofUnknown]
      : [foldedComponent(sold, 'What the rockers are sold as', rejected)]),
  ];
  return {
    forms,
    slots: [
      formComponent(place, rejected),
      ...oneAtATime(cards),
      tableComponent(armsTable(context)),
      ...others,
      ...swaps,
    ],
  };
}

/** A form that is seldom wanted is one tap away; it stands open when it has come back, and where it is what is next. */
function foldedComponent(
  form: PageForm,
  summary: string,
  rejected: RejectedForm | undefined,
  { open = false }: { readonly open?: boolean } = {},
): Component {
  return {
    template: '/pages/call/fold',
    data: {
      id: `fold-${form.name}`,
      summary,
      open: open || rejected?.typed.form === form.name,
      slots: [formComponent(form, rejected)],
    },
  };
}
