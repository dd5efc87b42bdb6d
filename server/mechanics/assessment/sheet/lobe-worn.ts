import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance, allowanceSource } from '../../kit/allowances.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { AssessedQuestion, NotToRun, StopReason } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { inches, keyOf, placeOf, valveSubject } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { Evidence, EvidenceEntry, ValvePlace } from '../evidence.ts';
import type { LobeOfSetUp } from '../ratio/lobes-read.ts';
import { isLifted } from '../stop.ts';
import type { SheetSideDetail } from './detail.ts';
import type { SheetRow } from './rows.ts';

interface WornLobe {
  readonly place: ValvePlace;
  /** How far it is down on the others [m]. */
  readonly by: number;
  readonly question: AssessedQuestion;
  readonly stop: StopReason;
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'It is worn',
    changes: 'The stop stands until the desk lifts it, with the reason.',
  },
  {
    code: 'not-found',
    label: 'It was read short',
    changes: 'The desk strikes the reading out, with the reason: the stop goes with it.',
  },
];

/** The valve over it lifts as its siblings do, where a lobe so far down would take it beyond what they differ by. */
function fullValve(side: string, row: SheetRow | undefined, rows: readonly SheetRow[], by: number): boolean {
  return (row?.lifts ?? []).some(({ spring, figure: { value } }) => {
    const others = rows
      .filter((each) => each !== row && sideOfValve(each.valve) === side)
      .flatMap(({ lifts }) =>
        lifts.flatMap((lot) => (lot.spring === spring ? (lot.figure.value ?? []) : [])),
      );
    const middle = others.length < 2 ? undefined : medianKnown(others);
    // The lever makes more of it at the valve, never less.
    return value !== undefined && middle !== undefined && middle - value < by - allowance('repeat');
  });
}

/** Found worn, and its stop lifted: it was read right, and stays on record until the cam is another one. */
export const wornNotToRun = (evidence: Evidence, worn: readonly WornLobe[]): NotToRun[] =>
  worn
    .filter(({ question, stop }) => question.answered?.found === true && isLifted(stop, evidence))
    .map(({ place, stop }) => ({
      id: `not-to-run:lobe-worn:${keyOf(stop.about)}`,
      what: 'run',
      about: stop.about,
      sentence: `Do not run it: the lobe of ${placeOf(place)} is worn.`,
      wayOut:
        'Cam and lifters are changed, and the oil is looked at for what wore off. Then the lobes are read again; the desk strikes the old reading out, with the reason.',
      wayOutAtBench:
        'Have cam and lifters changed, and the oil looked at for what wore off. Then read the lobes again.',
    }));

/** A lobe that is down on its siblings by the wear limit or more: nobody runs it on. */
export function wornLobes(
  evidence: Evidence,
  sides: readonly SheetSideDetail[],
  rows: readonly SheetRow[],
  ofSetUps: readonly LobeOfSetUp[],
): WornLobe[] {
  const entriesOf = (isOurs: (place: ValvePlace) => boolean): readonly EvidenceEntry[] => [
    ...rows.filter(isOurs).flatMap(({ lobes }) => lobes),
    ...ofSetUps.filter(isOurs).flatMap(({ passes }) => passes),
  ];
  // The lobes are the same on each spring: each side's are told once.
  const once = new Map(sides.map((side) => [side.side, side]));
  return [...once.values()].flatMap(({ side, lobesDown }) =>
    lobesDown.map(({ cylinder, valve, by }): WornLobe => {
      const place = { cylinder, valve };
      const about = valveSubject(place);
      const row = rows.find((each) => placeOf(each) === placeOf(place));
      const entries = entriesOf((each) => placeOf(each) === placeOf(place));
      const own = entries.map(({ id }) => id).sort();
      const step = (row?.lobes ?? []).length > 0 ? ('sheet' as const) : ('ratio' as const);
      // A lobe that is down takes its valve down with it: one whose valve is full may have been read short.
      const full = fullValve(side, row, rows, by);
      const down = `the lobe of ${placeOf(place)} is ${inches(by)} down on the others`;
      // It is down on its siblings: without their lobes nothing is said of this one.
      const siblings = entriesOf((each) => sideOfValve(each.valve) === side);
      const question = asked(
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
          restsOn: own,
        },
        { about, step, answers: evidence.answers, choices: CHOICES },
      );
      return {
        place,
        by,
        question,
        stop: {
          id: `stop:lobe-worn:${cylinder}-${valve}`,
          code: 'lobe-worn',
          step,
          about,
          sentence: full
            ? `Do not turn it yet: the lobe of ${placeOf(place)} reads ${inches(by)} down, and its valve lifts like the others. One of the two was misread.`
            : `Do not turn it: ${down}.`,
          ...wayOutOf('look at the lifter’s face and in the oil for metal', question.answered !== undefined),
          from: 'readings',
          answered: question.answered !== undefined,
          ...defined({ entryId: own[0], line: entries.find(({ id }) => id === own[0])?.line }),
          restsOn: siblings.map(({ id }) => id).sort(),
        },
      };
    }),
  );
}
