import { isPartSize } from '../../../../shared/schemas/part-words.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import type { BenchRatioDetail, CandidateDetail, RankingDetail } from './detail.ts';
import type { InHand } from './in-hand.ts';
import { STANDS_ALONE } from './stands-alone.ts';

/** The arms that were measured leave no room for the ratio that the family is sold as. */
function againstItsArms(
  { family: { name, nominalRatio: ratio } }: CandidateDetail,
  bench: BenchRatioDetail,
): string | undefined {
  if (ratio === undefined || bench.lacks !== undefined) return undefined;
  const { low, high, value, interval } = bench;
  return ratio >= low && ratio <= high
    ? undefined
    : `no family is named: ${name} fits best otherwise, but it is a ${nominalSaid(ratio)}, and by its arm lengths the part is about ${value}, ${interval}. Measure both lengths once more`;
}

const ONE_KIND = 'no family is named from one kind of reading';
const NOT_YET = 'no family is likely enough to be named yet';

function named({ candidates, noneOfThese: none, kinds }: RankingDetail, bench?: BenchRatioDetail): string {
  const [first] = candidates;
  const { from } = IDENTIFICATION_MODEL.named;
  if (kinds < 2) return ONE_KIND;
  if (none.probability >= from) return `most likely, ${none.share}, it is none of the catalogue’s families`;
  if (first === undefined || first.probability < from) return NOT_YET;
  const against = bench === undefined ? undefined : againstItsArms(first, bench);
  return against ?? `${first.family.name} stands first, ${first.share}; none of these ${none.share}`;
}

/** What comes before any name; what is tried with the hole is told of the hole itself. */
const firstSaid = ({ code, test }: AssessedQuestion): string =>
  code === 'hole-between-sizes' ? ': first, what goes through the hole' : `. ${test}`;

/**
 * The family that stands first with its chance, and that of none of them: never a name without it, and none below the
 * chance from which one is told. The others are in the table.
 */
export function familyHeadline(
  { about, key, readings }: InHand,
  ranking: RankingDetail | undefined,
  questions: readonly AssessedQuestion[],
  bench: BenchRatioDetail | undefined,
  first?: AssessedQuestion,
): Headline[] {
  if (ranking === undefined || ranking.candidates.length === 0 || ranking.counted === 0) return [];
  const alone = questions.find(({ code, answered }) => code === STANDS_ALONE && answered === undefined);
  // That it is none of them is not said while a reading that speaks against them all is asked about.
  const isNone = ranking.noneOfThese.probability >= IDENTIFICATION_MODEL.named.from && ranking.kinds > 1;
  // Two sizes of one place are two parts, and one of them it is not: which, tells the family.
  const ofPart = readings.filter(({ kind }) => isPartSize(kind)).map(({ id }) => id);
  const two = questions.find(
    ({ code, answered, restsOn }) =>
      code === 'two-sizes' && answered === undefined && restsOn.some((id) => ofPart.includes(id)),
  );
  const open = alone ?? two ?? (isNone ? first : undefined);
  const said = open === undefined ? named(ranking, bench) : `no family is named yet${firstSaid(open)}`;
  return [
    {
      id: `headline:${key}:family`,
      about,
      step: 'identify',
      sentence: ended(`${upperFirst(subjectSaid(about))}: ${said}`),
    },
  ];
}
