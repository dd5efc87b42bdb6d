import { lengthsIn } from '../../../shared/quantities/spoken-units.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { ChangeDetail, ChangeFigure, ChangeGap } from '../../mechanics/assessment/change/detail.ts';
import { keyOf, nominalSaid, subjectSaid, upperFirst } from '../../mechanics/assessment/common/said.ts';
import { figureText, gapText } from './figure-text.ts';

/** Figures that a choice between ratios turns on. */
const FIGURES: readonly ChangeFigure['name'][] = [
  'net-lift',
  'open-load',
  'pushrod-load',
  'pivot-load',
  'cup-move',
];

const gapCell = (gap: ChangeGap | undefined): TableCell => {
  if (gap?.after === undefined) return { text: 'not known' };
  const text = gapText(gap.after);
  return gap.word === undefined ? { text, why: 'no word yet' } : { text, verdict: gap.word };
};

function rowsOf(title: string, same: readonly ChangeDetail[]): TableData['rows'] {
  const [first] = same;
  const gaps = (first?.gaps ?? []).filter(({ name }) =>
    same.some(({ gaps: own }) => own.some((gap) => gap.name === name && gap.after !== undefined)),
  );
  return [
    ...FIGURES.flatMap((name) => {
      const figures = same.map((detail) => detail.figures.find((each) => each.name === name));
      const known = figures.find((each) => each?.after !== undefined);
      if (known === undefined) return [];
      return [
        {
          cells: [
            `${title}: ${known.title.toLowerCase()}`,
            ...figures.map((each) => (each === undefined ? '' : figureText(each, each.after?.value))),
          ],
        },
      ];
    }),
    ...gaps.map(({ name, title: gap }) => ({
      cells: [
        `${title}: ${gap.toLowerCase()}`,
        ...same.map(({ gaps: own }) => gapCell(own.find((each) => each.name === name))),
      ],
    })),
  ];
}

/** Several ratios that are thought of, side by side; nothing where there are not two. */
export function plansTables(details: readonly ChangeDetail[]): TableData[] {
  // Side by side from the least to the most, whichever was planned first or is worst.
  const plans = [...new Set(details.flatMap(({ plan }) => plan ?? []))].sort((a, b) => a - b);
  if (plans.length < 2) return [];
  const keys = [...new Set(details.map(({ about }) => keyOf(about)))];
  return [
    {
      caption: `The ratios side by side: lift, loads and gaps after the change, gaps in ${lengthsIn()}`,
      columns: [
        { label: 'What' },
        ...plans.map((plan) => ({ label: `Planned ${nominalSaid(plan)}`, number: true })),
      ],
      rows: keys.flatMap((key) => {
        const same = plans.flatMap((plan) =>
          details.filter((detail) => detail.plan === plan && keyOf(detail.about) === key),
        );
        const [first] = same;
        return first === undefined ? [] : rowsOf(upperFirst(subjectSaid(first.about)), same);
      }),
    },
  ];
}
