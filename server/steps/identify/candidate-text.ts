import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { FEATURE_WORDS, isPartFeature, isPartSize, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { CandidateData } from '../../../views/parts/candidates.examples.ts';
import { ratioText } from '../../call/family-words.ts';
import { shareSaid } from '../../mechanics/assessment/part/chance.ts';
import type { CandidateDetail, RankingDetail, ReasonDetail } from '../../mechanics/assessment/part/detail.ts';

function valueText(kind: string, value: number | string): string {
  if (typeof value === 'number')
    return formatQuantity({ value: Number(fromSi(value, 'in').value.toFixed(4)), unit: 'in' });
  return isPartFeature(kind) ? (FEATURE_WORDS[kind][value] ?? value).toLowerCase() : value;
}

/** No figure without how far off it may be; a guess is called one. */
function howFar({ within, guess }: ReasonDetail): string {
  if (within === undefined) return '';
  const figure = formatQuantity({ value: Number(fromSi(within, 'in').value.toFixed(4)), unit: 'in' });
  return ` ± ${figure.replace(' in', '')}${guess === true ? ', a guess,' : ''}`;
}

function reasonOf(reason: ReasonDetail): CandidateData['reasons'][number] {
  const { kind, reading, madeFor, word } = reason;
  const value = `${valueText(kind, reading)}${howFar(reason)}`;
  const read = isPartSize(kind) ? `${PART_SIZES[kind].toLowerCase()} ${value}` : value;
  if (word === 'not-known' || madeFor === undefined) return { text: `${read}; the catalogue does not say` };
  if (madeFor === reading) return { verdict: word, text: `${read}, as it is made` };
  return { verdict: word, text: `${read} against ${valueText(kind, madeFor)}` };
}

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
    reasons: reasons.map(reasonOf),
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
