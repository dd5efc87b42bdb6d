import type { Action } from '../../../explain-readings/types.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import { inDoubt, keptWords } from '../../common/asked.ts';
import { listed, lowerFirst, upperFirst } from '../../common/said.ts';
import { ABOUT_TURNS, COUNT_DOES_NOT_FIT } from '../asked/counted.ts';
import { ratioOnBox } from '../claims/held-as.ts';
import { WITHIN } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import { lacksOfGroup, restingOn } from '../compared/lacking.ts';
import { bandsAgainst, bandTold, wordAgainst } from '../compared/word.ts';
import { testOfOtherwise } from './beside-set-ups.ts';
import { askFor, NOT_NOW, type Telling } from './ratio-said.ts';

const ENOUGH_PASSES = 3;

/** Half of what a ratio may be off its mark by: a tool that is coarser than this of the lift cannot tell the two. */
const COARSE = WITHIN / 2;

/** Read without a dial, and so coarsely that only a dial can tell: no other reading is worth its time before. */
function finerTool(explained: GroupExplained): Telling | undefined {
  const read = restingOn(explained)?.read;
  if (read === undefined || isDial(read.setUp.tool)) return undefined;
  const lift = read.valve.used[0]?.value ?? 0;
  return read.setUp.errorLimit > COARSE * lift ? 'dial-indicator' : undefined;
}

/** What narrows a reading that the inference has no more to ask of: the lobe as it is, then more passes. */
function narrower(explained: GroupExplained): Telling | undefined {
  const read = restingOn(explained)?.read;
  if (read === undefined) return undefined;
  if (read.lobe.source !== 'indicator') return 'lobe-at-lifter';
  // A pass without a dial has no hand to look at: it says no more than those before.
  if (!isDial(read.setUp.tool)) return 'dial-indicator';
  return read.valve.used.length < ENOUGH_PASSES ? 'one-more-pass' : undefined;
}

const OF_COUNT: ReadonlySet<string> = new Set([
  'turn-too-many',
  'turn-too-few',
  'hand-read-backwards',
  'turn-miscounted',
]);
const NOT_FIT: ReadonlySet<string> = new Set([COUNT_DOES_NOT_FIT]);

/** Nobody read the small hand, and a mistake of the hands is asked about: one pass with it settles that in minutes. */
function smallHand(explained: GroupExplained): Telling | undefined {
  const resting = restingOn(explained);
  if (resting === undefined || !isDial(resting.read.setUp.tool)) return undefined;
  const isAsked = (codes: ReadonlySet<string>) =>
    [...explained.questions, ...resting.questions].some(
      ({ code, answered }) => codes.has(code) && answered === undefined,
    );
  const { used } = resting.read.valve;
  // It was looked at, and that pass was the test of it: something else tells more.
  if (resting.questions.some(({ code, answered }) => ABOUT_TURNS.has(code) && answered?.found === false))
    return undefined;
  // Counted, and still apart by what a turn makes: once more with the small hand written down, and then something else.
  if (used.some(({ id }) => resting.counted.has(id)))
    return isAsked(NOT_FIT) && used.length <= ENOUGH_PASSES ? 'one-more-pass' : undefined;
  return isAsked(OF_COUNT) ? 'one-more-pass' : undefined;
}

/** The reading that would tell more, and was not taken that way already. */
function tellingReading(explained: GroupExplained): Telling | undefined {
  return (
    finerTool(explained) ??
    (explained.lobeAgain === true ? 'lobe-at-lifter' : undefined) ??
    smallHand(explained) ??
    explained.result?.nextReading?.action ??
    narrower(explained)
  );
}

const SWAP = 'rocker-on-another-valve';

/** Where nothing further would tell, the swap test is left: the error that follows the rocker is the part. */
const swap = ({ group }: GroupExplained): Action | undefined => (group.readElsewhere ? undefined : SWAP);

/** The reading that would tell, and where the readings of this valve are exhausted the swap; in headline and next alike. */
function whatTells(explained: GroupExplained): Telling | undefined {
  const [claim] = explained.claims;
  const bands = claim === undefined ? [] : bandsAgainst(explained, claim);
  const isOff = bands.some((band) => band !== 'within' && band !== 'over');
  return tellingReading(explained) ?? (isOff ? swap(explained) : undefined);
}

/**
 * The reading that is worth taking now. Once the ratio is told none is turned for it again: within the mark, or
 * ordinary over it, only the entries are read back. What reads under, or far off, is read again and then swapped.
 */
export function readingWorthTaking(explained: GroupExplained): Telling | undefined {
  const [claim] = explained.claims;
  const weighed = finerTool(explained) ?? smallHand(explained) ?? explained.result?.nextReading?.action;
  if (claim === undefined || explained.result === undefined || lacksOfGroup(explained).length > 0)
    return weighed;
  if (explained.group.told !== undefined) return undefined;
  const word = wordAgainst(explained, claim);
  const bands = bandsAgainst(explained, claim);
  if (word === 'agrees') return undefined;
  if (bandTold(explained, claim) === 'over')
    return weighed === 'read-back' || weighed === 'dial-indicator' ? weighed : undefined;
  if (bands.every((band) => band === 'within' || band === 'over')) return weighed;
  return whatTells(explained);
}

const SWAP_TELLS = 'What would tell: the swap test, this rocker on another valve and another one here.';

/** A label that says no more than what the arm is held to be already: nothing is left to look up by it. */
function saysTheSame(label: string, { claims }: GroupExplained): boolean {
  const ratio = ratioOnBox(label);
  const others = label.replace(/\d[.,]\d{1,3}/g, '');
  return !/\d/.test(others) && claims.some((claim) => claim.ratio === ratio);
}

/** What is left where readings can't tell; a number that is on record already is not asked for again. */
function toLookUp(explained: GroupExplained): string | undefined {
  const { arm } = explained;
  const onBox = arm?.boxLabel.trim() ?? '';
  const label = saysTheSame(onBox, explained) ? '' : onBox;
  const number = arm?.otherNumber.trim() ?? '';
  const known = [
    ...(label === '' ? [] : [`the box label “${keptWords(label)}”`]),
    ...(number === '' ? [] : [`the number “${keptWords(number)}” on the arm`]),
  ];
  return known.length === 0 ? undefined : `look up ${listed(known)}`;
}

function byNumber(explained: GroupExplained): string {
  const found = toLookUp(explained);
  return found === undefined
    ? 'More readings won’t tell; the part number can.'
    : `More readings won’t tell: ${found}.`;
}

/** Which of two names an arm has: no reading is said to be worth nothing by it. */
export const numberTells = (explained: GroupExplained): string =>
  upperFirst(`${toLookUp(explained) ?? 'the part number can'}.`);

const SWAP_TEST =
  'the swap test, this rocker on another valve and another one here: what follows the rocker is the part, what stays is the valve or the reading.';

/** What reads under, and no spring explains it: what is next first, and then the swap. */
export function thenSwap(explained: GroupExplained, stopped: boolean): string {
  if (stopped) return NOT_NOW;
  if (explained.group.readElsewhere) return wouldTell(explained, stopped);
  const isNext =
    explained.questions.every((each) => !inDoubt(each)) &&
    testOfOtherwise(explained) === undefined &&
    whatTells(explained) === SWAP;
  return isNext ? `What would tell: ${SWAP_TEST}` : `${wouldTell(explained, stopped)} Then ${SWAP_TEST}`;
}

/** `What would tell: read the lobe lift at the lifter body.` */
export function wouldTell(explained: GroupExplained, stopped: boolean): string {
  if (stopped) return NOT_NOW;
  const test = explained.questions.find(inDoubt)?.test ?? testOfOtherwise(explained);
  if (test !== undefined) return `What would tell: ${lowerFirst(test)}`;
  const action = whatTells(explained);
  if (action === undefined) return byNumber(explained);
  if (action === SWAP) return SWAP_TELLS;
  return `What would tell: ${lowerFirst(askFor(action))}`;
}
