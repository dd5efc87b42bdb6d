import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance, allowanceSource } from '../../../kit/allowances.ts';
import { isAtLeast } from '../../../kit/within.ts';
import type { AssessedQuestion, NotToRun, StopReason } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { inches, keyOf, placeOf, subjectSaid, valveSubject } from '../../common/said.ts';
import { wayOutOf } from '../../common/way-out.ts';
import type { Evidence, EvidenceEntry, ValvePlace } from '../../evidence.ts';
import type { LobeOfSetUp } from '../../ratio/compared/lobes-read.ts';
import { isLifted } from '../../stop.ts';
import type { SheetSideDetail } from '../rows/detail.ts';
import type { SheetRow } from '../rows/rows.ts';
import { middleOfSiblings } from '../rows/siblings-middle.ts';

/** What asks whether a lobe is worn, with the stop that stands until it is answered. */
interface Asked {
  readonly question: AssessedQuestion;
  readonly stop: StopReason;
}

interface WornLobe extends Asked {
  readonly place: ValvePlace;
  /** How far it is down on the others [m]. */
  readonly by: number;
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'It is worn',
    changes: 'The stop stands until the desk lifts it, with the reason.',
    // It was read right: there is nothing to enter again.
    leadsTo: 'nothing',
  },
  {
    code: 'not-found',
    label: 'It was read short',
    changes: 'The desk strikes the reading out, with the reason: the stop goes with it.',
  },
];

/** The valve over it lifts as its siblings do, where a lobe so far down would take it beyond what they differ by. */
function fullValve(row: SheetRow | undefined, rows: readonly SheetRow[], by: number): boolean {
  if (row === undefined) return false;
  return row.lifts.some(({ spring, figure: { value } }) => {
    const middle = middleOfSiblings(rows, row, spring, 'lifts');
    // The lever makes more of it at the valve, never less.
    return value !== undefined && middle !== undefined && middle - value < by - allowance('repeat');
  });
}

/** Found worn, and its stop lifted: it was read right, and stays on record until the cam is another one. */
export const wornNotToRun = (evidence: Evidence, worn: readonly Asked[]): NotToRun[] =>
  worn
    .filter(({ question, stop }) => question.answered?.found === true && isLifted(stop, evidence))
    .map(({ stop }) => ({
      id: `not-to-run:lobe-worn:${keyOf(stop.about)}`,
      what: 'run',
      about: stop.about,
      sentence: `Do not run it: ${stop.about.of === 'side' ? `some of the ${stop.about.valve} lobes are worn` : `the lobe of ${subjectSaid(stop.about)} is worn`}.`,
      wayOut:
        'Cam and lifters are changed, and the oil is looked at for what wore off. Then the lobes are read again; the desk strikes the old reading out, with the reason.',
      wayOutAtBench:
        'Have cam and lifters changed, and the oil looked at for what wore off. Then read the lobes again.',
    }));

/** A lobe that is down on its siblings. `full`: its valve lifts like the others all the same. */
interface LobeDown {
  readonly place: ValvePlace;
  readonly by: number;
  readonly step: 'sheet' | 'ratio';
  readonly full: boolean;
}

const wornAsked = (
  evidence: Evidence,
  { place, by, step, full }: LobeDown,
  restsOn: readonly string[],
): AssessedQuestion =>
  asked(
    {
      code: 'lobe-worn',
      weight: 'weak',
      ask: full
        ? `Was the lobe of ${placeOf(place)} read short? Its valve lifts like the others.`
        : `Is the lobe of ${placeOf(place)} worn, or was it read short?`,
      // One question, whatever is read of the valve later.
      knownBy: `is the lobe of ${placeOf(place)} worn or was it read short`,
      size: `It is ${inches(by)} under the others; ${inches(allowance('lobe-down'))} is the limit (${allowanceSource('lobe-down')}).`,
      test: 'With nothing turned: look at the lifter’s face, and in the oil for metal.',
      restsOn,
    },
    { about: valveSubject(place), step, answers: evidence.answers, choices: CHOICES },
  );

function wornStop({ place, by, step, full }: LobeDown, { answered }: AssessedQuestion) {
  const at = placeOf(place);
  return {
    id: `stop:lobe-worn:${place.cylinder}-${place.valve}`,
    code: 'lobe-worn',
    step,
    about: valveSubject(place),
    sentence: full
      ? `Do not turn it yet: the lobe of ${at} reads ${inches(by)} down, and its valve lifts like the others. One of the two was misread.`
      : `Do not turn it: the lobe of ${at} is ${inches(by)} down on the others.`,
    ...wayOutOf('look at the lifter’s face and in the oil for metal', answered !== undefined),
    from: 'readings',
    answered: answered !== undefined,
  } as const;
}

type EntriesOf = (isOurs: (place: ValvePlace) => boolean) => readonly EvidenceEntry[];

const entriesIn =
  (rows: readonly SheetRow[], ofSetUps: readonly LobeOfSetUp[]): EntriesOf =>
  (isOurs) => [
    ...rows.filter(isOurs).flatMap(({ lobes }) => lobes),
    ...ofSetUps.filter(isOurs).flatMap(({ passes }) => passes),
  ];

const OF_SIDE: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'Some of them are worn',
    changes: 'The stop stands until the desk lifts it, with the reason.',
    leadsTo: 'nothing',
  },
  {
    code: 'not-found',
    label: 'Some were read wrong',
    changes: 'The desk strikes those readings out, with the reason: the stop goes with them.',
  },
];

function apartAsked(
  evidence: Evidence,
  { side, lobesApart }: SheetSideDetail,
  entriesOf: EntriesOf,
): Asked[] {
  if (lobesApart === undefined) return [];
  const valve = sideOfValve(side);
  const entries = entriesOf((each) => sideOfValve(each.valve) === valve);
  const restsOn = entries.map(({ id }) => id).sort();
  const apart = inches(lobesApart.apart);
  const question = asked(
    {
      code: 'lobe-worn',
      weight: 'weak',
      ask: `Are some of the ${valve} lobes worn, or were some read wrong?`,
      knownBy: 'are some of the lobes worn or were some read wrong',
      size: `They lie ${apart} apart, and too few of them go together to tell which are down; ${inches(allowance('lobe-down'))} is the limit (${allowanceSource('lobe-down')}).`,
      test: 'With nothing turned: look at the lifters’ faces, and in the oil for metal.',
      restsOn,
    },
    {
      about: { of: 'side', valve },
      step: entries.some(({ id }) => evidence.sheet.some((each) => each.id === id)) ? 'sheet' : 'ratio',
      answers: evidence.answers,
      choices: OF_SIDE,
    },
  );
  const [first] = entries.toSorted((a, b) => a.line - b.line);
  const stop: StopReason = {
    id: `stop:lobe-worn:${valve}`,
    code: 'lobe-worn',
    step: question.step,
    about: question.about,
    sentence: `Do not turn it: the ${valve} lobes lie ${apart} apart, and which of them are down can’t be told.`,
    ...wayOutOf('look at the lifters’ faces and in the oil for metal', question.answered !== undefined),
    from: 'readings',
    answered: question.answered !== undefined,
    ...defined({ entryId: first?.id, line: first?.line }),
    restsOn,
  };
  return [{ question, stop }];
}

/** The lobes are the same on each spring: each side’s are told once. */
const eachSideOnce = (sides: readonly SheetSideDetail[]): SheetSideDetail[] => [
  ...new Map(sides.map((side) => [side.side, side])).values(),
];

/** Lobes of a side of which some are down by the wear limit or more, with no middle to tell which: asked of the side. */
export const lobesApartAsked = (
  evidence: Evidence,
  sides: readonly SheetSideDetail[],
  rows: readonly SheetRow[],
  ofSetUps: readonly LobeOfSetUp[],
): Asked[] => eachSideOnce(sides).flatMap((side) => apartAsked(evidence, side, entriesIn(rows, ofSetUps)));

/** By how much it is told to be low among the odd valves: of one lobe one figure is said, while that is past the limit too. */
function asOdd({ odd }: SheetSideDetail, place: ValvePlace, by: number): number {
  const off = odd.find((each) => placeOf(each) === placeOf(place))?.lobeOff;
  return off !== undefined && isAtLeast(-off, allowance('lobe-down')) ? -off : by;
}

/** A lobe that is down on its siblings by the wear limit or more: nobody runs it on. */
export function wornLobes(
  evidence: Evidence,
  sides: readonly SheetSideDetail[],
  rows: readonly SheetRow[],
  ofSetUps: readonly LobeOfSetUp[],
): WornLobe[] {
  const entriesOf = entriesIn(rows, ofSetUps);
  return eachSideOnce(sides).flatMap((each) =>
    each.lobesDown.map(({ cylinder, valve, by: down }): WornLobe => {
      const place = { cylinder, valve };
      const by = asOdd(each, place, down);
      const row = rows.find((each) => placeOf(each) === placeOf(place));
      const entries = entriesOf((each) => placeOf(each) === placeOf(place));
      const own = entries.map(({ id }) => id).sort();
      const step = (row?.lobes ?? []).length > 0 ? ('sheet' as const) : ('ratio' as const);
      // A lobe that is down takes its valve down with it: one whose valve is full may have been read short.
      const lobe = { place, by, step, full: fullValve(row, rows, by) };
      const question = wornAsked(evidence, lobe, own);
      // It is down on its siblings: without their lobes nothing is said of this one.
      const siblings = entriesOf(({ valve: other }) => sideOfValve(other) === sideOfValve(each.side));
      return {
        place,
        by,
        question,
        stop: {
          ...wornStop(lobe, question),
          ...defined({ entryId: own[0], line: entries.find(({ id }) => id === own[0])?.line }),
          restsOn: siblings.map(({ id }) => id).sort(),
        },
      };
    }),
  );
}
