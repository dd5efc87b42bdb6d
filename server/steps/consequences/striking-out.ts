import { strikeWorking as schema } from '../../../shared/schemas/commands.ts';
import type { Component } from '../../../views/parts/components.ts';
import { strikeConsequences } from '../../assessment/consequences/strike.ts';
import type { CallContext } from '../../call/context.ts';
import { formComponent, type PageForm } from '../../call/forms.ts';
import { type EntryCorrection, entryCorrection } from '../../call/step-correction.ts';
import { notFound } from '../../problems/failure.ts';
import { keptConsequences } from '../../records/consequences/kept.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { textField } from '../../web/forms/fields.ts';
import { keptText } from './tape-text.ts';

type Kept = ReturnType<typeof keptConsequences>[number];

const keptIn = ({ record }: CallContext): Kept[] => keptConsequences(record.events);

const addressOf = ({ base }: CallContext, { seq }: Kept): string => `${base}/consequences/${seq}`;

/** Figures that were kept, newest first, each with the way to strike it out; a struck one with its reason. */
export function keptTable(context: CallContext): Component[] {
  const kept = keptIn(context).toReversed();
  if (kept.length === 0) return [];
  return [
    tableComponent({
      caption: 'Figures on the tape',
      columns: [{ label: 'Line' }, { label: 'What the ratio does' }, { label: 'Who, when' }],
      rows: kept.map((each) => ({
        cells: [
          String(each.seq),
          each.struck === undefined
            ? { text: keptText(each.data), href: addressOf(context, each), why: 'open it to strike it out' }
            : { text: `struck: ${keptText(each.data)}`, why: each.struck },
          `${each.by}, ${momentText(each.at)}`,
        ],
      })),
    }),
  ];
}

function strikeForm(context: CallContext, kept: Kept): PageForm {
  const labels = { reason: 'Why' };
  return {
    name: 'strike-consequences',
    action: addressOf(context, kept),
    labels,
    schema,
    groups: (shown) => [
      {
        slots: [
          textField(shown, 'reason', labels.reason, {
            hint: 'Such as “the other arms were on”. The line stays on the tape, struck out.',
          }),
        ],
      },
    ],
    buttons: [
      { label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' },
      { label: 'Leave it', href: `${context.base}/steps/consequences` },
    ],
  };
}

/** Kept figures struck out by their line, with the reason. */
export const strikesConsequences: EntryCorrection = entryCorrection({
  path: '/consequences/:line',
  param: 'line',
  entries: (context) =>
    keptIn(context)
      .filter(({ struck }) => struck === undefined)
      .map(({ seq }) => ({ id: String(seq), seq })),
  schema,
  fields: () => ({ value: 'reason', valueStands: true }),
  find: async () => undefined,
  page({ context }, id, rejected) {
    const kept = keptIn(context).find(({ seq, struck }) => String(seq) === id && struck === undefined);
    if (kept === undefined) throw notFound('line with what a ratio does');
    const form = strikeForm(context, kept);
    return {
      title: `Strike out: ${keptText(kept.data)}, line ${kept.seq}`,
      body: { forms: [form], slots: [formComponent(form, rejected)] },
    };
  },
  replace: async (input, _, { tx, principal, call }, id) => {
    await strikeConsequences(tx, principal, call.buildId, Number(id), input);
    return { step: 'consequences' };
  },
});
