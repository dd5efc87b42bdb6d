import { defined } from '../../../../shared/defined.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { studCautions } from '../../consequences/cautions.ts';
import { STUD_LOAD } from '../../kit/allowances.ts';
import { loadSaid } from '../../kit/say-inches.ts';
import { LBF } from '../../kit/si.ts';
import type { AnswerChoice, AssessedQuestion, Headline, NotToRun } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeDetail, ChangeFigure } from './detail.ts';

type Worked = Pick<ChangeDetail, 'plan' | 'figures'>;

/** What is told of the studs: in the answer where the spring opens past what is usual, else as a caution. */
export interface StudsTold {
  readonly headlines: readonly Headline[];
  readonly cautions: readonly string[];
  readonly questions: readonly AssessedQuestion[];
  readonly notToRun: readonly NotToRun[];
}

const BUILD = { of: 'build' } as const;

type Load = NonNullable<ChangeFigure['after']>;

const openLoadOf = ({ figures }: Worked): Load | undefined =>
  figures.find(({ name }) => name === 'open-load')?.after;

/** The most that any of the springs opens at, with the plan that it is of. */
function mostOf(details: readonly Worked[]): { readonly load: Load; readonly plan?: number } | undefined {
  return details
    .flatMap((detail) => {
      const load = openLoadOf(detail);
      return load === undefined ? [] : [{ load, ...defined({ plan: detail.plan }) }];
    })
    .toSorted((a, b) => b.load.high - a.load.high)[0];
}

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'not-found',
    label: 'The studs’ maker allows that load',
    changes: 'It is asked for no more.',
  },
  {
    code: 'found',
    label: 'Their maker allows less',
    changes: 'Other studs, softer springs or less ratio come first.',
  },
];

const sizeSaid = (size: Evidence['engine']['studSize']): string => (size === undefined ? '' : `${size} `);

function askedOf({ engine, answers }: Evidence, { load }: { readonly load: Load }): AssessedQuestion {
  const { value, low, high } = load;
  return asked(
    {
      code: 'stud-load',
      weight: value > STUD_LOAD.to * LBF ? 'strong' : 'weak',
      ask: `Does the maker of the ${sizeSaid(engine.studSize)}studs allow less than the springs open at, ${loadSaid(value)}?`,
      knownBy: `stud load ${engine.studSize === '3/8' ? 'three-eighths' : engine.studSize === '5/16' ? 'five-sixteenths' : 'size not said'}`,
      size: `They open at ${loadSaid(low)} to ${loadSaid(high)}; the stud carries that and the pushrod’s load together.`,
      test: `Before it runs: look up what the studs’ maker allows${engine.studSize === undefined ? ', and which stud is in it' : ''}.`,
      byLooking: true,
      restsOn: [],
    },
    { about: BUILD, step: 'consequences', answers, choices: CHOICES },
  );
}

/** Their maker allows less: that is held to, whatever the gaps say. */
function overLoaded(plan: number | undefined): NotToRun {
  const start = plan === undefined ? 'Do not run it' : `Don’t fit the planned ${nominalSaid(plan)}`;
  return {
    id: 'not-to-run:studs',
    about: BUILD,
    what: plan === undefined ? 'run' : 'fit',
    sentence: `${start}: the studs’ maker allows less than the springs open at.`,
    wayOut:
      'Fit studs whose maker allows the load, or softer springs; a qualified shop looks before it runs.',
  };
}

/** The word on the studs, once, by the most that any spring may bear. */
export function studsTold(evidence: Evidence, details: readonly Worked[]): StudsTold {
  const { mounting, studSize: size } = evidence.engine;
  const most = mostOf(details);
  const [said] = studCautions(defined({ mounting, size, openLoad: most?.load.high }));
  const nothing: StudsTold = { headlines: [], cautions: [], questions: [], notToRun: [] };
  if (most === undefined || said === undefined) return nothing;
  if (most.load.value < STUD_LOAD.from * LBF) return { ...nothing, cautions: [said] };
  const isHeavy = most.load.value > STUD_LOAD.to * LBF;
  // What is near the usual limit is asked where the call is about what the ratio does.
  if (!isHeavy && !planOf(evidence.call.goal).asks.includes('consequences'))
    return { ...nothing, cautions: [said] };
  const question = askedOf(evidence, most);
  const isAllowed = question.answered?.found === false;
  const plans = new Set(details.flatMap(({ plan }) => plan ?? []));
  const withPlan =
    plans.size > 1 && most.plan !== undefined ? `With the planned ${nominalSaid(most.plan)} t` : 'T';
  const sentence = said.replace(/^T/, withPlan);
  return {
    ...nothing,
    questions: [question],
    ...(isAllowed
      ? { cautions: [sentence] }
      : { headlines: [{ id: 'headline:change:studs', about: BUILD, step: 'consequences', sentence }] }),
    notToRun: question.answered?.found === true ? [overLoaded(most.plan)] : [],
  };
}
