import { type ValveName, valveSaid } from '../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { byPlace, keyOf, placeOf, valveSubject } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';

interface Placed extends ValvePlace {
  readonly id: string;
  readonly onSheet: boolean;
}

/** All that is on record of a valve, in the order of the valves. */
function placed({ sheet, scans = [], lash, tipMarks, setUps }: Evidence): Placed[] {
  const standing = [...scans, ...lash, ...tipMarks].filter((each) => each.standing);
  return [
    ...sheet.filter((each) => each.standing).map((each) => ({ ...each, onSheet: each.scan === undefined })),
    ...standing.map((each) => ({ ...each, onSheet: false })),
    ...setUps.map((each) => ({ ...each, onSheet: false })),
  ].toSorted(byPlace);
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'The valve was named wrong',
    changes: 'The entry is struck out and entered again under its own valve.',
  },
  {
    code: 'not-found',
    label: 'The engine has that valve',
    changes: 'The number of cylinders or valves is put right in the step on the engine.',
  },
];

const countSaid = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

/** Why the engine has no such valve; undefined where it has it, or where nobody said how many it has. */
function lacks(evidence: Evidence, { cylinder, valve }: ValvePlace): string | undefined {
  const { cylinders } = evidence.engine;
  if (cylinders !== undefined && cylinder > cylinders)
    return `the engine is said to have ${countSaid(cylinders, 'cylinder')}`;
  const own: readonly ValveName[] = valveNames(evidence);
  return own.includes(valve) ? undefined : `a cylinder is said to have ${own.map(valveSaid).join(' and ')}`;
}

/** Entries of a cylinder or a valve that the engine has not: one of the two was said wrong, and a person knows which. */
export function noSuchValveQuestions(evidence: Evidence): AssessedQuestion[] {
  const all = placed(evidence);
  const wrong = all.filter((each) => lacks(evidence, each) !== undefined);
  const places = [...new Map(wrong.map((each) => [placeOf(each), each])).values()];
  return places.map((place) => {
    const own = wrong.filter((each) => placeOf(each) === placeOf(place));
    return asked(
      {
        code: 'no-such-valve',
        weight: 'strong',
        ask: `${placeOf(place)} is on record, and ${lacks(evidence, place)}. Which of the two is wrong?`,
        knownBy: `no such valve ${keyOf(valveSubject(place))}`,
        test: 'Ask which valve was read, in the engine’s own numbering, and how many the engine has.',
        testAtBench: 'Look which valve was read, in the engine’s own numbering, and how many the engine has.',
        byLooking: true,
        restsOn: [...new Set(own.map(({ id }) => id))],
      },
      {
        about: valveSubject(place),
        step: own.some(({ onSheet }) => onSheet) ? 'sheet' : 'build',
        answers: evidence.answers,
        choices: CHOICES,
      },
    );
  });
}
