import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import type { Evidence, GapName, SheetEvidence } from '../evidence.ts';
import { againstCalculated, type GapReading } from '../sheet/gap-found-off.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { worstFirst } from './gaps.ts';

/** What each calculation is made of, to be gone over. */
const MADE_OF: Readonly<Partial<Record<GapName, string>>> = {
  'piston-to-valve': 'closed gap at TDC, stroke, rod length, valve angle and the cam’s centreline',
  'coil-bind': 'installed height and coil-bind height of the springs',
  'retainer-to-seal': 'retainer to seal with the valve shut',
  'pushrod-to-head': 'the same gap with the arms before, and pivot to tip',
};

type Worked = Pick<ChangeDetail, 'about' | 'gaps' | 'plan'>;

const isOfGap = (entry: SheetEvidence): entry is GapReading => GAP_KINDS.some((kind) => kind === entry.kind);

/** Read less than it can come out at, or more: the two exclude each other. */
function apart({ after, worked }: ChangeGap): 'less' | 'more' | undefined {
  if (after?.basis !== 'measured' || worked === undefined) return undefined;
  const { low, high } = after;
  if (high !== undefined && worked.low !== undefined && high < worked.low) return 'less';
  return low !== undefined && worked.high !== undefined && low > worked.high ? 'more' : undefined;
}

interface ReadOrWorked {
  readonly name: GapName;
  readonly question: AssessedQuestion;
}

/**
 * A gap that was read and comes out as another by calculation: one of the figures is off. Where less was read, the others
 * that are calculated from the same figures are in doubt as well. What was answered stays in sight while its reading stands.
 */
export function readAgainstWorked({ answers, sheet }: Evidence, details: readonly Worked[]): ReadOrWorked[] {
  return details.flatMap(({ gaps }) =>
    gaps.flatMap((gap): ReadOrWorked[] => {
      const madeOf = MADE_OF[gap.name];
      const entry = sheet.filter(isOfGap).find(({ id }) => gap.ofSheet === true && gap.restsOn.includes(id));
      if (gap.after === undefined || madeOf === undefined || entry === undefined) return [];
      const way = apart(gap);
      const out = gap.worked === undefined ? '' : `, and comes out at ${gapSaid(gap.worked)}`;
      const question = againstCalculated(
        entry,
        {
          weight: way === 'less' ? 'strong' : 'weak',
          size: `It was read ${gapSaid(gap.after)}${out}.`,
          test: `With nothing turned: go over ${madeOf}, as entered.`,
        },
        answers,
      );
      return way === undefined && question.answered === undefined ? [] : [{ name: gap.name, question }];
    }),
  );
}

/** What is calculated from figures that a reading speaks against has no word, unless it is short all the same. */
export function untilWorkedIsSure<Detail extends Worked>(
  details: readonly Detail[],
  asked: readonly ReadOrWorked[],
): Detail[] {
  // Where the reading itself was found to be off it speaks against no figure.
  const doubted = asked.filter(({ question }) => inDoubt(question) && question.answered?.found !== true);
  if (doubted.length === 0) return [...details];
  const isDoubted = (gap: ChangeGap): boolean =>
    gap.after?.basis === 'calculated' && doubted.some(({ name }) => name === gap.name);
  const held = (gap: ChangeGap): ChangeGap => {
    if (!isDoubted(gap) || gap.word === 'short') return gap;
    const { word: _, ...open } = gap;
    return {
      ...open,
      lacks: [
        `an answer first: a reading of ${gap.title.toLowerCase()} is less than what comes out of the same figures`,
      ],
    };
  };
  return details.map((detail) => ({ ...detail, gaps: worstFirst(detail.gaps.map(held)) }));
}
