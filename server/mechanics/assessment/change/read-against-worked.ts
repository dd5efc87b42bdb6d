import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, inDoubt } from '../common/asked.ts';
import { gapSaid } from '../common/gap-said.ts';
import { keyOf, subjectSaid } from '../common/said.ts';
import type { Evidence, GapName } from '../evidence.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';
import { worstFirst } from './gaps.ts';

/** What each calculation is made of, to be gone over. */
const MADE_OF: Readonly<Partial<Record<GapName, string>>> = {
  'piston-to-valve': 'closed gap at TDC, stroke, rod length, valve angle and the cam’s centreline',
  'coil-bind': 'installed height and coil-bind height of the springs',
  'retainer-to-seal': 'retainer to seal with the valve shut',
  'pushrod-to-head': 'the same gap with the arms before, and pivot to tip',
};

/** Of the two exactly one is off, or both were looked at and are right. */
const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'The reading is off',
    changes:
      'It is entered again, or struck out with the reason; what is calculated from the same figures is in doubt no more.',
  },
  {
    code: 'not-found',
    label: 'The reading holds: the figures were gone over',
    changes: 'The reading counts; a figure that is off is put right where it was entered.',
  },
];

type Worked = Pick<ChangeDetail, 'about' | 'gaps' | 'plan'>;

/** Read less than it can come out at, or more: the two exclude each other. */
function apart({ after, worked }: ChangeGap): 'less' | 'more' | undefined {
  if (after?.basis !== 'measured' || worked === undefined) return undefined;
  const { low, high } = after;
  if (high !== undefined && worked.low !== undefined && high < worked.low) return 'less';
  return low !== undefined && worked.high !== undefined && low > worked.high ? 'more' : undefined;
}

/**
 * A gap that was read and comes out as another by calculation: one of the figures is off. Where less was read, the others
 * that are calculated from the same figures are in doubt as well.
 */
export function readAgainstWorked(evidence: Evidence, details: readonly Worked[]): AssessedQuestion[] {
  return details.flatMap(({ about, gaps }) =>
    gaps.flatMap((gap): AssessedQuestion[] => {
      const way = apart(gap);
      const madeOf = MADE_OF[gap.name];
      if (way === undefined || gap.after === undefined || madeOf === undefined) return [];
      return [
        asked(
          {
            code: 'gap-against-calculated',
            weight: way === 'less' ? 'strong' : 'weak',
            ask: `What is off with ${gap.title.toLowerCase()} on ${subjectSaid(about)}: the reading, or what it is calculated from?`,
            knownBy: `gap-against-calculated-${gap.name}`,
            size: `It was read ${gapSaid(gap.after)}, and comes out at ${gapSaid(gap.worked ?? {})}.`,
            test: `With nothing turned: go over ${madeOf}, as entered.`,
            byLooking: true,
            restsOn: [...gap.restsOn],
          },
          {
            about,
            step: 'consequences',
            among: `${keyOf(about)}-${gap.name}`,
            answers: evidence.answers,
            choices: CHOICES,
          },
        ),
      ];
    }),
  );
}

/** What is calculated from figures that a reading speaks against has no word, unless it is short all the same. */
export function untilWorkedIsSure<Detail extends Worked>(
  details: readonly Detail[],
  questions: readonly AssessedQuestion[],
): Detail[] {
  // Where the reading itself was found to be off it speaks against no figure.
  const doubted = questions.filter((question) => inDoubt(question) && question.answered?.found !== true);
  if (doubted.length === 0) return [...details];
  const isDoubted = (gap: ChangeGap): boolean =>
    gap.after?.basis === 'calculated' && doubted.some(({ id }) => id.includes(`-${gap.name}:`));
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
