import { strikeWorking as schema } from '../../../shared/schemas/commands.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell } from '../../../views/parts/table.examples.ts';
import { notFound } from '../../problems/failure.ts';
import { strikeWorking, type Working } from '../../records/workings/workings.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { textField } from '../../web/forms/fields.ts';
import type { CallContext } from '../context.ts';
import { formComponent, type PageForm } from '../forms.ts';
import { type EntryCorrection, entryCorrection } from '../step-correction.ts';
import { struckBy } from './report.ts';
import { type Computations, workingText } from './text.ts';
import { outdatedSaid } from './told.ts';

const addressOf = ({ base }: CallContext, step: string, { id }: Working): string =>
  `${base}/workings/${step}/${id}`;

const isStrikingOut = ({ struck }: Working): boolean => struck;

/** Computations that were kept, newest first, each with the way to strike it out; a struck one with its reason. */
export function workingsTable(
  context: CallContext,
  step: string,
  computations: Computations,
  of: (working: Working) => boolean = () => true,
): Component[] {
  const all = context.record.workings;
  const shown = all.filter((working) => !isStrikingOut(working) && of(working)).toReversed();
  if (shown.length === 0) return [];
  const cellOf = (working: Working): TableCell => {
    const text = workingText(computations, working, outdatedSaid(context, working));
    const struck = struckBy(all, working);
    return struck === undefined
      ? { text, href: addressOf(context, step, working), why: 'open it to strike it out' }
      : { text: `struck: ${text}`, why: struck };
  };
  return [
    tableComponent({
      caption: 'Computed and kept',
      columns: [{ label: 'Line' }, { label: 'Computed' }, { label: 'Who, when' }],
      rows: shown.map((working) => ({
        cells: [String(working.seq), cellOf(working), `${working.by}, ${momentText(working.at)}`],
      })),
    }),
  ];
}

function strikeForm(context: CallContext, step: string, working: Working): PageForm {
  const labels = { reason: 'Why' };
  return {
    name: 'strike-working',
    action: addressOf(context, step, working),
    labels,
    schema,
    groups: (shown) => [
      {
        slots: [
          textField(shown, 'reason', labels.reason, {
            hint: 'Such as “counted from the wrong mark”. What was right is computed and kept once more.',
          }),
        ],
      },
    ],
    buttons: [
      { label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' },
      { label: 'Leave it', href: `${context.base}/steps/${step}` },
    ],
  };
}

/** A kept computation struck out with its reason, from a page of this step; what it was stays on record. */
export const strikesWorkings = (step: string): EntryCorrection =>
  entryCorrection({
    path: `/workings/${step}/:workingId`,
    param: 'workingId',
    entries: ({ workings }) => workings,
    schema,
    fields: () => ({ value: 'reason', valueStands: true }),
    find: async () => undefined,
    page({ context, computations }, id, rejected) {
      const working = context.workings.find((each) => each.id === id);
      if (working === undefined) throw notFound('reading');
      const form = strikeForm(context, step, working);
      return {
        title: `Strike out: ${workingText(computations, working)}, line ${working.seq}`,
        body: { forms: [form], slots: [formComponent(form, rejected)] },
      };
    },
    replace: async (input, _, { tx, principal, call }, id) => {
      await strikeWorking(tx, principal, call.buildId, id, input);
      return { step };
    },
  });
