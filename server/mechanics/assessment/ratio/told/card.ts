import { formatNumber } from '../../../../../shared/quantities/format.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import type { Headline, Judgement } from '../../assessment.ts';
import { inches, keyOf, lowerFirst, nominalSaid, subjectSaid, valveSubject } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { cardRatioOf, near } from '../claims/card-lifts.ts';
import { type HeldAs, soldHeld } from '../claims/held-as.ts';
import { claimSaid, isOfPlan } from '../claims/marks.ts';
import { type MarkState, markState } from '../claims/stamp.ts';
import { WITHIN } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import { restingOn } from '../compared/lacking.ts';
import { soldToPutRight } from '../compared/stamp-against-sold.ts';
import { bandsAgainst } from '../compared/word.ts';
import { armSaid, ofEachValve } from './headline.ts';

/** What the card is told by, and in one line where it answers why the lift is not the card's. */
interface Judged {
  readonly judgement: Judgement;
  readonly told?: string;
}

/** The same of one arm on its valve. */
export interface CardJudged extends Judged {
  readonly of: string;
}

/** The reading is off the card's valve lift by what the card's own ratio makes, and by no more. */
const isOfCard = (off: number, ofRatio: number): boolean =>
  Math.abs(off) > allowance('card-lobe') && Math.abs(off - ofRatio) <= allowance('card-lobe');

/** Where the card goes with what was sold, it is not the card that is odd. */
const causeSaid = (sold: HeldAs | undefined): string =>
  sold === undefined
    ? 'it is the card’s ratio, not the part'
    : `the card goes with ${sold.said}, so it is the part, not the card`;

/** What makes the lift that was read another than the card's [m], each with its sign. */
interface Complaint {
  readonly off: number;
  /** The ratio that the arm is held to be, over that of the card. */
  readonly ofRatio: number;
  /** The lobe as it was read, over that of the card, and its own. */
  readonly ofLobe: number;
  readonly lobe: number;
  /** The arm as it reads, over what it is held to be. */
  readonly ordinary: boolean;
}

const signed = (value: number): string => `${inches(Math.abs(value))} ${value < 0 ? 'under' : 'over'}`;

const isSome = (value: number): boolean => Math.abs(value) > allowance('card-lobe');

/** What is left beside the two ratios: the lobe's part, then the arm's. */
function leftSaid({ off, ofRatio, ofLobe, lobe, ordinary }: Complaint): string[] {
  if (!isSome(ofLobe)) return [armLeftSaid(off - ofRatio, ordinary)];
  const ofArm = off - ofRatio - ofLobe;
  return [
    `the lobe, ${signed(lobe)} the card’s, makes ${signed(ofLobe)}`,
    ...(isSome(ofArm) ? [armLeftSaid(ofArm, ordinary)] : []),
  ];
}

/** What an arm has more is ordinary where it was made with room for flex, and what it has less is not. */
function armLeftSaid(left: number, ordinary: boolean): string {
  if (!ordinary) return `${signed(left)} is left to be explained`;
  return left > 0
    ? `${signed(left)} is what is ordinary for such an arm`
    : `${signed(left)} lies within ${formatNumber(WITHIN * 100, 0)} % of that ratio`;
}

/** How much of what the reading is off the card's valve lift is the card's own ratio. */
function complaintSaid(complaint: Complaint, said: string, sold?: HeldAs): string {
  const { off, ofRatio, ofLobe } = complaint;
  const whose = sold === undefined ? 'its' : 'the arm’s';
  if (!isSome(off) && !isSome(ofLobe))
    return `The lift as read is the card’s, and not what ${said} would make.`;
  const start = `The lift as read is ${isSome(off) ? `${signed(off)} ` : ''}the card’s; `;
  // A part of what it is off goes the same way and is no more than that.
  const isPart = isSome(off) && Math.sign(off) === Math.sign(ofRatio) && Math.abs(ofRatio) <= Math.abs(off);
  const ratio = isPart
    ? `${start}${whose} ratio makes ${inches(Math.abs(ofRatio))} of that`
    : `${start}${whose} ratio alone makes ${signed(ofRatio)}`;
  if (!isSome(off - ofRatio))
    return `${start}${whose} ratio makes ${inches(Math.abs(ofRatio))} of that: ${causeSaid(sold)}.`;
  return `${ratio}, ${leftSaid(complaint)
    .map((part) => `and ${part}`)
    .join(', ')}.`;
}

/** Nobody looked, or what was read there is not known to be its ratio. */
function markSaid(mark: MarkState): string {
  switch (mark.is) {
    case 'not-said':
      return 'its mark is not said';
    case 'no-ratio':
      return 'it has no mark that is its ratio';
    case 'several':
      return 'which of the marks on it is its ratio is not said';
    case 'other-number':
      return `the “${mark.text}” on it was said to be another number`;
    case 'undecided':
      return `whether the “${mark.text}” on it is its ratio is not said`;
  }
}

/** The card names a ratio, and nobody said what the arm is: said so, and what would tell it. */
function againstNothing(evidence: Evidence, { group, given }: GroupExplained, ratio: number): Judged {
  const mark = markSaid(markState(evidence, group.armId));
  const sentence = `The card works with ${nominalSaid(Number(ratio.toFixed(2)))}, and nothing is there to set against it: what the arm is sold as is not known, and ${mark}.`;
  return {
    judgement: {
      id: `card-ratio:${group.key}`,
      about: valveSubject(group),
      against: { to: 'card', ratio },
      sentence,
      lacks: ['what the arm is sold as, or its mark'],
      restsOn: [...(given?.entryIds ?? [])].sort(),
    },
    told: lowerFirst(sentence),
  };
}

/** Whether the complaint is the ratio that the card works with, and not the part. */
function cardAgainstArm(evidence: Evidence, explained: GroupExplained): Judged[] {
  const { group, claims, given } = explained;
  const [claim] = claims;
  const ofCard = cardRatioOf(evidence, sideOfValve(group.valve), claim);
  if (ofCard === undefined) return [];
  if (claim === undefined)
    return given === undefined ? [] : [againstNothing(evidence, explained, ofCard.ratio)];
  if (near(ofCard.ratio, claim.ratio))
    return ofCard.from === 'lifts-and-lash' ? netOfLash(evidence, explained, ofCard.ratio) : [];
  const { lobeLift: lobe } = evidence.card[sideOfValve(group.valve)];
  const said = claimSaid(claim, nominalSaid(claim.ratio));
  const lifts =
    lobe === undefined
      ? ''
      : `: on its ${inches(lobe)} lobe that is ${inches(lobe * ofCard.ratio)}, and ${inches(lobe * claim.ratio)} with ${said}`;
  // What the old arms were sold as says nothing of one that is planned, nor what was put down wrongly of any.
  const sold =
    isOfPlan(evidence, claim.ratio) || soldToPutRight(evidence, explained) !== undefined
      ? undefined
      : soldHeld(evidence, group).find(({ ratio }) => near(ofCard.ratio, ratio));
  const resting = restingOn(explained);
  const read = resting?.lacks.length === 0 ? resting.read.lift?.read : undefined;
  const lobeOff = lobe === undefined ? 0 : (resting?.read.lobe.value ?? lobe) - lobe;
  const complaint =
    lobe === undefined || read === undefined
      ? `Where the lift is off by that much, ${causeSaid(sold)}.`
      : complaintSaid(
          {
            off: read - lobe * ofCard.ratio,
            ofRatio: lobe * (claim.ratio - ofCard.ratio),
            lobe: lobeOff,
            ofLobe: lobeOff * claim.ratio,
            ordinary: bandsAgainst(explained, claim).every((band) => band === 'within' || band === 'over'),
          },
          said,
          sold,
        );
  const off = lobe === undefined || read === undefined ? 0 : read - lobe * ofCard.ratio;
  const ofRatio = (lobe ?? 0) * (claim.ratio - ofCard.ratio);
  const name = nominalSaid(Number(ofCard.ratio.toFixed(2)));
  return [
    {
      judgement: {
        id: `card-ratio:${group.key}`,
        about: valveSubject(group),
        against: { to: 'card', ratio: ofCard.ratio },
        sentence: `The card works with ${name}${lifts}. ${complaint}`,
        lacks: [],
        restsOn: read === undefined ? [] : [...(given?.entryIds ?? [])].sort(),
      },
      ...(isOfCard(off, ofRatio)
        ? {
            told: `the lift is ${inches(Math.abs(off))} ${off < 0 ? 'under' : 'over'} the card’s because the card works with ${name}${sold === undefined ? '' : ` and the arm is a ${nominalSaid(claim.ratio)}`}: ${causeSaid(sold)}.`,
          }
        : {}),
    },
  ];
}

/** A card that prints the net lift: what lies between it and a reading at zero lash is the lash. */
function netOfLash(evidence: Evidence, explained: GroupExplained, ratio: number): Judged[] {
  const { group, given } = explained;
  const { valveLift, lash } = evidence.card[sideOfValve(group.valve)];
  const resting = restingOn(explained);
  if (valveLift === undefined || lash === undefined || resting?.lacks.length !== 0) return [];
  const sentence = `The ${inches(valveLift)} on the card is net of its ${inches(lash)} of lash: at zero lash that is ${inches(valveLift + lash)}.`;
  return [
    {
      judgement: {
        id: `card-ratio:${group.key}`,
        about: valveSubject(group),
        against: { to: 'card', ratio },
        sentence,
        lacks: [],
        restsOn: [...(given?.entryIds ?? [])].sort(),
      },
      told: lowerFirst(sentence),
    },
  ];
}

/** The ratio that the card works with, beside what each arm is held to be. */
export const cardJudged = (evidence: Evidence, explained: readonly GroupExplained[]): CardJudged[] =>
  explained.flatMap((each) =>
    cardAgainstArm(evidence, each).map((judged) => ({ ...judged, of: each.group.key })),
  );

/** The one line of each valve, of the arm that its headline is of. */
export const cardHeadlines = (
  evidence: Evidence,
  explained: readonly GroupExplained[],
  judged: readonly CardJudged[],
): Headline[] =>
  ofEachValve(evidence, explained).flatMap((valve) => {
    const found = judged.find(({ of, told }) => of === valve.each.group.key && told !== undefined);
    if (found?.told === undefined) return [];
    const { id, about } = found.judgement;
    return [
      {
        id: `headline:card-ratio:${keyOf(about)}`,
        about,
        step: 'ratio' as const,
        sentence: `${subjectSaid(about)}${armSaid(valve)}: ${found.told}`,
        judgementId: id,
      },
    ];
  });
