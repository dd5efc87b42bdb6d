import { defined } from '../../../../shared/defined.ts';
import type { Headline, Judgement, NotToRun, Subject } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, keyOf, listed, nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import type { ChangeDetail, ChangeGap } from './detail.ts';

/** `1 intake with the planned 1.65` */
function withRatio({ about, after }: Pick<ChangeDetail, 'about' | 'after'>): string {
  return after === undefined ? subjectSaid(about) : `${subjectSaid(about)} with ${after.said}`;
}

function ending({ word, lacks }: ChangeGap): string {
  if (word === undefined) return `no word yet, it needs ${listed(lacks)}.`;
  if (word === 'short') return 'short. Stop, and have a qualified shop look.';
  return word === 'close' ? 'close, not told apart within its uncertainty.' : 'clear.';
}

/** What is told of the gaps that are calculated; one that was read is told by the sheet. */
export function calculatedJudgements(detail: Omit<ChangeDetail, 'id'>): Judgement[] {
  return detail.gaps.flatMap((gap): Judgement[] => {
    const { after, limit, word, lacks, judgementId, because, restsOn, name, title } = gap;
    if (after?.basis !== 'calculated' || judgementId === undefined) return [];
    const bent = because.find((reason) => reason.startsWith('the ratio was read on the running spring'));
    const why = bent === undefined ? '' : ` ${upperFirst(bent)}.`;
    return [
      {
        id: judgementId,
        about: detail.about,
        against: { to: 'limit', gap: name, limit: limit.value, source: limit.source },
        ...defined({ word }),
        sentence: `${title}, ${withRatio(detail)}: ${gapSaid(after)}, calculated, against ${inches(limit.value)}: ${ending(gap)}${why}`,
        lacks,
        restsOn,
      },
    ];
  });
}

const named = (gaps: readonly ChangeGap[], word: ChangeGap['word']): string[] =>
  gaps.filter((gap) => gap.after !== undefined && gap.word === word).map(({ title }) => title.toLowerCase());

/** `1 intake with the planned 1.65: short: piston to valve; close: room to coil bind; not known: cover.` */
export function changeHeadline(detail: Omit<ChangeDetail, 'id'>, id: string): Headline {
  const { gaps, about, notUsed } = detail;
  const unknown = gaps.filter(({ after }) => after === undefined).map(({ title }) => title.toLowerCase());
  const told = [
    ['short', named(gaps, 'short')] as const,
    ['close', named(gaps, 'close')] as const,
    ['no word yet', named(gaps, undefined)] as const,
    ['clear', named(gaps, 'clear')] as const,
    ['not known', unknown] as const,
  ].flatMap(([word, names]) => (names.length === 0 ? [] : [`${word}: ${listed(names)}`]));
  const [worst] = gaps;
  return {
    id,
    about,
    step: 'consequences',
    sentence: [`${upperFirst(withRatio(detail))}: ${told.join('; ')}.`, notUsed ?? ''].join(' ').trim(),
    ...(worst?.judgementId === undefined ? {} : { judgementId: worst.judgementId }),
  };
}

/** A gap that comes out short: calculated, so that it may be turned by hand to measure it, and not run. */
export function shortGaps(detail: Omit<ChangeDetail, 'id'>): NotToRun[] {
  return detail.gaps.flatMap((gap): NotToRun[] => {
    const { after, word, name, title, limit } = gap;
    if (after?.basis !== 'calculated' || word !== 'short') return [];
    return [
      {
        id: `not-to-run:gap-short:${name}:${keyOf(detail.about)}${ratioKey(detail)}`,
        about: detail.about,
        sentence: `Do not run it so: ${title.toLowerCase()}, ${withRatio(detail)}, comes out short, ${gapSaid(after)} against ${inches(limit.value)}.`,
        wayOut:
          'Measure the gap, turned by hand on a light spring, and have a qualified shop look before it runs.',
      },
    ];
  });
}

/** One planned ratio is not another. */
const ratioKey = ({ after }: Omit<ChangeDetail, 'id'>): string =>
  after === undefined
    ? ''
    : `:${after.from}${after.from === 'planned' ? `-${nominalSaid(after.value)}` : ''}`;

const MOST = 3;

/** The worst of all valves in one line. */
export function worstHeadline(details: readonly ChangeDetail[]): Headline[] {
  const bad = details.flatMap((detail) =>
    detail.gaps.flatMap((gap) =>
      gap.word === 'short' || gap.word === 'close'
        ? [{ gap, about: detail.about, short: gap.word === 'short' }]
        : [],
    ),
  );
  const sorted = bad.toSorted((a, b) => Number(b.short) - Number(a.short) || depth(a.gap) - depth(b.gap));
  const [first] = sorted;
  if (first === undefined) return [];
  const told = sorted.slice(0, MOST).map(({ gap, about }) => one(gap, about));
  const more = sorted.length > MOST ? `; and ${sorted.length - MOST} more` : '';
  const about: Subject = { of: 'build' };
  return [
    {
      id: 'headline:change:worst',
      about,
      step: 'consequences',
      sentence: `Worst first: ${told.join('; ')}${more}.`,
      ...defined({ judgementId: first.gap.judgementId }),
    },
  ];
}

const depth = ({ after, limit }: ChangeGap): number => (after?.low ?? after?.value ?? 0) - limit.value;

function one({ title, after, limit, word }: ChangeGap, about: Subject): string {
  return `${title.toLowerCase()}, ${subjectSaid(about)}, ${word} (${gapSaid(after ?? {})} against ${inches(limit.value)})`;
}
