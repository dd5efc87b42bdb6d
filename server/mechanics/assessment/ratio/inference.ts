import { defined } from '../../../../shared/defined.ts';
import type { Cause } from '../../explain-readings/types.ts';
import type { AssessedExplanation, AssessedQuantity, AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { GroupExplained } from './explain.ts';
import type { ExplanationResult } from './explanation.ts';
import { lacksOfGroup } from './lacking.ts';
import { intervalSaid, namesSaid } from './ratio-said.ts';

/** Causes that the questions of a set-up ask about under their own word. */
const ASKED_AS: Readonly<Partial<Record<Cause | 'state-not-said' | 'sinking', readonly string[]>>> = {
  'turn-too-many': ['turn-miscounted', 'count-does-not-fit'],
  'turn-too-few': ['turn-miscounted', 'count-does-not-fit'],
  'hand-read-backwards': ['hand-read-backwards', 'count-does-not-fit'],
  'lash-left-in': ['lash-left-in', 'lash-not-said', 'lash-setting-not-said'],
  'plunger-tilted': ['plunger-tilted', 'alignment-not-said'],
  'zero-moved': ['zero-not-returned'],
  'wrong-card-row': ['valve-swapped'],
  'wrong-valve': ['valve-swapped'],
  'valve-lift-as-lobe': ['gross-lift-as-lobe'],
  'unit-or-decimal': ['unit-mixed', 'decimal-slip'],
};

/** What was not said, and sinking, the questions of the set-up ask themselves. */
const BY_SET_UP: ReadonlySet<string> = new Set(['state-not-said', 'sinking']);

/** What only the inference raises: put once for the arm, and not where the set-up asks it in its own words. */
export function inferenceQuestions(evidence: Evidence, explained: GroupExplained): AssessedQuestion[] {
  const { group, known, result, given } = explained;
  const put = new Set(known.flatMap(({ questions }) => questions.map(({ code }) => code)));
  const own = (result?.questions ?? []).filter(
    ({ cause }) => !BY_SET_UP.has(cause) && !(ASKED_AS[cause] ?? []).some((code) => put.has(code)),
  );
  const questions = own.map(({ cause, text, test }) =>
    asked(
      { code: cause, weight: 'weak', ask: text, test, restsOn: given?.entryIds ?? [] },
      {
        about: valveSubject(group),
        step: 'ratio',
        answers: evidence.answers,
        ...defined({ among: group.armId }),
      },
    ),
  );
  return [...new Map(questions.map((question) => [question.id, question])).values()];
}

/** The word against a mark only where nothing is lacking for it, and no reading or test under a stop. */
function shownResult(
  explained: GroupExplained,
  result: ExplanationResult,
  stopped: boolean,
): ExplanationResult {
  const { againstMark, nextReading, questions, ...rest } = result;
  return {
    ...rest,
    againstMark: lacksOfGroup(explained).length === 0 ? againstMark : undefined,
    nextReading: stopped ? undefined : nextReading,
    questions: stopped ? [] : questions,
  };
}

/** What would explain the readings of an arm on a valve, or why that cannot be computed. */
export function explanationOf(explained: GroupExplained, stopped: boolean): AssessedExplanation[] {
  const { group, known, given, result, refused } = explained;
  if (given === undefined) return [];
  const shown = known.filter(({ read }) => read.valve.used.length > 0);
  const told = (): string => {
    if (result === undefined) return refused === undefined ? '' : `${refused}.`;
    const [first] = result.explanations;
    const needs = first !== undefined && first.causes.length > 0 ? ` Likeliest: ${first.needs}` : '';
    return `${intervalSaid(result)}: ${namesSaid(result)}.${needs}`;
  };
  return [
    {
      id: `explanation:${group.key}`,
      about: valveSubject(group),
      ...(result === undefined ? {} : { result: shownResult(explained, result, stopped) }),
      ...(refused === undefined ? {} : { refused: `${refused}.` }),
      summary: told(),
      ...defined({ armId: group.armId }),
      setUpIds: shown.map(({ read }) => read.setUp.id),
      restsOn: [...given.entryIds].sort(),
    },
  ];
}

/** What all readings of an arm on a valve come to: the ratio at full lift on the light spring. */
export function armRatio(explained: GroupExplained): AssessedQuantity[] {
  const { group, result, given } = explained;
  if (result === undefined) return [];
  const [low, high] = result.ratio.interval95;
  return [
    {
      id: `arm-ratio:${group.key}`,
      name: 'Ratio of the arm, from all its readings',
      about: valveSubject(group),
      dimension: 'ratio',
      value: result.ratio.median,
      low,
      high,
      basis: 'calculated',
      conditions: ['light spring', 'full lift'],
      lacks: lacksOfGroup(explained),
      restsOn: [...(given?.entryIds ?? [])].sort(),
    },
  ];
}
