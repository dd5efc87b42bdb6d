import { VALVE_GEARS } from '../../../../shared/schemas/words.ts';
import { STEP_NAMES, type StepName } from '../../../../shared/steps.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import type { Evidence } from '../evidence.ts';
import type { GearDetail } from './detail.ts';
import { GEAR_PLANS } from './plans.ts';

export const planOfGear = ({ engine: { gear = 'pushrod' } }: Evidence) => GEAR_PLANS[gear];

const NAMED = {
  ratio: 'readings of a ratio',
  parts: 'rocker arms',
  identify: 'measurements of a loose rocker',
  geometry: 'tip marks',
} as const;
type Recorded = keyof typeof NAMED;

/** What is on record under a step, by the ids of its entries; of other steps nothing is asked. */
function onRecord(evidence: Evidence): Readonly<Record<Recorded, readonly string[]>> {
  return {
    ratio: evidence.setUps.map(({ id }) => id),
    parts: evidence.arms.map(({ id }) => id),
    identify: evidence.part.filter(({ standing }) => standing).map(({ id }) => id),
    geometry: evidence.tipMarks.filter(({ standing }) => standing).map(({ id }) => id),
  };
}

const isRecorded = (step: StepName): step is Recorded => Object.hasOwn(NAMED, step);

/** Steps that do not apply and have entries all the same, with those entries. */
function against(evidence: Evidence): { readonly step: Recorded; readonly ids: readonly string[] }[] {
  const { steps } = planOfGear(evidence);
  const recorded = onRecord(evidence);
  return STEP_NAMES.filter(isRecorded).flatMap((step) =>
    steps[step] === undefined || recorded[step].length === 0 ? [] : [{ step, ids: recorded[step] }],
  );
}

/** What does not apply to this engine. A step or a figure with anything on record stays open: nothing entered is hidden. */
export function gearDetail(evidence: Evidence): GearDetail {
  const plan = planOfGear(evidence);
  const kept = new Set<StepName>(against(evidence).map(({ step }) => step));
  const read = new Set(evidence.sheet.map(({ kind }) => kind));
  const worked = new Set(evidence.workings.map(({ computation }) => computation));
  const marked = evidence.tipMarks.length > 0;
  return {
    gear: evidence.engine.gear ?? 'pushrod',
    steps: STEP_NAMES.flatMap((step) => {
      const why = plan.steps[step];
      return why === undefined || kept.has(step) ? [] : [{ step, why }];
    }),
    parts: plan.parts.filter(
      (part) =>
        !worked.has(part) && !(part === 'marks' && marked) && !(part === 'shims' && hasShims(evidence)),
    ),
    kinds: plan.kinds.filter((kind) => !read.has(kind)),
  };
}

/** Whatever the call is about, what it goes by hangs on it. */
export const VALVE_GEAR = 'valve-gear';

/** Entries that this valve gear has no place for: one of the two was said wrong, and a person knows which. */
export function gearQuestions(evidence: Evidence): AssessedQuestion[] {
  const found = against(evidence);
  const { gear = 'pushrod' } = evidence.engine;
  if (found.length === 0) return [];
  const what = listed(found.map(({ step }) => NAMED[step]));
  const named = VALVE_GEARS[gear].toLowerCase();
  const question = asked(
    {
      code: VALVE_GEAR,
      weight: 'strong',
      ask: `The engine is said to have an ${named}, and ${what} are on record. Which of the two is so?`,
      knownBy: `valve gear ${gear}`,
      test: 'Ask what is between the cam and the valve, or look under the cover. No entry is changed.',
      byLooking: true,
      alsoOf: 'every',
      restsOn: found.flatMap(({ ids }) => ids),
    },
    {
      about: { of: 'build' },
      step: 'build',
      answers: evidence.answers,
      choices: [
        {
          code: 'found',
          label: 'The valve gear was said wrong',
          changes: 'It is put right in the step on the engine; the entries count as they are.',
        },
        {
          code: 'not-found',
          label: 'The valve gear is right',
          changes: 'The entries stay on the record; strike out those that are of another engine.',
        },
      ],
    },
  );
  return [chosenOf(question) === undefined ? question : { ...question, weight: 'weak' }];
}
