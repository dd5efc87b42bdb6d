import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { allKept, BUILD, type KeptSet } from '../common/kept.ts';
import { inches } from '../common/said.ts';
import { isNearLash } from '../common/wanted-heat.ts';
import type { HeatEvidence } from '../evidence/kept-sums.ts';
import type { Evidence } from '../evidence.ts';
import { SUM_AGAIN } from './sum-again.ts';

type Heated = KeptSet<HeatEvidence>;

const CHOICES: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'The one kept last', changes: 'It counts; the others are put aside.' },
  {
    code: 'found',
    label: 'Not the one kept last',
    changes: 'It is worked out again with the metals and the heat of this engine.',
    leadsTo: SUM_AGAIN,
  },
];

const growth = ({ set }: Heated): number => set.hot - set.cold;

const growthSaid = (grows: number): string =>
  `the gap ${grows < 0 ? 'closes' : 'grows'} ${inches(Math.abs(grows))}`;

function askedOf(
  newest: Heated,
  others: readonly Heated[],
  { answers }: Evidence,
): AssessedQuestion | undefined {
  const other = others.findLast((each) => !isNearLash(growth(each), growth(newest)));
  if (other === undefined) return undefined;
  return asked(
    {
      code: 'heat-sums-differ',
      weight: 'strong',
      ask: 'Which of the sums hot and cold has the metals and the heat of this engine?',
      size: `By the one kept last ${growthSaid(growth(newest))} with heat, by one before it ${growthSaid(growth(other))}.`,
      test: 'look what block, head and pushrods are of; a magnet tells iron from aluminium.',
      byLooking: true,
      restsOn: [],
    },
    { about: BUILD, step: 'adjuster', ...defined({ among: newest.id }), answers, choices: CHOICES },
  );
}

/** What the sum kept last is asked, beside those that nobody has put aside. */
export function heatSumsQuestion(evidence: Evidence): AssessedQuestion[] {
  let counting: readonly Heated[] = [];
  let last: AssessedQuestion | undefined;
  for (const sum of allKept(evidence, 'heat')) {
    last = askedOf(sum, counting, evidence);
    const found = last?.answered?.found;
    // Said to be wrong it is not held against a later one; said to be right none before it is.
    if (found === false) counting = [sum];
    else if (found === undefined) counting = [...counting, sum];
  }
  return last === undefined ? [] : [last];
}
