import type { Assessment, Judgement } from '../../mechanics/assessment/assessment.ts';
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail, SheetRowDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';

/** How the cylinders stand below one another. */
export type Order = keyof SheetDetail['orders'];

/** The springs that something on the sheet was read on, each of them its own table. */
export const springsOf = ({ sides }: SheetDetail): Spring[] => [
  ...new Set(sides.map(({ spring }) => spring)),
];

export const rowsInOrder = ({ orders, rows }: SheetDetail, order: Order): SheetRowDetail[] =>
  orders[order].flatMap((cylinder) => rows.filter((row) => row.cylinder === cylinder));

/** What is told of the gaps that were read, valve by valve. */
export function gapJudgements({ details, judgements }: Assessment): Judgement[] {
  const told = details.sheet.rows.flatMap(({ cells }) =>
    cells.flatMap(({ judgementId }) => judgementId ?? []),
  );
  return told.flatMap((id) => judgements.find((each) => each.id === id) ?? []);
}

/** Everything the sheet says: which valves are odd or in doubt, what swaps decide, and the gaps. */
export function sheetJudgements(assessment: Assessment): Judgement[] {
  const headed = assessment.headlines.filter(({ step }) => step === 'sheet');
  return [
    ...headed.flatMap(({ judgementId }) => assessment.judgements.find(({ id }) => id === judgementId) ?? []),
    ...gapJudgements(assessment),
  ];
}
