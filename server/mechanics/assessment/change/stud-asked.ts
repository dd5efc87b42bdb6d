import { defined } from '../../../../shared/defined.ts';
import { STUD_LOAD } from '../../kit/allowances.ts';
import { loadSaid } from '../../kit/say-inches.ts';
import { LBF } from '../../kit/si.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { answerSaid } from '../common/chosen.ts';
import { lowerFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeFigure } from './detail.ts';

export type OpenLoad = NonNullable<ChangeFigure['after']>;

const CHOICES: readonly AnswerChoice[] = [
  {
    code: 'not-found',
    label: 'The studs’ maker allows that load',
    changes: 'It is asked for no more, unless the springs open at more.',
  },
  {
    code: 'found',
    label: 'Their maker allows less',
    changes: 'Other studs, softer springs or less ratio come first.',
    leadsTo: done('fit studs whose maker allows the load, or softer springs, and say which are in it.'),
  },
];

const NAMED = { '3/8': 'three-eighths', '5/16': 'five-sixteenths', '7/16': 'seven-sixteenths' } as const;

/** The load as it stands in an id [N]: the same in whatever units the call is spoken. */
const inId = ({ value }: OpenLoad): number => Math.round(value);

const LOAD_IN_ID = /^question:stud-load:build:at-(\d+)-newtons:/;

/** The question about this load, with the answer that was given to the one about the load `at` [N]. */
function askedAt({ engine, answers }: Evidence, load: OpenLoad, at: number, withWhat = ''): AssessedQuestion {
  const { value, low, high } = load;
  const { studSize: size } = engine;
  return asked(
    {
      code: 'stud-load',
      weight: value > STUD_LOAD.to * LBF ? 'strong' : 'weak',
      ask: `Does the maker of the ${size === undefined ? '' : `${size} `}studs allow less than the springs open at${withWhat}, ${loadSaid(value)}?`,
      knownBy: `stud load ${size === undefined ? 'size not said' : NAMED[size]}`,
      size: `They open at ${loadSaid(low)} to ${loadSaid(high)}; the stud carries that and the pushrod’s load together.`,
      test: `Before it runs: look up what the studs’ maker allows${size === undefined ? ', and which stud is in it' : ''}.`,
      byLooking: true,
      restsOn: [],
    },
    { about: { of: 'build' }, step: 'consequences', among: `at-${at}-newtons`, answers, choices: CHOICES },
  );
}

/** What is allowed holds for every lesser load, and what is not for every greater one; for others it says nothing. */
function holdsFor({ answered }: AssessedQuestion, at: number, load: number): boolean {
  if (answered?.found === undefined) return false;
  return answered.found ? at <= load : at >= load;
}

/** Loads that it was answered about [N]. */
const loadsAnswered = ({ answers }: Evidence): number[] => {
  const all = answers.flatMap(({ questionId }) => {
    const at = LOAD_IN_ID.exec(questionId ?? '')?.[1];
    return at === undefined ? [] : [Number(at)];
  });
  return [...new Set(all)].toSorted((a, b) => a - b);
};

/**
 * Whether the studs bear the load, with what was answered of it: of several answers that hold for it the last counts. What
 * was answered of loads that say nothing of this one is told beside it. `withWhat` names the arms, where there are several.
 */
export function studsAsked(evidence: Evidence, load: OpenLoad, withWhat?: string): AssessedQuestion {
  const own = inId(load);
  const ofLoad = withWhat === undefined ? '' : ` ${withWhat}`;
  const lineOf = ({ answered }: AssessedQuestion): number =>
    evidence.answers.find(({ id }) => id === answered?.entryId)?.line ?? 0;
  const all = loadsAnswered(evidence).map((at) => ({ at, question: askedAt(evidence, load, at, ofLoad) }));
  const last = all
    .filter(({ at, question }) => holdsFor(question, at, own))
    .toSorted((a, b) => lineOf(a.question) - lineOf(b.question))
    .at(-1)?.question;
  const put = askedAt(evidence, load, own, ofLoad);
  if (last !== undefined) return put.answered?.found === last.answered?.found ? put : last;
  const others = all
    .filter(({ question }) => question.answered !== undefined)
    .map(({ at, question }) => ` Of ${loadSaid(at)} it was answered: ${lowerFirst(answerSaid(question))}.`);
  return { ...put, ...defined({ size: put.size && `${put.size}${others.join('')}` }) };
}
