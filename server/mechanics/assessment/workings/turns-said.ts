import { EQUAL } from '../../kit/nearest.ts';
import { ALIKE } from '../common/found-twice.ts';
import { lashSaid } from '../common/gap-said.ts';
import { bareInches, inches, listed, lowerFirst, placeOf, upperFirst } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { ValvePlace } from '../evidence.ts';
import { type Band, bandSaid, isOverBand } from './over-band.ts';
import { countSaid, placeSaid, preloadWithin, short, turnSaid, zeroSaid } from './said.ts';
import type { TurnMade } from './turn-made.ts';

const span = ({ lashFound = 0, lashWanted = 0 }: TurnsEvidence): string =>
  `from ${bareInches(lashFound)} to ${inches(lashWanted)}`;

const AGAIN = 'Read it again once locked, at the same heat.';

/** What was read since it was set: it has held, or it is found otherwise. */
function sinceSaid(own: TurnMade['made']): string[] {
  const named = (held: boolean) =>
    listed(
      own.flatMap(({ since, ...place }) =>
        since?.held === held ? [`${placeOf(place)} ${lashSaid(since.gap)}`] : [],
      ),
    );
  const [held, other] = [named(true), named(false)];
  return [
    ...(held === '' ? [] : [`It has held, read again since: ${held}.`]),
    ...(other === '' ? [] : [`Found since: ${other}.`]),
  ];
}

/** Set further from what was wanted than it was found, on the side that it was found on. */
function isWrongWay(
  { lashFound = 0, lashWanted = 0 }: TurnsEvidence,
  { gap }: TurnMade['made'][number],
): boolean {
  const set = gap.value ?? gap.low ?? gap.high;
  if (set === undefined || Math.abs(lashFound - lashWanted) <= EQUAL) return false;
  return lashFound > lashWanted ? set > lashFound + EQUAL : set < lashFound - EQUAL;
}

/** What it was set to, beside what was wanted. */
function setSaid(set: TurnsEvidence, { made }: TurnMade): string[] {
  const own = made.filter(({ how }) => how === 'set');
  const asWanted = own.filter((each) => each.asWanted);
  const wrongWay = own.filter((each) => isWrongWay(set, each));
  const others = own.filter((each) => !each.asWanted && !wrongWay.includes(each));
  return [
    ...(asWanted.length === 0
      ? []
      : [`The turn ${span(set)} was made: set at ${listed(asWanted.map(placeOf))}.`]),
    ...wrongWay.map(
      (each) =>
        `${upperFirst(placeOf(each))} was set to ${lashSaid(each.gap)}, where ${inches(set.lashWanted ?? 0)} was wanted: it was turned the other way. Turn it back past where it was, and set it again.`,
    ),
    ...others.map(
      (each) =>
        `${upperFirst(placeOf(each))} was set to ${lashSaid(each.gap)}, where ${inches(set.lashWanted ?? 0)} was wanted: the turn ${span(set)} is not made any more.`,
    ),
    ...sinceSaid(own),
    ...(own.every((each) => each.since !== undefined || wrongWay.includes(each)) ? [] : [AGAIN]),
  ];
}

/** From no gap at all a turn is counted from nowhere: the valve may be held open as well as just shut. */
export const isFromNoGap = ({ lashFound }: TurnsEvidence): boolean =>
  lashFound !== undefined && lashFound <= EQUAL;

/** Valves that the same turn is not made on. */
const notSetSaid = ({ notSet }: Pick<TurnMade, 'notSet'>): string =>
  notSet.length === 0 ? '' : ` Not there yet: ${listed(notSet.map(({ why }) => why))}.`;

/** A turn that was made is history: whoever made it once more would be as far off again. */
function byGaps(set: TurnsEvidence, told: TurnMade): string {
  const { waiting, made } = told;
  const places = listed(waiting.map(placeOf));
  if (isFromNoGap(set) && (waiting.length > 0 || made.length === 0))
    return `${places === '' ? 'No gap was found' : `No gap was found at ${places}`}: how far that valve is held open nobody knows. Back off until there is a gap, read it, and work the turn out from there.`;
  if (waiting.length > 0)
    return `${places}: ${lowerFirst(turnSaid(set.turns))}: the lash goes ${span(set)}.${notSetSaid(told)}`;
  if (made.length === 0 && told.notSet.length > 0)
    return `Nothing is told of these turns yet: ${listed(told.notSet.map(({ why }) => why))}.`;
  if (made.length === 0)
    return `${turnSaid(set.turns)}: the lash goes ${span(set)}. Which valve was found so?`;
  const found = listed(made.filter(({ how }) => how === 'found').map(placeOf));
  return [
    ...setSaid(set, told),
    ...(found === '' ? [] : [`No turn holds ${span(set)} any more: found otherwise since at ${found}.`]),
  ]
    .join(' ')
    .concat(notSetSaid(told));
}

/** Over the band by less than turns are counted to, it is over all the same, and not called too far. */
function overSaid(set: TurnsEvidence, preload: number, band: Band): string {
  const [each, told] = [preload / set.turns, bandSaid(band)];
  const turns = `about ${short(band.from / each, 2)} to ${short(band.to / each, 2)} turn`;
  return preload < band.to + preloadWithin(set)
    ? `just over the ${named(band)} ${told}, ${turns}`
    : `too far. The ${named(band)} is ${told}, ${turns}`;
}

const named = ({ wanted }: Band): string => (wanted ? 'wanted' : 'usual');

/** @param asked it was answered that the lifter’s maker asks for so much */
function preloadTurned(set: TurnsEvidence, preload: number, { band, asked }: Asked): string {
  const count = countSaid(set.turns);
  // At zero lash the plunger stands against its clip: it does not follow.
  if (preload < 0)
    return `${count} backed off from zero lash opens a gap of ${inches(-preload)} at the pushrod, ${inches(-preload * set.ratio)} at the valve. The plunger is against its clip, and does not follow.`;
  if (!isOverBand(set, band) || asked) {
    const told = !asked
      ? placeSaid({ ...set, ...band, preload })
      : band.wanted
        ? 'as wanted'
        : 'as its maker asks';
    return `${turnSaid(set.turns)} from zero lash: that presses the plunger ${inches(preload)}, ${told}.${zeroSaid(set)}`;
  }
  return `${count} past zero lash ${set.turns > 1 ? 'press' : 'presses'} the plunger ${inches(preload)}: ${overSaid(set, preload, band)}.${zeroSaid(set)}`;
}

/** What the turns of a plunger are told against. */
interface Asked {
  readonly band: Band;
  /** It was answered that so much is asked for. */
  readonly asked: boolean;
  /** Valves of the log whose gap is less than is closed; left out where the log has no gap. */
  readonly shut?: readonly ValvePlace[];
}

/** Of a solid adjuster: where the gap is less than what is closed the valve is held open. */
function shutSaid(shut: Asked['shut']): string {
  if (shut === undefined) return ' With less of a gap than that the valve is held open: read the gap first.';
  return shut.length === 0
    ? ''
    : ` Not at ${listed(shut.map(placeOf))}: with less of a gap the valve is held open.`;
}

/** The gap found is the one that is wanted, nearer than feelers tell two apart: `0.5 mm` against `.020 in`. */
export const isAsWanted = ({ lashFound, lashWanted }: TurnsEvidence): boolean =>
  lashFound !== undefined && lashWanted !== undefined && Math.abs(lashFound - lashWanted) <= ALIKE;

/** What an adjuster is turned, in a sentence or two that can be read aloud; never a turn that was made or goes too far. */
export function turnsSaid(set: TurnsEvidence, made: TurnMade, against: Asked): string {
  const { turns, lashFound, lashWanted, lashChange, preload } = set;
  const byLash = lashFound !== undefined && lashWanted !== undefined;
  if (Math.abs(turns) * 360 < 0.05 || isAsWanted(set))
    return byLash ? 'No turn is needed: the lash is the one that is wanted.' : 'No turn is needed.';
  if (byLash) return byGaps(set, made);
  if (preload !== undefined) return preloadTurned(set, preload, against);
  const change = lashChange ?? 0;
  return `${turnSaid(turns)}: that ${change < 0 ? 'closes' : 'opens'} the lash by ${inches(Math.abs(change))}.${change < 0 ? shutSaid(against.shut) : ''}${notSetSaid(made)}`;
}
