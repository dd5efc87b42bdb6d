import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { Judgement } from '../../assessment.ts';
import { byPlace, listed, placeOf, ratioSaid } from '../../common/said.ts';
import { isSince, wasThere } from '../../common/since.ts';
import type { AnswerEvidence, Evidence, Side, Spring, ValvePlace } from '../../evidence.ts';
import type { SheetRatioDetail } from '../rows/detail.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { isInScope, sideAnswers } from './group-answered.ts';

/** `side-again:…`: what is next is found by it. */
export const SIDE_AGAIN = 'side-again:';

/** Valves of a side that was not read right, as was answered, once some of them were read again. */
interface SideAgain {
  readonly spring: Spring;
  readonly again: readonly SheetRow[];
  readonly left: readonly SheetRow[];
}

const lotOf = ({ lifts }: SheetRow, spring: string): LiftLot | undefined =>
  lifts.find((lot) => lot.spring === spring && lot.readings.length > 0);

function ofAnswer(
  rows: readonly SheetRow[],
  spring: Spring,
  answer: AnswerEvidence,
  own: readonly SheetRow[],
) {
  const isAgain = (row: SheetRow) =>
    lotOf(row, spring)?.readings.some((each) => isSince(each, answer)) === true;
  const isLeft = (row: SheetRow) =>
    !isAgain(row) && lotOf(row, spring)?.readings.some((each) => wasThere(each, answer)) === true;
  return { spring, again: own.filter(isAgain), left: rows.filter((row) => own.includes(row) && isLeft(row)) };
}

/** Of each answer that all of a side were not read right: those that were read since, and those that are left. */
export function sidesAgain(evidence: Evidence, rows: readonly SheetRow[]): SideAgain[] {
  return sideAnswers(evidence).flatMap(({ answer, scope }) => {
    if (scope.kind !== 'valve-lift') return [];
    const springs = new Set(rows.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)));
    return [...springs].flatMap((spring) => {
      const own = rows.filter(({ cylinder, valve }) =>
        isInScope(scope, { kind: 'valve-lift', spring, cylinder, valve }),
      );
      const found = ofAnswer(rows, spring, answer, own);
      return found.again.length > 0 && found.left.length > 0 ? [found] : [];
    });
  });
}

const named = (rows: readonly ValvePlace[]): string => listed([...rows].sort(byPlace).map(placeOf));

/** What those that were read again come to, and how many are left: these are set against no others. */
export function sidesAgainTold(all: readonly SideAgain[], ratios: readonly SheetRatioDetail[]): Judgement[] {
  return all.map(({ spring, again, left }): Judgement => {
    const sides = new Set<Side>([...again, ...left].map(({ valve }) => sideOfValve(valve)));
    const [side] = sides;
    const isOne = sides.size === 1 && side !== undefined;
    const places = new Set(again.map(placeOf));
    const middle = medianKnown(
      ratios.filter((each) => each.spring === spring && places.has(placeOf(each))).map(({ value }) => value),
    );
    const to =
      middle === undefined
        ? ''
        : again.length === 1
          ? ` comes to ${ratioSaid(middle)}`
          : ` come to about ${ratioSaid(middle)}`;
    const who = again.length > 2 ? `The ${again.length} that were read again` : `${named(again)} read again`;
    const rest =
      left.length > 2
        ? `The other ${left.length} were not read right, as was answered, and are still to be read again.`
        : `${named(left)} ${left.length === 1 ? 'was' : 'were'} not read right, as was answered: still to be read again.`;
    return {
      id: `${SIDE_AGAIN}${spring}:${isOne ? side : 'both'}`,
      about: isOne ? { of: 'side', valve: side } : { of: 'build' },
      against: { to: 'siblings' },
      sentence: `${who}${to === '' ? ': no ratio yet' : to}. ${rest}`,
      lacks: ['another reading of the others'],
      restsOn: [...again, ...left]
        .flatMap((row) => lotOf(row, spring)?.readings.map(({ id }) => id) ?? [])
        .sort(),
    };
  });
}
