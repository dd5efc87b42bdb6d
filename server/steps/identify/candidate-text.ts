import type { CandidateData } from '../../../views/parts/candidates.examples.ts';
import { ratioText } from '../../call/family-words.ts';
import { shareSaid } from '../../mechanics/assessment/part/chance.ts';
import type { CandidateDetail, Chance, RankingDetail } from '../../mechanics/assessment/part/detail.ts';

/** `Likely.` where a chance is told, else nothing. */
const likelySaid = (chance: Chance | undefined): string => (chance === undefined ? '' : `${chance.likely}. `);

const shareOf = (chance: Chance | undefined) =>
  chance === undefined ? {} : { share: chance.share, percent: chance.probability * 100 };

function candidateOf({ family, chance, reasons }: CandidateDetail, link: boolean): CandidateData {
  const ratio = family.nominalRatio === undefined ? '' : `Nominal ratio ${ratioText(family.nominalRatio)}; `;
  return {
    name: family.name,
    ...shareOf(chance),
    words: `${likelySaid(chance)}${ratio}${family.fits || 'what it fits is not said'}. Code ${family.code}.`,
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

const NOTE = 'A ratio in the catalogue is nominal: the ratio is unknown until a valve moves.';
const HELD_BACK = 'While no family is named no chance stands beside one.';

const noneLine = (chance: Chance | undefined): CandidateData => ({
  name: 'None of these',
  ...shareOf(chance),
  words: `${likelySaid(chance)}A part that is in no line of the catalogue.`,
  reasons: [],
});

export function rankedLines(ranking: RankingDetail, link: boolean): Ranked {
  const { noneOfThese, families } = ranking;
  const shown = ranking.candidates
    .slice(0, SHOWN)
    .filter(({ chance }, index) => index < 2 || chance === undefined || chance.probability >= WORTH_A_LINE);
  const lines = [...shown.map((each) => candidateOf(each, link)), noneLine(noneOfThese)].sort(
    (a, b) => (b.percent ?? 0) - (a.percent ?? 0),
  );
  const left = families - shown.length;
  if (noneOfThese === undefined)
    return { lines, others: left === 0 ? '' : `${left} more families. `, note: `${HELD_BACK} ${NOTE}` };
  const rest = shown.reduce(
    (sum, { chance }) => sum - (chance?.probability ?? 0),
    1 - noneOfThese.probability,
  );
  return {
    lines,
    others: left === 0 ? '' : `${left} more families together ${shareSaid(Math.max(0, rest))}. `,
    note: NOTE,
  };
}

/** `From 4 readings against 69 part families of the catalogue. Marks play no part in it.` */
export const basisText = ({ counted, families }: RankingDetail): string =>
  `From ${counted} ${counted === 1 ? 'reading' : 'readings'} against ${families} part families of the catalogue. Marks play no part in it.`;
