import { asEntered } from '../../../shared/quantities/as-entered.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { CallContext } from '../../call/context.ts';
import { valveName } from '../../call/context.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { stepHeadlines } from '../../call/headline.ts';
import { questionCards, questionsNamed } from '../../call/question-form.ts';
import { listComponents } from '../../call/report-parts.ts';
import { isStopped } from '../../call/under-stop.ts';
import { arrangedComponents } from '../../call/worked/arranged.ts';
import { lacksSaid } from '../../mechanics/assessment/common/lack.ts';
import type { ShimRow } from '../../mechanics/assessment/lash/detail.ts';
import { gapInMm, leavesSaid, millimetres } from '../../mechanics/assessment/lash/shim-said.ts';
import { noticeComponent, tableComponent } from '../../web/components.ts';
import { lashForm } from './forms/lash.ts';
import { standingLines } from './lash-text.ts';

const orNothing = (si: number | undefined): string => (si === undefined ? '' : millimetres(si));

const isSaid = ({ value, low, high }: ShimRow['found']): boolean =>
  value !== undefined || (low !== undefined && high !== undefined);

const FROM = { own: 'stays', stock: 'from stock' } as const;

function fromSaid({ choice }: ShimRow): string {
  if (choice === undefined) return '';
  if (choice.from !== 'valve') return FROM[choice.from];
  return choice.fromValve === undefined ? '' : `from ${valveName(choice.fromValve)}`;
}

/** One that brings the lash near enough; else the one that is to be ordered, with the nearest that is there. */
function goesIn(row: ShimRow): string | TableCell {
  const { choice, toHave } = row;
  if (toHave !== undefined) {
    const nearest =
      choice === undefined || choice.from === 'own'
        ? ''
        : `nearest there: ${millimetres(choice.shim)}, ${fromSaid(row)}`;
    return { text: `order ${millimetres(toHave)}`, why: nearest };
  }
  return choice === undefined ? '' : { text: millimetres(choice.shim), why: fromSaid(row) };
}

/** The shim of every valve that has a lash: what is in, what is wanted, and which one goes in. */
export function shimsTable({ assessment }: CallContext): TableData | undefined {
  const { rows, within } = assessment.details.lash.shims;
  if (rows.length === 0) return undefined;
  return {
    caption: 'Shims, valve by valve',
    columns: [
      { label: 'Valve' },
      { label: 'Shim in it', number: true },
      { label: 'Lash found', number: true },
      { label: 'Lash wanted', number: true },
      { label: 'Shim wanted', number: true },
      { label: 'Goes in' },
      { label: 'Lash then', number: true },
    ],
    rows: rows.map((row) => ({
      cells: [
        valveName(row),
        orNothing(row.fitted),
        isSaid(row.found) ? gapInMm(row.found) : '',
        orNothing(row.wanted),
        row.lacks.length > 0
          ? { text: '', why: `lacks ${lacksSaid(row.lacks).join('; ')}` }
          : orNothing(row.shim),
        goesIn(row),
        row.toHave === undefined && row.choice !== undefined ? leavesSaid(row.choice) : '',
      ],
    })),
    note: `A lash within ${millimetres(within)} of what is wanted is left. Shims that are in the engine may change places; each is used once, and one in stock is taken as one piece. The feeler itself is good to 0.05 mm (common practice, no published source).`,
  };
}

export const shimSentences = ({ assessment }: CallContext): string[] =>
  assessment.details.lash.shims.rows.map(({ sentence }) => sentence);

/** What goes in, but for what is already told as the answer of the step. */
const sentencesBelow = (context: CallContext): string[] =>
  shimSentences(context).filter((each) =>
    context.assessment.headlines.every(({ step, sentence }) => step !== 'adjuster' || sentence !== each),
  );

/** Every valve of a bucket engine in one table; a new line of the lash log, with its shim, is a row of it. */
export function shimsPart(context: CallContext, rejected: RejectedForm | undefined): StepBody {
  const lines = standingLines(context);
  const form = lashForm(context, lines.toSorted((a, b) => a.reading.seq - b.reading.seq).at(-1), 'shims');
  const { questionIds } = context.assessment.details.lash;
  const cards = questionCards(context, questionsNamed(context, questionIds), rejected);
  const table = shimsTable(context);
  const open = !isStopped(context);
  const stock = context.build.spec.engine?.shimStock ?? [];
  return {
    forms: [form, ...cards.forms],
    slots: arrangedComponents({
      side: context.side,
      begun: table !== undefined,
      entry: [formComponent(form, rejected)],
      drawings: [],
      top: [
        ...stepHeadlines(context, 'adjuster'),
        ...cards.slots,
        ...(open ? listComponents('What goes in', sentencesBelow(context)) : []),
      ],
      rest: [
        ...(table === undefined ? [] : [tableComponent(table)]),
        noticeComponent(
          stock.length === 0
            ? 'No shims in stock are on record: only those in the engine are moved about.'
            : `In stock: ${stock.map(({ readAs }) => asEntered(readAs)).join(', ')}. Each counts as one piece: of two alike, list both. One that went into a valve is counted off.`,
          { link: { href: `${context.base}/steps/build`, label: 'Shims that can be had' } },
        ),
      ],
    }),
  };
}
