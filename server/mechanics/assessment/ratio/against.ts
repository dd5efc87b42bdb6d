import { defined } from '../../../../shared/defined.ts';
import type { Judgement } from '../assessment.ts';
import { firstSaid } from '../common/first-said.ts';
import { nominalSaid, valveSubject } from '../common/said.ts';
import { otherwiseSaid } from './beside-set-ups.ts';
import type { GroupExplained } from './explain.ts';
import { lackSaid } from './lack-said.ts';
import { lacksOfGroup } from './lacking.ts';
import { type Claim, claimSaid } from './marks.ts';
import { type ArmsInHand, namesLeft, nameTold } from './names.ts';
import { awaySaid } from './ratio-said.ts';
import { asRead, type RatioRead, ratioReadOf, repeatSaid } from './reading.ts';
import type { StampAsked } from './stamp-doubt.ts';
import { isOff, toldBySwap } from './swap-said.ts';
import { alsoLevel, putBackSaid, runningSaid, undottedSaid } from './told-beside.ts';
import { FOR_FLEX, toldOpen, useIt } from './told-open.ts';
import { bandsAgainst, bandTold, wordAgainst } from './word.ts';
import { numberTells, thenSwap } from './would-tell.ts';

/** What is known beside the readings when they are told. */
interface Told {
  /** Nobody turns it now. */
  readonly stopped: boolean;
  /** What the lengths of this very arm leave, where somebody measured them. */
  readonly inHand?: ArmsInHand;
  /** The mark that is asked about: one that the reading is far off, or one without its point. */
  readonly stamp?: StampAsked;
  /** What the arm was sold as is not what is stamped on it, else empty; `told`: what it is sold as was told already. */
  readonly sold: (told: boolean) => string;
}

/** What it is held to be beside the first claim: two names for one arm are told as that. */
function toldBeside(
  explained: GroupExplained,
  claim: Claim,
  read: RatioRead,
  first: Claim,
  how: Told,
): string {
  const of = (each: Claim) =>
    `${awaySaid(read.value, each.ratio)} ${claimSaid(each, nominalSaid(each.ratio))}`;
  // Held to the order first, it reads as that: nothing is left to tell of the two.
  return wordAgainst(explained, claim) === 'differs' || first.to === 'sold-as'
    ? `${asRead(read)}, ${of(claim)}.`
    : `${asRead(read)}, ${of(claim)} and ${of(first)}: a reading cannot tell which of the two it is. ${how.stamp?.odd === undefined ? numberTells(explained) : 'The mark, looked at again, can.'}`;
}

function told(explained: GroupExplained, claim: Claim, read: RatioRead, how: Told): string {
  const { stopped, stamp } = how;
  if (explained.throughLift)
    return `${asRead(read)}, at full lift. The ratio of this valve gear changes through the lift: it is not held to ${claimSaid(claim, nominalSaid(claim.ratio))}.`;
  const [first] = explained.claims;
  if (first !== undefined && first !== claim) return toldBeside(explained, claim, read, first, how);
  const said = claimSaid(claim, nominalSaid(claim.ratio));
  const word = wordAgainst(explained, claim);
  const bands = bandsAgainst(explained, claim);
  const start = `${asRead(read)}, ${awaySaid(read.value, claim.ratio)} ${said}`;
  if (word === 'agrees') return `${asRead(read)}: agrees with ${said}.`;
  if (stamp?.odd !== undefined)
    return `${start}, and level with ${stamp.odd.meets}. Is the ${stamp.odd.stamp.text} on it the ratio?`;
  const bySwap = toldBySwap(explained, read);
  if (bySwap !== undefined && bands.some(isOff)) return `${start}${bySwap}`;
  switch (bandTold(explained, claim)) {
    case 'over':
      return `${start}: ${FOR_FLEX}${alsoLevel(explained, read)}. U${useIt(read)}`;
    case 'under': {
      const level = alsoLevel(explained, read);
      return level === ''
        ? `${start}, which no spring explains. ${thenSwap(explained, stopped)}`
        : `${start}${level}.`;
    }
    default:
      return toldOpen(explained, bands, read, start, stopped);
  }
}

/** The word against the mark has said already that it is level with what it is sold as. */
const isLevelTold = (explained: GroupExplained, claim: Claim, read: RatioRead): boolean =>
  wordAgainst(explained, claim) !== 'agrees' &&
  ['over', 'under'].includes(bandTold(explained, claim) ?? '') &&
  alsoLevel(explained, read) !== '';

function againstClaim(
  explained: GroupExplained,
  claim: Claim,
  lacks: readonly string[],
  how: Told,
): Judgement {
  const { stopped, stamp } = how;
  const { group, result, given } = explained;
  const read = ratioReadOf(explained);
  const ready = result !== undefined && read !== undefined && lacks.length === 0;
  const word = ready ? wordAgainst(explained, claim) : undefined;
  return {
    id: `ratio:${group.key}:${claim.to}`,
    about: valveSubject(group),
    against: { to: claim.to, ratio: claim.ratio },
    ...defined({ word }),
    sentence: ready
      ? `${told(explained, claim, read, how)}${undottedSaid(stamp)}${explained.claims[0] === claim && stamp?.odd === undefined ? how.sold(isLevelTold(explained, claim, read)) : ''}${explained.claims[0] === claim ? otherwiseSaid(explained) : ''}${stopped ? '' : repeatSaid(read)}`
      : `${runningSaid(explained, `not yet set against ${claimSaid(claim, nominalSaid(claim.ratio))}`)} ${firstSaid(lacks)}${putBackSaid(explained)}`,
    lacks,
    restsOn: [...(given?.entryIds ?? [])].sort(),
  };
}

/** Without a mark: names of the list, each with its chance, and never a word. */
function againstNames(
  explained: GroupExplained,
  lacks: readonly string[],
  { stopped, inHand }: Told,
): Judgement[] {
  const { group, result, given } = explained;
  if (result === undefined) return [];
  const read = ratioReadOf(explained);
  const name = namesLeft(result, read)[0]?.ratio;
  return [
    {
      id: `ratio:${group.key}:nominal`,
      about: valveSubject(group),
      against: { to: 'nominal', ratio: name ?? result.ratio.median },
      sentence:
        read === undefined || lacks.length > 0
          ? `${runningSaid(explained, 'no name is given yet')} ${firstSaid(lacks)}${putBackSaid(explained)}`
          : `${nameTold(result, read, inHand)}${stopped ? '' : repeatSaid(read)}`,
      lacks,
      restsOn: [...(given?.entryIds ?? [])].sort(),
    },
  ];
}

/** What one arm on one valve is told by: the mark or what it is sold as; without either, the names that are left. */
export function judgedGroup(explained: GroupExplained, how: Told): Judgement[] {
  const lacks = lacksOfGroup(explained).map(lackSaid);
  if (explained.claims.length === 0) return againstNames(explained, lacks, how);
  return explained.claims.map((claim) => againstClaim(explained, claim, lacks, how));
}
