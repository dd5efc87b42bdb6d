import { type StrikeWorking, strikeWorking as schema } from '../../shared/schemas/commands.ts';
import type { Component } from '../../views/parts/components.ts';
import { notFound } from '../problems/failure.ts';
import { tableComponent } from '../web/components.ts';
import { momentText } from '../web/dates.ts';
import { textField } from '../web/forms/fields.ts';
import type { CallContext } from './context.ts';
import { formComponent, type PageForm } from './forms.ts';
import type { StepSource } from './step.ts';
import { type EntryCorrection, entryCorrection } from './step-correction.ts';
import type { FormSource } from './step-form.ts';

/** Something that was worked out and kept. Nothing in it is put right: it is struck out and kept once more. */
export interface KeptLine {
  readonly id: string;
  readonly seq: number;
  readonly text: string;
  readonly by: string;
  readonly at: Date;
  /** Why it no longer counts. */
  readonly struck?: string | undefined;
}

/** Lines of one kind: where below the call each has its page, and the step that its table is on. */
interface LinesOf {
  readonly path: string;
  readonly step: string;
}

interface Words {
  readonly caption: string;
  /** What the column of their texts is called. */
  readonly text: string;
}

const pageOf = ({ base }: CallContext, { path }: LinesOf, id: string): string => `${base}${path}/${id}`;

/** What was kept, in the order given, each with the way to strike it out; a struck one with its reason. */
export function keptLinesTable(
  context: CallContext,
  of: LinesOf,
  words: Words,
  lines: readonly KeptLine[],
): Component[] {
  if (lines.length === 0) return [];
  return [
    tableComponent({
      caption: words.caption,
      columns: [{ label: 'Line' }, { label: words.text }, { label: 'Who, when' }],
      rows: lines.map(({ id, seq, text, struck, by, at }) => ({
        cells: [
          String(seq),
          struck === undefined
            ? { text, href: pageOf(context, of, id), why: 'open it to strike it out' }
            : { text: `struck: ${text}`, why: struck },
          `${by}, ${momentText(at)}`,
        ],
      })),
    }),
  ];
}

interface StrikeOut extends LinesOf {
  /** The name of its form. */
  readonly form: string;
  /** What the id is called in the address. */
  readonly param: string;
  /** What a line is called where there is none of that id. */
  readonly missing: string;
  /** How a reason is put, and what becomes of the line. */
  readonly hint: string;
  entries(context: CallContext): readonly Pick<KeptLine, 'id' | 'seq'>[];
  /** The line, where it is there and not struck out. */
  find(source: StepSource, id: string): KeptLine | undefined;
  strike(
    source: Pick<FormSource, 'tx' | 'principal' | 'call'>,
    id: string,
    input: StrikeWorking,
  ): Promise<unknown>;
}

function strikeForm(context: CallContext, of: StrikeOut, id: string): PageForm {
  const labels = { reason: 'Why' };
  return {
    name: of.form,
    action: pageOf(context, of, id),
    labels,
    schema,
    groups: (shown) => [{ slots: [textField(shown, 'reason', labels.reason, { hint: of.hint })] }],
    buttons: [
      { label: 'Strike it out', kind: 'danger', name: 'act', value: 'strike' },
      { label: 'Leave it', href: `${context.base}/steps/${of.step}` },
    ],
  };
}

/** Such a line struck out with its reason; what it was stays on record. */
export const strikesOut = (of: StrikeOut): EntryCorrection =>
  entryCorrection({
    path: `${of.path}/:${of.param}`,
    param: of.param,
    entries: (context) => of.entries(context),
    schema,
    fields: () => ({ value: 'reason', valueStands: true }),
    find: async () => undefined,
    page(source, id, rejected) {
      const line = of.find(source, id);
      if (line === undefined) throw notFound(of.missing);
      const form = strikeForm(source.context, of, id);
      return {
        title: `Strike out: ${line.text}, line ${line.seq}`,
        body: { forms: [form], slots: [formComponent(form, rejected)] },
      };
    },
    replace: async (input, _, { tx, principal, call }, id) => {
      await of.strike({ tx, principal, call }, id, input);
      return { step: of.step };
    },
  });
