import { formatQuantity } from '../../../shared/quantities/format.ts';
import { FEATURE_WORDS, isPartFeature, isPartSize, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { CandidateData } from '../../../views/parts/candidates.examples.ts';
import type { PartIdentification, RankedFamily } from '../../assessment/identification/identification.ts';
import type { Reason } from '../../mechanics/identify/types.ts';
import { ratioText, sizeText } from '../../records/catalogue/family-words.ts';

/** `46 %`, with the ends left open: nothing is ever certain here. */
export function shareText(probability: number): string {
  const percent = Math.round(probability * 100);
  if (percent < 1) return 'under 1 %';
  return percent > 99 ? 'over 99 %' : `${percent} %`;
}

export function shareWord(probability: number): string {
  if (probability >= 0.9) return 'Nearly settled';
  if (probability >= 0.5) return 'Likely';
  return probability >= 0.1 ? 'Possible' : 'Unlikely';
}

function valueText(kind: string, value: number | string): string {
  if (typeof value === 'number') return formatQuantity({ value: Number(value.toFixed(4)), unit: 'in' });
  return isPartFeature(kind) ? (FEATURE_WORDS[kind][value] ?? value).toLowerCase() : value;
}

function reasonOf(reason: Reason): CandidateData['reasons'][number] {
  const { kind, reading, madeFor, word } = reason;
  const value = valueText(kind, reading);
  const read = isPartSize(kind) ? `${PART_SIZES[kind].toLowerCase()} ${value}` : value;
  if (word === 'not-known' || madeFor === undefined) return { text: `${read}; the catalogue does not say` };
  if (madeFor === reading) return { verdict: word, text: `${read}, as it is made` };
  return { verdict: word, text: `${read} against ${valueText(kind, madeFor)}` };
}

function candidateOf({ family, probability, reasons }: RankedFamily, link: boolean): CandidateData {
  const ratio = family.nominalRatio === undefined ? '' : ` Nominal ratio ${ratioText(family.nominalRatio)};`;
  return {
    name: family.name,
    share: shareText(probability),
    percent: probability * 100,
    words: `${shareWord(probability)}.${ratio} ${family.fits || 'what it fits is not said'}. Code ${family.code}.`,
    ...(link ? { href: `/catalogue/${family.id}` } : {}),
    reasons: reasons.map(reasonOf),
  };
}

const SHOWN = 5;
/** Below this a family is only counted with the others. */
const WORTH_A_LINE = 0.02;

/** The families worth a line, none of these in its place among them, and what is left for the others. */
export function rankedLines(
  found: PartIdentification,
  link: boolean,
): { lines: CandidateData[]; others: string } {
  const shown = found.candidates
    .slice(0, SHOWN)
    .filter(({ probability }, index) => index < 2 || probability >= WORTH_A_LINE);
  const none: CandidateData = {
    name: 'None of these',
    share: shareText(found.noneOfThese),
    percent: found.noneOfThese * 100,
    words: `${shareWord(found.noneOfThese)}. A part that is in no line of the catalogue.`,
    reasons: [],
  };
  const lines = [...shown.map((each) => candidateOf(each, link)), none].sort((a, b) => b.percent - a.percent);
  const left = found.candidates.slice(shown.length);
  const rest = left.reduce((sum, each) => sum + each.probability, 0);
  const others = left.length === 0 ? '' : `${left.length} more families together ${shareText(rest)}. `;
  return { lines, others };
}

/** What parts the two families that stand first, by the catalogue: `.939 in and .970 in`. */
export function partedBy(found: PartIdentification, kind: string): string {
  const [first, second] = found.candidates;
  if (first === undefined || second === undefined || !isPartSize(kind)) return '';
  const one = first.family.sizes[kind];
  const other = second.family.sizes[kind];
  if (one === undefined || other === undefined || one === other) return '';
  return ` ${first.family.name} is made with ${sizeText(one)}, ${second.family.name} with ${sizeText(other)}.`;
}

/** The two that stand first, where nothing but their nominal ratio parts them. */
export function partedByRatio(found: PartIdentification): string | undefined {
  const [first, second] = found.candidates;
  const [one, other] = [first?.family.nominalRatio, second?.family.nominalRatio];
  if (first === undefined || second === undefined || one === undefined || other === undefined)
    return undefined;
  if (one === other || second.probability < 0.05) return undefined;
  return `${first.family.name} is nominally ${ratioText(one)}, ${second.family.name} ${ratioText(other)}.`;
}
