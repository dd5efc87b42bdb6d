import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import type { NotToRun } from '../assessment.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';

/** A lobe that was read at the lifter, beside the one that its card prints and those of its side. */
export interface LobeOff extends ValvePlace {
  readonly read: number;
  readonly printed: number;
  /** Others of its side read as this one, so that the card is the odd one. */
  readonly alike: boolean;
  /** One other of its side reads as the card prints, so that this lobe is the odd one. */
  readonly alone: boolean;
}

/** Two lobes of one side are level within this: the band of a lobe against its card, either way. */
const LEVEL = (): number => 2 * allowance('card-lobe');
/** So many others that read as this one show that the card is another cam's. */
const OTHERS = 2;

/** Lobes of the other valves of its side, each once: from set-ups and from the sheet. */
function siblings(evidence: Evidence, known: readonly SetUpKnown[], place: ValvePlace): number[] {
  const isSibling = (each: ValvePlace) =>
    sideOfValve(each.valve) === sideOfValve(place.valve) && placeOf(each) !== placeOf(place);
  const found = new Map<string, number>();
  for (const { kind, standing, reading, ...each } of evidence.sheet) {
    if (standing && kind === 'lobe-lift' && reading.value !== undefined && isSibling(each))
      found.set(placeOf(each), reading.value);
  }
  for (const { read } of known) {
    const { lobe, setUp } = read;
    if (isSibling(setUp) && lobe.source === 'indicator' && lobe.value !== undefined)
      found.set(placeOf(setUp), lobe.value);
  }
  return [...found.values()];
}

/** How a lobe that was read at the lifter stands to its card and its side. */
export function lobeOff(
  evidence: Evidence,
  known: readonly SetUpKnown[],
  place: ValvePlace,
  read: number,
): LobeOff | undefined {
  const printed = evidence.card[sideOfValve(place.valve)].lobeLift;
  if (printed === undefined || printed <= 0) return undefined;
  const others = siblings(evidence, known, place);
  const near = (value: number) => others.filter((each) => Math.abs(each - value) <= LEVEL()).length;
  const { cylinder, valve } = place;
  return {
    cylinder,
    valve,
    read,
    printed,
    alike: near(read) >= OTHERS && near(printed) === 0,
    alone: near(printed) > 0 && near(read) === 0,
  };
}

/** Down by the wear limit or more, and not known to be the card’s own mistake. */
export const isDown = ({ read, printed, alike }: LobeOff): boolean =>
  !alike && printed - read >= allowance('lobe-down') - 1e-9;

/** Somebody found that the card is of another cam: then no lobe is down on it. */
export const cardIsOther = (explained: readonly GroupExplained[], place: string): boolean =>
  explained.some(
    ({ group, questions }) =>
      placeOf(group) === place &&
      questions.some(({ code, answered }) => code === 'card-not-this-lobe' && answered?.found === true),
  );

const others = ({ valve }: ValvePlace): string => `two more ${sideOfValve(valve)} valves`;

/** What tells the lobe from its card: the lobes beside it. */
export const readOthers = (place: ValvePlace): string =>
  `Read the lobes of ${others(place)} at the lifter: alike, it is the card; if not, it is this lobe.`;

/** Worn or of another cam: it is not run till that is known; measuring by hand goes on. */
export function lobeNotToRun(off: LobeOff): NotToRun {
  const { cylinder, valve, read, printed, alone } = off;
  const place = placeOf(off);
  const under = `${inches(printed - read)} under the card${alone ? ' and the others of its side' : ''}`;
  return {
    id: `not-to-run:lobe:${cylinder}-${valve}`,
    what: 'run',
    about: valveSubject(off),
    sentence: `Do not run it: the lobe of ${place} reads ${inches(read)}, ${under}.`,
    wayOut: alone
      ? 'A qualified shop looks at the lobe and the lifter’s face, and the oil is looked at for metal.'
      : readOthers(off),
    wayOutAtBench: alone
      ? 'Have a qualified shop look at the lobe and the lifter’s face, and look in the oil for metal.'
      : readOthers(off),
  };
}
