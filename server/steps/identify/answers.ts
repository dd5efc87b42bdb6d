import { PART_FEATURES, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { HoleAnswer } from '../../assessment/identification/fasteners.ts';
import type { PartIdentification } from '../../assessment/identification/identification.ts';
import type { CallContext } from '../../call/context.ts';
import { partedBy, partedByRatio, rankedLines, shareText } from './candidate-text.ts';

const NAMES = { ...PART_SIZES, ...PART_FEATURES };

export function candidatesComponent(context: CallContext, found: PartIdentification): Component {
  const { lines, others } = rankedLines(found, context.side === 'desk');
  const counted = found.standing.filter(({ kind }) => kind in NAMES).length;
  return {
    template: '/parts/candidates',
    data: {
      id: 'candidates',
      title: 'What it may be',
      intro: `From ${counted} ${counted === 1 ? 'reading' : 'readings'} against ${found.families} part families of the catalogue. Marks play no part in it.`,
      candidates: lines,
      note: `${others}A ratio in the catalogue is nominal: the ratio is unknown until a valve moves.`,
    },
  };
}

/** A gain below this is not worth walking to the bench for. */
const WORTH_IT = 0.02;

/** The measurement that settles most, with its reason in figures; where none does, the ratio on the engine may. */
export function nextComponent(context: CallContext, found: PartIdentification): Component {
  const [offer] = found.offers;
  const now = Math.max(found.noneOfThese, found.candidates[0]?.probability ?? 0);
  const notice = (text: string, href: string, label: string): Component => ({
    template: '/parts/notice',
    data: { text, link: { href: `${context.base}/steps/${href}`, label } },
  });
  if (offer !== undefined && offer.rightFirst >= now + WORTH_IT) {
    const name = NAMES[offer.kind].toLowerCase();
    const text = `Next: ${name}. It would raise the chance of naming the part right from ${shareText(now)} to ${shareText(offer.rightFirst)}.${partedBy(found, offer.kind)}`;
    return notice(text, `identify?ask=${offer.kind}`, `Measure ${name}`);
  }
  const ratio = partedByRatio(found);
  if (ratio !== undefined && now < 0.9)
    return notice(
      `No further size parts the two that stand first; the ratio on the engine does. ${ratio}`,
      'ratio',
      'Read the ratio',
    );
  return notice(
    'Nothing that is left to measure would change the first name by much. The ratio is still unknown until a valve moves.',
    'ratio',
    'Read the ratio',
  );
}

type Fit = readonly ['agrees' | 'cannot-tell' | 'differs', string];

function fitOf(threads: HoleAnswer['threads']): Fit {
  if (threads.some(({ fit }) => fit === 'agrees'))
    return ['agrees', 'with the size it was made for, read a little small or large.'];
  return threads.length > 0
    ? ['cannot-tell', 'between sizes: try the stud or a drill shank by hand.']
    : ['differs', 'from every size that rockers are made for.'];
}

/** Readings that say the same are told once; a hole read at two sizes gives two answers. */
function holeComponents(answers: readonly HoleAnswer[]): Component[] {
  const told = new Map<string, HoleAnswer[]>();
  for (const answer of answers) {
    const key = answer.threads.map(({ designation, fit }) => `${designation} ${fit}`).join();
    told.set(key, [...(told.get(key) ?? []), answer]);
  }
  return [...told.values()].map((same, index) => holeComponent(same, index));
}

function holeComponent(same: readonly HoleAnswer[], index: number): Component {
  const threads = same[0]?.threads ?? [];
  const agreeing = threads.filter(({ fit }) => fit === 'agrees');
  const listed = agreeing.length > 0 ? agreeing : threads;
  const [word, text] = fitOf(threads);
  const ask = same[0]?.ask;
  return {
    template: '/parts/result',
    data: {
      id: `fastener-${index}`,
      label: `Fastener the hole takes, by ${same.map(({ reading }) => reading.readAs).join(' and ')}`,
      ...(listed.length === 0
        ? { none: 'None of the usual ones' }
        : { value: listed.map(({ designation }) => designation).join(' or ') }),
      verdict: { word, text },
      basis: [...(ask === undefined ? [] : [`Ask ${ask}`]), ...(same[0]?.cautions ?? [])].join(' '),
      restsOn: same.map(({ reading }) => reading.seq),
    },
  };
}

function coverComponent(found: PartIdentification): Component[] {
  if (!found.standing.some(({ kind }) => kind === 'width-across-trunnion')) return [];
  const { cover } = found;
  if (cover === undefined) {
    const none = 'Not yet: say on “Engine and springs” how the valve cover is bolted.';
    return [
      {
        template: '/parts/result',
        data: { id: 'cover', label: 'Room under the valve cover, sideways', none },
      },
    ];
  }
  return [
    {
      template: '/parts/result',
      data: {
        id: 'cover',
        label: 'Room under the valve cover, sideways',
        value: cover.reading.readAs,
        verdict: { word: cover.verdict, text: `${cover.reason}.` },
        basis: `Settled by ${cover.settledBy}.`,
        restsOn: [cover.reading.seq],
      },
    },
  ];
}

/** What follows from hole and width, and what does not go together. */
export function followingComponents(found: PartIdentification): Component[] {
  return [
    ...holeComponents(found.fasteners),
    ...coverComponent(found),
    ...found.questions.map(({ ask, test }, index) => ({
      template: '/parts/question',
      data: { id: `part-question-${index}`, about: 'the part in the hand', words: ask, test, answers: [] },
    })),
  ];
}
