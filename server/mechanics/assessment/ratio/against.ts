import { defined } from '../../../../shared/defined.ts';
import type { Judgement } from '../assessment.ts';
import { nominalSaid, valveSubject } from '../common/said.ts';
import type { RatioWord } from '../words.ts';
import type { GroupExplained } from './explain.ts';
import type { ExplanationResult } from './explanation.ts';
import { lacksOfGroup } from './lacking.ts';
import { type Claim, claimSaid } from './marks.ts';
import {
  awaySaid,
  intervalSaid,
  NOT_NOW,
  namesLeft,
  namesSaid,
  ORDINARY,
  ratioWithin,
  wouldTell,
} from './ratio-said.ts';

/** A ratio agrees with a mark within this (common practice, no published source). */
const BAND = 0.02;
/** Below this chance of "nothing went wrong" nothing is said to differ, as in the inference. */
const NO_MISTAKE = 0.5;

/** Against a second claim the interval speaks; the inference was told the first. */
function byInterval({ ratio, noMistake }: ExplanationResult, claim: number): RatioWord {
  const [low, high] = ratio.interval95;
  const [from, to] = [claim * (1 - BAND), claim * (1 + BAND)];
  if (low >= from && high <= to) return 'agrees';
  return (high < from || low > to) && noMistake >= NO_MISTAKE ? 'differs' : 'cannot-tell';
}

const firstly = (lacks: readonly string[]): string =>
  `First: ${lacks.join('; ')}.`.replace(/([.?!])\.$/, '$1');

/** What an arm that differs is told by: how far off it is, widened by the reading's own interval. */
function differs(result: ExplanationResult, claim: number, said: string, stopped: boolean): string {
  const { median, interval95 } = result.ratio;
  const half = (interval95[1] - interval95[0]) / 2;
  const share = median / claim - 1;
  const far = Math.abs(share) > ORDINARY + half / claim;
  const start = `${intervalSaid(result)}, differs from ${said}: ${awaySaid(median, claim)}`;
  if (far)
    return `${start}, so far off that the readings are doubted before the part. ${wouldTell(result, stopped)}`;
  return share > 0
    ? `${start}, ordinary for an arm made with room for flex. Use ${ratioWithin(median, half)} for every clearance.`
    : `${start}, which no spring explains. ${stopped ? NOT_NOW : 'Read again; then the swap test, this rocker on another valve and another one here.'}`;
}

/** A little over is what makers put in for flex: said beside the open word, so that nobody condemns the part for it. */
function ifItStands({ ratio: { median } }: ExplanationResult, claim: number): string {
  const share = median / claim - 1;
  if (share <= BAND || share > ORDINARY) return '';
  return ` If it stands, ${awaySaid(median, claim)} is ordinary for an arm made with room for flex.`;
}

function sentenceOf(
  word: RatioWord | undefined,
  result: ExplanationResult | undefined,
  claim: Claim,
  lacks: readonly string[],
  stopped: boolean,
) {
  const said = claimSaid(claim, nominalSaid(claim.ratio));
  if (word === undefined || result === undefined) return `Not set against ${said} yet. ${firstly(lacks)}`;
  if (word === 'agrees') return `${intervalSaid(result)}: agrees with ${said}.`;
  if (word === 'differs') return differs(result, claim.ratio, said, stopped);
  return `${intervalSaid(result)}: it cannot be told yet whether that is ${said}.${ifItStands(result, claim.ratio)} ${wouldTell(result, stopped)}`;
}

function againstClaim(
  explained: GroupExplained,
  claim: Claim,
  lacks: readonly string[],
  stopped: boolean,
): Judgement {
  const { group, result, given, claims } = explained;
  const first = claims[0] === claim;
  const word =
    result === undefined || lacks.length > 0
      ? undefined
      : first
        ? (result.againstMark ?? 'cannot-tell')
        : byInterval(result, claim.ratio);
  return {
    id: `ratio:${group.key}:${claim.to}`,
    about: valveSubject(group),
    against: { to: claim.to, ratio: claim.ratio },
    ...defined({ word }),
    sentence: sentenceOf(word, result, claim, lacks, stopped),
    lacks,
    restsOn: [...(given?.entryIds ?? [])].sort(),
  };
}

/** Without a mark: names of the list, each with its chance, and never a word. */
function againstNames({ group, result, given }: GroupExplained, lacks: readonly string[]): Judgement[] {
  if (result === undefined) return [];
  const name = namesLeft(result)[0]?.ratio;
  const told = `${intervalSaid(result)}: ${namesSaid(result)}.`;
  return [
    {
      id: `ratio:${group.key}:nominal`,
      about: valveSubject(group),
      against: { to: 'nominal', ratio: name ?? result.ratio.median },
      sentence: lacks.length === 0 ? told : `${firstly(lacks)} Till then ${told}`,
      lacks,
      restsOn: [...(given?.entryIds ?? [])].sort(),
    },
  ];
}

/** What one arm on one valve is told by: the mark or what it is sold as; without either, the names that are left. */
export function judgedGroup(explained: GroupExplained, stopped: boolean): Judgement[] {
  const lacks = lacksOfGroup(explained);
  if (explained.claims.length === 0) return againstNames(explained, lacks);
  return explained.claims.map((claim) => againstClaim(explained, claim, lacks, stopped));
}
