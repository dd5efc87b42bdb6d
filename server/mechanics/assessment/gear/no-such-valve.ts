import { sideOfValve, valveSaid } from '../../../../shared/schemas/words.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { byPlace, placeOf, valveSubject } from '../common/said.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { setUpsNow } from '../ratio/read/set-ups.ts';

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'found',
    label: 'It was another valve',
    changes: 'What was entered of it is struck out with the reason, and entered under its own name.',
  },
  { code: 'not-found', label: 'The engine has it', changes: 'The engine is put right; the entry stays.' },
];

interface Named extends ValvePlace {
  readonly step: StepName;
  readonly restsOn: readonly string[];
}

const standing = (
  entries: readonly (ValvePlace & { readonly id: string; readonly standing: boolean })[],
  step: StepName,
): Named[] =>
  entries
    .filter((entry) => entry.standing)
    .map(({ id, cylinder, valve }) => ({ cylinder, valve, step, restsOn: [id] }));

/** Every valve that something on record is about, with the step that it was entered in. */
function namedIn(evidence: Evidence): Named[] {
  const { sheet, scans = [], lash, tipMarks, seats, passes } = evidence;
  const setUps = setUpsNow(evidence).map(
    ({ id, cylinder, valve }): Named => ({
      cylinder,
      valve,
      step: 'ratio',
      restsOn: passes.filter((pass) => pass.standing && pass.setUpId === id).map((pass) => pass.id),
    }),
  );
  return [
    ...setUps,
    ...standing(sheet, 'sheet'),
    ...standing(scans, 'scan'),
    ...standing(lash, 'adjuster'),
    ...standing(tipMarks, 'geometry'),
    ...seats.map(({ cylinder, valve }): Named => ({ cylinder, valve, step: 'parts', restsOn: [] })),
  ];
}

/** Why the engine cannot have it, by what is known of it; nothing where it may. */
function whyNot(
  { engine }: Evidence,
  names: readonly string[],
  { cylinder, valve }: ValvePlace,
): string | undefined {
  if (engine.cylinders !== undefined && cylinder > engine.cylinders)
    return `the engine is on record with cylinders 1 to ${engine.cylinders}`;
  if (names.includes(valve)) return undefined;
  const side = sideOfValve(valve);
  const count = names.filter((name) => name.startsWith(side)).length;
  return `each cylinder is on record with ${count === 1 ? `one ${side} valve` : `${count} ${side} valves`}`;
}

/** A valve that the engine on record does not have was misnamed, or the engine was: asked, and nothing is refused. */
export function noSuchValves(evidence: Evidence): AssessedQuestion[] {
  const names = valveNames(evidence);
  const all = namedIn(evidence);
  const places = [...new Map(all.map((each) => [placeOf(each), each])).values()].toSorted(byPlace);
  return places.flatMap((place) => {
    const why = whyNot(evidence, names, place);
    if (why === undefined) return [];
    const own = all.filter((each) => placeOf(each) === placeOf(place));
    const step = own.map((each) => each.step).sort()[0] ?? 'sheet';
    return [
      asked(
        {
          code: 'no-such-valve',
          weight: 'strong',
          ask: `Cylinder ${place.cylinder}, ${valveSaid(place.valve)}, has entries, and ${why}. Which valve was it?`,
          knownBy: 'which valve was it',
          test: 'ask which valve it was, and put the entry or the engine right',
          byLooking: true,
          restsOn: own.flatMap(({ restsOn }) => restsOn),
        },
        { about: valveSubject(place), step, answers: evidence.answers, choices: CHOICES },
      ),
    ];
  });
}
