import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { isWithin } from '../../../kit/within.ts';
import type { Headline, Judgement } from '../../assessment.ts';
import { firstSaid } from '../../common/first-said.ts';
import { byPlace, inches, lowerFirst, nominalSaid, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import type { RatioWord } from '../../words.ts';
import { doubtsOfCard } from '../compared/card-doubted.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { type CardSaid, type LobeOff, lobeOff, shownAt, WHOSE_VALVE } from '../compared/lobe-low.ts';
import { doubtsOfLobe } from '../compared/lobes-read.ts';
import { halfWidthOf } from '../read/intervals.ts';
import { lackSaid } from '../read/lack-said.ts';
import { NOT_NOW } from './ratio-said.ts';

/** So many passes are what a lobe is read by (common practice, no source). */
const PASSES = 3;

interface LobeSays {
  readonly read: number;
  readonly printed: number;
  readonly passes: number;
}

/** The lobe of a set-up beside its card, with how it stands to it where it differs. */
export interface LobeJudged {
  readonly judgement: Judgement;
  readonly off?: LobeOff;
  /** It differs, and on which valve it was read is asked: nothing else is in doubt about it. */
  readonly whose?: LobeOff;
}

function lobeWord(off: number, half: number): RatioWord {
  const band = allowance('card-lobe');
  // A rule or a guess agrees with nothing: by it the lobe may be another one as well.
  const isFine = half <= 2 * band;
  if (isFine && isWithin(off, Math.max(band, half))) return 'agrees';
  return Math.abs(off) > band + half ? 'differs' : 'cannot-tell';
}

function lobeSaid(word: RatioWord, { read, printed, passes }: LobeSays, stopped: boolean): string {
  const start = `The lobe reads ${inches(read)}`;
  if (word === 'agrees') return `${start}: agrees with the ${inches(printed)} on the card.`;
  if (word === 'cannot-tell')
    return `${start}: it cannot be told whether that is the ${inches(printed)} on the card. ${stopped ? NOT_NOW : passes < PASSES ? 'Read it three times at the lifter.' : 'The lobes beside it, read at the lifter, tell.'}`;
  return start;
}

/** What a lobe that is off its card makes at the valve; or that the lift read there is nearer to what this arm makes of the card’s. */
function atValveSaid(off: LobeOff, ratio: number | undefined): string {
  if (ratio === undefined) return '';
  const { read, cardLift, claims } = off;
  const [claim] = claims;
  const { makes, isShown } = shownAt(off, ratio);
  const [verb, way] = makes < 0 ? ['take', 'off'] : ['add', 'to'];
  const is = `${inches(Math.abs(makes))} ${way} the valve lift`;
  return isShown || cardLift === undefined || claim === undefined
    ? ` That ${verb}s ${is}.`
    : ` That would ${verb} ${is}, and the valve does not show it: it reads ${inches(read * ratio)}, and the lobe of the card makes ${inches(cardLift)} with ${nominalSaid(claim)}.`;
}

/** A lobe that is off its card is where lift is missing, or too much: how much, and what it may be. */
export function offSaid(off: LobeOff, ratio: number | undefined, cardIsOther = false): string {
  const { read, printed, alike, alone, valve, underOthers, cardHolds } = off;
  const by = Math.abs(read - printed);
  const under = read < printed;
  const start = `The lobe reads ${inches(read)}, ${inches(by)} ${under ? 'under' : 'over'} the ${inches(printed)} on the card`;
  if (cardIsOther)
    return `${start}, which is not right for it, as was answered: put the lobe lift of the card right.`;
  const holds = cardHolds === true && !alike && !alone;
  const why = holds
    ? `which is that of this cam, as was answered: ${under ? 'worn, or read short' : 'another cam’s lobe, or read long'}`
    : alike
      ? `as do the other ${sideOfValve(valve)} lobes: another cam, or another card`
      : alone
        ? underOthers === undefined
          ? `and the others read as the card has it: ${under ? 'worn, or read short' : 'another cam’s, or read long'}`
          : `and ${inches(underOthers)} under the others of its side: worn, or read short`
        : under
          ? 'which lobe, which card, or wear?'
          : 'which lobe, or which card?';
  return `${start}${alike || alone || holds ? `, ${why}.` : `: ${why}`}${atValveSaid(off, ratio)}`;
}

/**
 * The lobe as read at the lifter against the lobe that the card prints. `card`: what was
 * answered of that card.
 */
export function lobeAgainstCard(
  evidence: Evidence,
  known: SetUpKnown,
  all: readonly SetUpKnown[],
  stopped: boolean,
  card?: CardSaid,
): LobeJudged[] {
  const cardIsOther = card === 'other';
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
  const doubts = [...lobe.lacks, ...doubtsOfLobe(known)];
  const ofReading = doubts.map(lackSaid);
  const beside = lobeWord(lobe.value - printed, half);
  // A card that is in doubt itself is no measure of a lobe that is off it; one that agrees speaks for it.
  const ofCard =
    beside === 'agrees' || cardIsOther
      ? []
      : doubtsOfCard(evidence, all, sideOfValve(setUp.valve)).map(lackSaid);
  const read = ofReading.length + ofCard.length > 0 ? undefined : beside;
  // Against a card that is not right for it no lobe has a word.
  const word = cardIsOther ? undefined : read;
  const lacks =
    cardIsOther && read !== undefined ? ['the lobe lift of the card put right'] : [...ofReading, ...ofCard];
  const isWhose =
    doubts.length > 0 && doubts.every((lack) => lack.code === 'answer' && lack.question === WHOSE_VALVE);
  const differs = beside === 'differs' && ofCard.length === 0;
  const found = differs ? lobeOff(evidence, all, setUp, lobe.value) : undefined;
  const told = doubts.length > 0 ? undefined : found;
  const off = told !== undefined && card === 'holds' ? { ...told, cardHolds: true as const } : told;
  const whose = isWhose ? found : undefined;
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
          : lobeSaid(word, { read: lobe.value, printed, passes: lobe.passes.used.length }, stopped),
    lacks,
    restsOn: [...lobe.entryIds].sort(),
  };
  return [{ judgement, ...defined({ off, whose }) }];
}

const newestOf = (all: readonly LobeOff[]): LobeOff[] =>
  [...new Map(all.map((off) => [placeOf(off), off])).values()].sort(byPlace);

/** Lobes that are off their card, the newest reading of each valve. */
export const lobesOff = (judged: readonly LobeJudged[]): LobeOff[] =>
  newestOf(judged.flatMap(({ off }) => off ?? []));

/** The same where it is asked on which valve they were read. */
export const lobesOfWhom = (judged: readonly LobeJudged[]): LobeOff[] =>
  newestOf(judged.flatMap(({ whose }) => whose ?? []));

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
