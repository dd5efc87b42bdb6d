import type { CandidateData } from '../../../views/parts/candidates.examples.ts';
import { ratioText } from '../../call/family-words.ts';
import { shareSaid } from '../../mechanics/assessment/part/chance.ts';
import type { CandidateDetail, RankingDetail } from '../../mechanics/assessment/part/detail.ts';

function candidateOf(
  { family, probability, share, likely, reasons }: CandidateDetail,
  link: boolean,
): CandidateData {
  const ratio = family.nominalRatio === undefined ? '' : ` Nominal ratio ${ratioText(family.nominalRatio)};`;
  return {
    name: family.name,
    share,
    percent: probability * 100,
    words: `${likely}.${ratio} ${family.fits || 'what it fits is not said'}. Code ${family.code}.`,
    ...(link ? { href: `/catalogue/${family.id}` } : {}),
    reasons: reasons.map(({ word, said }) =>
      word === 'not-known' ? { text: said } : { verdict: word, text: said },
    ),
  };
}

const SHOWN = 5;
/** Below this a family is only counted with the others. */
const WORTH_A_LINE = 0.02;

/** The families worth a line, by their share. */
interface Ranked {
  /** With none of these in its place among them. */
  readonly lines: readonly CandidateData[];
  /** What is left for the families without a line; empty where each has one. */
  readonly others: string;
  readonly note: string;
}

export function rankedLines(ranking: RankingDetail, link: boolean): Ranked {
  const { noneOfThese, families } = ranking;
  const shown = ranking.candidates
    .slice(0, SHOWN)
    .filter(({ probability }, index) => index < 2 || probability >= WORTH_A_LINE);
  const none: CandidateData = {
    name: 'None of these',
    share: noneOfThese.share,
    percent: noneOfThese.probability * 100,
    words: `${noneOfThese.likely}. A part that is in no line of the catalogue.`,
    reasons: [],
  };
  const lines = [...shown.map((each) => candidateOf(each, link)), none].sort((a, b) => b.percent - a.percent);
  const rest = 1 - noneOfThese.probability - shown.reduce((sum, { probability }) => sum + probability, 0);
  const left = families - shown.length;
  return {
    lines,
    others: left === 0 ? '' : `${left} more families together ${shareSaid(Math.max(0, rest))}. `,
    note: 'A ratio in the catalogue is nominal: the ratio is unknown until a valve moves.',
  };
}

/** `From 4 readings against 69 part families of the catalogue. Marks play no part in it.` */
export const basisText = ({ counted, families }: RankingDetail): string =>
  `From ${counted} ${counted === 1 ? 'reading' : 'readings'} against ${families} part families of the catalogue. Marks play no part in it.`;
