import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { isWithin } from '../../../kit/within.ts';
import type { Headline, Judgement } from '../../assessment.ts';
import { firstSaid } from '../../common/first-said.ts';
import { byPlace, inches, lowerFirst, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import type { RatioWord } from '../../words.ts';
import { doubtsOfCard } from '../compared/card-doubted.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { type LobeOff, lobeOff } from '../compared/lobe-low.ts';
import { doubtsOfLobe } from '../compared/lobes-read.ts';
import { halfWidthOf } from '../read/intervals.ts';
import { lackSaid } from '../read/lack-said.ts';
import { NOT_NOW } from './ratio-said.ts';

/** The lobe of a set-up beside its card, with how it stands to it where it differs. */
export interface LobeJudged {
  readonly judgement: Judgement;
  readonly off?: LobeOff;
}

function lobeWord(off: number, half: number): RatioWord {
  const band = allowance('card-lobe');
  // A rule or a guess agrees with nothing: by it the lobe may be another one as well.
  const isFine = half <= 2 * band;
  if (isFine && isWithin(off, Math.max(band, half))) return 'agrees';
  return Math.abs(off) > band + half ? 'differs' : 'cannot-tell';
}

function lobeSaid(word: RatioWord, read: number, printed: number, stopped: boolean): string {
  const start = `The lobe reads ${inches(read)}`;
  if (word === 'agrees') return `${start}: agrees with the ${inches(printed)} on the card.`;
  if (word === 'cannot-tell')
    return `${start}: it cannot be told whether that is the ${inches(printed)} on the card. ${stopped ? NOT_NOW : 'Read it three times at the lifter.'}`;
  return start;
}

/** A lobe that is off its card is where lift is missing, or too much: how much, and what it may be. */
export function offSaid(off: LobeOff, ratio: number | undefined, cardIsOther = false): string {
  const { read, printed, alike, alone, valve, underOthers } = off;
  const by = Math.abs(read - printed);
  const under = read < printed;
  const start = `The lobe reads ${inches(read)}, ${inches(by)} ${under ? 'under' : 'over'} the ${inches(printed)} on the card`;
  if (cardIsOther)
    return `${start}, which is not right for it, as was answered: put the lobe lift of the card right.`;
  const why = alike
    ? `as do the other ${sideOfValve(valve)} lobes: another cam, or another card`
    : alone
      ? underOthers === undefined
        ? `and the others read as the card has it: ${under ? 'worn, or read short' : 'another cam’s, or read long'}`
        : `and ${inches(underOthers)} under the others of its side: worn, or read short`
      : under
        ? 'which lobe, which card, or wear?'
        : 'which lobe, or which card?';
  const lift =
    ratio === undefined
      ? ''
      : ` That ${under ? 'takes' : 'adds'} ${inches(by * ratio)} ${under ? 'off' : 'to'} the valve lift.`;
  return `${start}${alike || alone ? `, ${why}.` : `: ${why}`}${lift}`;
}

/**
 * The lobe as read at the lifter against the lobe that the card prints. `cardIsOther`: it was answered that the card is
 * another one’s, or was misread.
 */
export function lobeAgainstCard(
  evidence: Evidence,
  known: SetUpKnown,
  all: readonly SetUpKnown[],
  stopped: boolean,
  cardIsOther = false,
): LobeJudged[] {
  const { setUp, lobe } = known.read;
  const printed = evidence.card[sideOfValve(setUp.valve)].lobeLift;
  if (
    printed === undefined ||
    printed <= 0 ||
    lobe.source !== 'indicator' ||
    lobe.value === undefined ||
    lobe.from !== undefined
  )
    return [];
  const half = halfWidthOf(lobe.passes.used, {
    graduation: setUp.graduation,
    errorLimit: setUp.lobeErrorLimit,
  });
  const ofReading = [...lobe.lacks, ...doubtsOfLobe(known)].map(lackSaid);
  const beside = ofReading.length > 0 ? undefined : lobeWord(lobe.value - printed, half);
  // A card that is in doubt itself is no measure of a lobe that is off it; one that agrees speaks for it.
  const ofCard =
    beside === undefined || beside === 'agrees' || cardIsOther
      ? []
      : doubtsOfCard(evidence, all, sideOfValve(setUp.valve)).map(lackSaid);
  const read = ofCard.length > 0 ? undefined : beside;
  // Against a card that is not right for it no lobe has a word.
  const word = cardIsOther ? undefined : read;
  const lacks =
    cardIsOther && read !== undefined ? ['the lobe lift of the card put right'] : [...ofReading, ...ofCard];
  const off = read === 'differs' ? lobeOff(evidence, all, setUp, lobe.value) : undefined;
  const judgement: Judgement = {
    id: `card-lobe:${setUp.id}`,
    about: valveSubject(setUp),
    against: { to: 'card-lobe', lobeLift: printed },
    ...defined({ word }),
    sentence:
      off !== undefined
        ? offSaid(off, known.result?.ratio, cardIsOther)
        : word === undefined
          ? `The lobe is not set against the card yet. ${firstSaid(lacks)}`
          : lobeSaid(word, lobe.value, printed, stopped),
    lacks,
    restsOn: [...lobe.entryIds].sort(),
  };
  return [{ judgement, ...defined({ off }) }];
}

/** Lobes that are off their card, the newest reading of each valve. */
export const lobesOff = (judged: readonly LobeJudged[]): LobeOff[] =>
  [
    ...new Map(
      judged.flatMap(({ off }) => (off === undefined ? [] : [[placeOf(off), off] as const])),
    ).values(),
  ].sort(byPlace);

/** A lobe that is off its card is told at once: it is why the lift is not the card’s. */
export const lobeHeadlines = (judged: readonly LobeJudged[]): Headline[] => {
  const newest = new Map(
    judged.flatMap((each) => (each.off === undefined ? [] : [[placeOf(each.off), each] as const])),
  );
  return lobesOff(judged).flatMap((each) => {
    const { off, judgement } = newest.get(placeOf(each)) ?? {};
    return off === undefined || judgement === undefined
      ? []
      : [
          {
            id: `headline:card-lobe:${off.cylinder}-${off.valve}`,
            about: valveSubject(off),
            step: 'ratio' as const,
            sentence: `${placeOf(off)}: ${lowerFirst(judgement.sentence)}`,
            judgementId: judgement.id,
          },
        ];
  });
};
