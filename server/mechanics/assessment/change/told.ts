import { defined } from '../../../../shared/defined.ts';
import type { Judgement } from '../assessment.ts';
import { ended } from '../common/first-said.ts';
import { type GapBounds, gapSaid, overlapSaid, touches } from '../common/gap-said.ts';
import { lacksSaid } from '../common/lack.ts';
import { bareInches, limitSaid, listed, nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import type { GapName } from '../evidence.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';

/** What meets where a gap is gone. */
const MEETS: Readonly<Record<GapName, string>> = {
  'coil-bind': 'the spring’s coils',
  'retainer-to-seal': 'retainer and seal',
  'piston-to-valve': 'valve and piston',
  'pushrod-to-head': 'pushrod and head',
  'slot-to-stud': 'slot and stud',
  'rocker-to-retainer': 'rocker and retainer',
  cover: 'rocker and cover',
};

/** By how much less than nothing is left, as the trade says it: before and behind the figure. */
const WOULD: Readonly<Record<GapName, readonly [before: string, behind: string]>> = {
  'coil-bind': ['the spring would go solid', ' before full lift'],
  'retainer-to-seal': ['the retainer would be', ' into the seal'],
  'piston-to-valve': ['the valve would be', ' into the piston'],
  'pushrod-to-head': ['the pushrod would be', ' into the head'],
  'slot-to-stud': ['the slot would be', ' into the stud'],
  'rocker-to-retainer': ['the rocker would be', ' into the retainer'],
  cover: ['the rocker would be', ' into the cover'],
};

/** `the spring would go solid .012 in ± .006 before full lift` */
function touchSaid(name: GapName, gap: GapBounds): string {
  const [before, behind] = WOULD[name];
  return `${before} ${overlapSaid(gap)}${behind}`;
}

/** `.041 in ± .006, calculated, against .060 in`; where parts would touch, that they would. */
export function gapToldShort({ name, after, limit }: ChangeGap): string {
  if (after === undefined) return 'not known';
  return touches(after)
    ? `${touchSaid(name, after)}, ${after.basis}, where ${limitSaid(limit.value)} is wanted`
    : `${gapSaid(after)}, ${after.basis}, against ${limitSaid(limit.value)}`;
}

/**
 * Of several valves always the least that the gap can be, of one alone where that end is under the limit and the figure
 * that is expected is not: `at worst .072 in (.103 to be expected), calculated, against .080 in`, `at worst the valve
 * would be .026 in into the piston (.055 of room to be expected)`.
 */
export function gapToldAtWorst(gap: ChangeGap, several: boolean): string {
  const { after, limit, name } = gap;
  const { value, low } = after ?? {};
  if (after === undefined || value === undefined || low === undefined) return gapToldShort(gap);
  const lowDecides = low < limit.value && value >= limit.value;
  if (!several && !lowDecides) return gapToldShort(gap);
  const into = touches({ value: low });
  const least = into ? touchSaid(name, { value: low }) : gapSaid({ value: low });
  const expected = touches(after) ? bareInches(-value) : `${bareInches(value)}${into ? ' of room' : ''}`;
  return `at worst ${least} (${expected} to be expected), ${after.basis}, against ${limitSaid(limit.value)}`;
}

/** `1 intake with the planned 1.65` */
export function withRatio({ about, after }: Pick<ChangeDetail, 'about' | 'after'>): string {
  return after === undefined ? subjectSaid(about) : `${subjectSaid(about)} with ${after.said}`;
}

/** What a short gap asks of a person: parts that are not fitted yet are left off. */
const shortEnding = ({ plan }: Pick<ChangeDetail, 'plan'>): string =>
  plan === undefined
    ? 'Don’t run it, and have a qualified shop look.'
    : `Don’t fit the ${nominalSaid(plan)}.`;

function ending(gap: ChangeGap, detail: Omit<ChangeDetail, 'id'>): string {
  const { word, lacks, after } = gap;
  if (word === undefined) return ended(`no word yet. It needs ${listed(lacksSaid(lacks))}`);
  if (word === 'short') return `short. ${shortEnding(detail)}`;
  if (word === 'clear') return 'clear.';
  const may =
    after !== undefined && !touches(after) && (after.low ?? 0) < 0
      ? ` Perhaps ${MEETS[gap.name]} touch.`
      : '';
  return `close, it can’t be told from the limit. It needs ${listed(lacksSaid(lacks))}.${may}`;
}

function sentenceOf(gap: ChangeGap, detail: Omit<ChangeDetail, 'id'>): string {
  const { after = {}, title, word } = gap;
  const what = `${title}, ${withRatio(detail)}`;
  if (word === 'short' && touches(after))
    return `${upperFirst(what)}: short, ${gapToldShort(gap)}. ${shortEnding(detail)}`;
  return `${upperFirst(what)}: ${gapToldShort(gap)}: ${ending(gap, detail)}`;
}

/** What is told of the gaps that are calculated; one that was read is told by the sheet. */
export function calculatedJudgements(detail: Omit<ChangeDetail, 'id'>): Judgement[] {
  return detail.gaps.flatMap((gap): Judgement[] => {
    const { after, limit, word, lacks, judgementId, because, restsOn, name } = gap;
    if (after === undefined || gap.ofSheet === true || judgementId === undefined) return [];
    const why = because.map((reason) => ` ${upperFirst(reason)}.`).join('');
    return [
      {
        id: judgementId,
        about: detail.about,
        against: { to: 'limit', gap: name, limit: limit.value, source: limit.source },
        ...defined({ word }),
        sentence: `${sentenceOf(gap, detail)}${why}`,
        lacks: lacksSaid(lacks),
        restsOn,
      },
    ];
  });
}
