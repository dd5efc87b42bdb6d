import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { isAtLeast } from '../../../kit/within.ts';
import { downOnOthers } from '../../../valve-sheet/lobes-down.ts';
import type { AssessedQuestion, NotToRun, StopReason } from '../../assessment.ts';
import { inches, placeOf, valveSubject } from '../../common/said.ts';
import { valveNames } from '../../common/valve-names.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import { isOfCardLobe } from '../asked/conditions.ts';
import { claimsOn } from '../claims/marks.ts';
import { bandsOf } from './bands.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';
import { siblingLobes } from './lobe-siblings.ts';
import { lobesOfSetUps } from './lobes-read.ts';

/** A lobe that was read at the lifter, beside the one that its card prints and those of its side. */
export interface LobeOff extends ValvePlace {
  readonly read: number;
  readonly printed: number;
  /** The valve lift that the lobe of the card makes with this arm; nothing where nobody said what the arm is. */
  readonly cardLift?: number;
  /** What the arm on it is held to be. */
  readonly claims: readonly number[];
  /** Others of its side read as this one, so that the card is the odd one. */
  readonly alike: boolean;
  /** One other of its side reads as the card prints, or it is down on the others, so that this lobe is the odd one. */
  readonly alone: boolean;
  /** By how much it is down on the others of its side, where that is the wear limit or more. */
  readonly underOthers?: number;
  /** How many of the others of its side were read, and how many are left. */
  readonly others: number;
  readonly left: number;
  /** Somebody looked: it is that card and that lobe. */
  readonly cardHolds?: true;
  /** Read in one set-up alone, and the valve lifts what the card’s lobe makes: it is read again before any other. */
  readonly readAgain?: true;
}

/** Two lobes of one side are level within this: the band of a lobe against its card, either way. */
const LEVEL = (): number => 2 * allowance('card-lobe');
/** So many others that read as this one show that the card is another cam's. */
const OTHERS = 2;

/** How many lobes a side has; of an engine whose cylinders nobody said, more than were read. */
const lobesOfSide = (evidence: Evidence, valve: ValvePlace['valve']): number =>
  (evidence.engine.cylinders ?? Number.POSITIVE_INFINITY) *
  valveNames(evidence).filter((name) => sideOfValve(name) === sideOfValve(valve)).length;

/** Over this lobe the lift makes what such an arm ordinarily has: then it is this lobe that the arm lifts by. */
const isOrdinaryOver = (ratio: number, claims: readonly number[]): boolean =>
  claims.some((claim) => bandsOf(claim, ratio, ratio).every((band) => band === 'within' || band === 'over'));

/** What a lobe that is off its card makes at the valve, and whether a lift of `read` by `ratio` shows anything of it. */
export function shownAt(
  { read, printed, cardLift, claims }: Pick<LobeOff, 'read' | 'printed' | 'cardLift' | 'claims'>,
  ratio: number,
): { readonly makes: number; readonly isShown: boolean } {
  const makes = (read - printed) * ratio;
  if (isOrdinaryOver(ratio, claims)) return { makes, isShown: true };
  const missing = cardLift === undefined ? undefined : read * ratio - cardLift;
  return { makes, isShown: missing === undefined || Math.abs(missing - makes) <= Math.abs(missing) };
}

/** So many passes are one reading of a lobe (common practice, no source). */
const PASSES = 3;

/** The lobe of this valve was read a second time: in another set-up, on the sheet too, or in more passes. */
function isReadTwice(evidence: Evidence, known: readonly SetUpKnown[], place: ValvePlace): boolean {
  const ofSetUps = lobesOfSetUps(known).filter((each) => placeOf(each) === placeOf(place));
  const ofSheet = evidence.sheet.filter(
    (each) => each.standing && each.kind === 'lobe-lift' && placeOf(each) === placeOf(place),
  );
  return ofSetUps.length + ofSheet.length > 1 || ofSetUps.some(({ passes }) => passes.length > PASSES);
}

/** The arm over a lobe: the ratio that it reads there, and what it is held to be. */
interface ArmOver {
  readonly ratio?: number;
  readonly claims: readonly number[];
}

/** That of the newest lift of the valve in a set-up. */
function armOver(evidence: Evidence, known: readonly SetUpKnown[], place: ValvePlace, lobe: number): ArmOver {
  const newest = known.findLast(
    ({ read }) => placeOf(read.setUp) === placeOf(place) && read.lift !== undefined,
  )?.read;
  if (newest === undefined) return { claims: [] };
  const { armId, soldAsThen } = newest.setUp;
  return {
    claims: claimsOn(evidence, armId, soldAsThen).map(({ ratio }) => ratio),
    ...(newest.lift === undefined ? {} : { ratio: newest.lift.read / lobe }),
  };
}

/** How a lobe that was read at the lifter stands to its card and its side; `ofSheet`: the arm over it, read there. */
export function lobeOff(
  evidence: Evidence,
  known: readonly SetUpKnown[],
  place: ValvePlace,
  read: number,
  ofSheet?: ArmOver,
): LobeOff | undefined {
  const { lobeLift: printed } = evidence.card[sideOfValve(place.valve)];
  if (printed === undefined || printed <= 0) return undefined;
  const others = siblingLobes(evidence, known, place);
  const near = (value: number) => others.filter((each) => Math.abs(each - value) <= LEVEL()).length;
  const { cylinder, valve } = place;
  const underOthers = downOnOthers(read, others);
  const { ratio, claims } = ofSheet ?? armOver(evidence, known, place, read);
  const [claim] = claims;
  const cardLift = claim === undefined ? undefined : printed * claim;
  const isUnshown =
    ratio !== undefined &&
    Math.abs(read - printed) > LEVEL() &&
    !shownAt({ read, printed, claims, ...defined({ cardLift }) }, ratio).isShown;
  return {
    cylinder,
    valve,
    read,
    printed,
    claims,
    alike: underOthers === undefined && near(read) >= OTHERS && near(printed) === 0,
    alone: underOthers !== undefined || (near(printed) > 0 && near(read) === 0),
    ...defined({ underOthers, cardLift }),
    ...(isUnshown && !isReadTwice(evidence, known, place) ? { readAgain: true } : {}),
    others: others.length,
    left: lobesOfSide(evidence, valve) - 1 - others.length,
  };
}

/** Down by the wear limit or more, and not known to be the card’s own mistake. */
export const isDown = ({ read, printed, alike }: LobeOff): boolean =>
  !alike && isAtLeast(printed - read, allowance('lobe-down'));

/** What says that the lobe lift of the card is wrong; a slip of a reading rests on that reading. */
const isCardWrong = (question: AssessedQuestion): boolean =>
  question.answered?.found === true && isOfCardLobe(question);

/** What was answered of the card that a lobe is off: it is of another cam or was misread, or it is that card and that lobe. */
export type CardSaid = 'other' | 'holds';

/** Somebody looked whether the card is of this cam, and it is. */
const isCardRight = ({ code, answered }: AssessedQuestion): boolean =>
  code === 'card-not-this-lobe' && answered?.found === false;

/** Whether a lobe that is off the card of its side is off the right one; undefined where nobody said. */
export function cardSaid(explained: readonly GroupExplained[], place: string): CardSaid | undefined {
  const asked = explained
    .filter(({ group }) => placeOf(group) === place)
    .flatMap(({ questions }) => questions);
  if (asked.some(isCardWrong)) return 'other';
  return asked.some(isCardRight) ? 'holds' : undefined;
}

/** Somebody found that the card is of another cam, or was misread: then no lobe is down on it. */
export const cardIsOther = (explained: readonly GroupExplained[], place: string): boolean =>
  cardSaid(explained, place) === 'other';

/** What tells the lobe from its card: the lobes beside it; of two that do not agree the rest of the side. */
export function readOthers({
  valve,
  others = 0,
  alike = false,
  readAgain = false,
}: Pick<LobeOff, 'valve'> &
  Partial<Pick<LobeOff, 'others' | 'alike'>> & { readonly readAgain?: boolean }): string {
  const side = sideOfValve(valve);
  if (readAgain && !alike)
    return 'Read its lobe once more at the lifter: the valve lifts what the lobe of the card makes.';
  if (alike)
    return `Look at the number on the cam and on the card: the other ${side} lobes read as this one.`;
  if (others >= OTHERS)
    return `Read the other ${side} lobes at the lifter too: those read so far do not agree with one another.`;
  const more = others === 1 ? `the lobe of one more ${side} valve` : `the lobes of two more ${side} valves`;
  return `Read ${more} at the lifter: alike, it is the card; if not, it is this lobe.`;
}

/** What is done about it first: the lobe itself read again, or those beside it. */
export const lobeAction = ({ readAgain, alike }: LobeOff): 'lobe-again' | 'lobe-siblings' =>
  readAgain === true && !alike ? 'lobe-again' : 'lobe-siblings';

/** The lobes beside it have not told yet, and there are some left to read. */
export const isOpen = ({ alone, alike, left, cardHolds }: LobeOff): boolean =>
  !alone && !alike && cardHolds !== true && left > 0;

/** A stop says of this lobe that nobody turns it: that it is not run goes without saying. */
export const isStopped = (off: LobeOff, stop: readonly StopReason[]): boolean =>
  stop.some(
    ({ code, about }) => code === 'lobe-worn' && about.of === 'valve' && placeOf(about) === placeOf(off),
  );

/** The word of the question on which valve something was read: its lobe is known, and whose it is not. */
export const WHOSE_VALVE = 'valve-swapped';

const TOUCH = 'Touch the valve while its lobe lifts it: on which valve it was read comes first.';

/** So far under its card, unless it was read on the other valve: it is not run till that is known either. */
export const whoseNotToRun = (
  { cylinder, valve, read, printed }: LobeOff,
  step: 'ratio' | 'sheet',
): NotToRun => ({
  id: `not-to-run:whose-lobe:${cylinder}-${valve}`,
  what: 'run',
  about: valveSubject({ cylinder, valve }),
  sentence: `Do not run it: the lobe of ${placeOf({ cylinder, valve })} reads ${inches(read)}, ${inches(printed - read)} under the card, unless it was read on the other valve.`,
  todo: { action: WHOSE_VALVE, step, settles: WHOSE_VALVE },
  wayOut: TOUCH,
});

/** Worn or of another cam: it is not run till that is known; measuring by hand goes on. */
export function lobeNotToRun(off: LobeOff): NotToRun {
  const { cylinder, valve, read, printed, alone, underOthers } = off;
  const open = isOpen(off);
  const place = placeOf(off);
  const besides =
    underOthers === undefined
      ? alone
        ? ' and the others of its side'
        : ''
      : ` and ${inches(underOthers)} under the others of its side`;
  const under = `${inches(printed - read)} under the card${besides}`;
  return {
    id: `not-to-run:lobe:${cylinder}-${valve}`,
    what: 'run',
    about: valveSubject(off),
    sentence: `Do not run it: the lobe of ${place} reads ${inches(read)}, ${under}.`,
    ...(open ? { todo: { action: lobeAction(off), step: 'ratio' } } : { saidFirst: true }),
    wayOut: open
      ? readOthers(off)
      : 'A qualified shop looks at the lobe and the lifter’s face, and the oil is looked at for metal.',
    wayOutAtBench: open
      ? readOthers(off)
      : 'Have a qualified shop look at the lobe and the lifter’s face, and look in the oil for metal.',
  };
}
