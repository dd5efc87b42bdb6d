import { isPartSize } from '../../../../shared/schemas/part-words.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { AssessedQuestion, Headline } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import type { BenchRatioDetail } from './detail.ts';
import { isOfOtherMount } from './family-mount.ts';
import type { InHand } from './in-hand.ts';
import type { Ranked, Ranking } from './ranking.ts';
import { STANDS_ALONE } from './stands-alone.ts';

/** The arms that were measured leave no room for the ratio that the family is sold as. */
function againstItsArms(
  { family: { name, nominalRatio: ratio } }: Ranked,
  bench: BenchRatioDetail,
): string | undefined {
  if (ratio === undefined || bench.lacks !== undefined) return undefined;
  const { low, high, value, interval } = bench;
  return ratio >= low && ratio <= high
    ? undefined
    : `no family is named: ${name} fits best otherwise, but it is a ${nominalSaid(ratio)}, and by its arm lengths the part is about ${value}, ${interval}. Measure both lengths once more`;
}

/** What was seen of the mount leaves no room for it. */
const againstItsMount = (first: Ranked): string | undefined =>
  isOfOtherMount(first)
    ? `no family is named: ${first.family.name} fits best otherwise, but it is of a ${first.family.features.mount ?? ''} mount, and this part is not`
    : undefined;

const ONE_KIND = 'no family is named from one kind of reading';
const NOT_YET = 'no family is likely enough to be named yet';

/** What the headline says, and whether with a chance. */
interface Named {
  readonly said: string;
  readonly told: boolean;
}

const open = (said: string): Named => ({ said, told: false });
const told = (said: string): Named => ({ said, told: true });

function nameOf({ candidates, noneOfThese: none, kinds }: Ranking, bench?: BenchRatioDetail): Named {
  const [first] = candidates;
  const { from } = IDENTIFICATION_MODEL.named;
  if (kinds < 2) return open(ONE_KIND);
  if (none.probability >= from)
    return told(`most likely, ${none.share}, it is none of the catalogue’s families`);
  if (first === undefined || first.chance.probability < from) return open(NOT_YET);
  const against = againstItsMount(first) ?? (bench === undefined ? undefined : againstItsArms(first, bench));
  return against === undefined
    ? told(`${first.family.name} stands first, ${first.chance.share}; none of these ${none.share}`)
    : open(against);
}

/** What comes before any name; what is tried with the hole is told of the hole itself. */
const firstSaid = ({ code, test }: AssessedQuestion): string =>
  code === 'hole-between-sizes' ? ': first, what goes through the hole' : `. ${test}`;

/** A question that stands before any name. */
function askedBefore(
  { readings }: InHand,
  ranking: Ranking,
  questions: readonly AssessedQuestion[],
  first: AssessedQuestion | undefined,
): AssessedQuestion | undefined {
  const alone = questions.find(({ code, answered }) => code === STANDS_ALONE && answered === undefined);
  // That it is none of them is not said while a reading that speaks against them all is asked about.
  const isNone = ranking.noneOfThese.probability >= IDENTIFICATION_MODEL.named.from && ranking.kinds > 1;
  // Two sizes of one place are two parts, and one of them it is not: which, tells the family.
  const ofPart = readings.filter(({ kind }) => isPartSize(kind)).map(({ id }) => id);
  const two = questions.find(
    ({ code, answered, restsOn }) =>
      code === 'two-sizes' && answered === undefined && restsOn.some((id) => ofPart.includes(id)),
  );
  const mount = questions.find(
    ({ code, answered }) => code === 'family-against-engine' && answered === undefined,
  );
  return alone ?? two ?? mount ?? (isNone ? first : undefined);
}

/** What is said of the family, and whether a chance may stand beside it. */
export interface FamilySaid {
  readonly headlines: readonly Headline[];
  readonly told: boolean;
}

const NOTHING_SAID: FamilySaid = { headlines: [], told: false };

/** What is told beside the families. */
interface Beside {
  readonly bench: BenchRatioDetail | undefined;
  readonly first?: AssessedQuestion | undefined;
  /** The box is of another family than the one that stands first, and the readings hold both alike. */
  readonly box?: string | undefined;
}

/**
 * The family that stands first with its chance, and that of none of them: never a name without it, and none below the
 * chance from which one is told. The others are in the table.
 */
export function familySaid(
  part: InHand,
  ranking: Ranking | undefined,
  questions: readonly AssessedQuestion[],
  { bench, first, box }: Beside,
): FamilySaid {
  if (ranking === undefined || ranking.candidates.length === 0 || ranking.counted === 0) return NOTHING_SAID;
  const { about, key } = part;
  const before = askedBefore(part, ranking, questions, first);
  const said =
    before === undefined ? nameOf(ranking, bench) : open(`no family is named yet${firstSaid(before)}`);
  const named = ended(`${upperFirst(subjectSaid(about))}: ${said.said}`);
  const sentence = box === undefined || !said.told ? named : `${named} ${box}`;
  return {
    headlines: [{ id: `headline:${key}:family`, about, step: 'identify', sentence }],
    told: said.told,
  };
}
