import { defined } from '../../../../shared/defined.ts';
import type { Cause } from '../../explain-readings/types.ts';
import type { AssessedExplanation, AssessedQuantity } from '../assessment.ts';
import { listed, valveSubject } from '../common/said.ts';
import type { Chances } from './chances.ts';
import type { GroupExplained } from './explain.ts';
import type { ExplanationResult } from './explanation.ts';
import { lackSaid } from './lack-said.ts';
import { lacksOfGroup, restingOn } from './lacking.ts';
import { namesSaid } from './names.ts';
import { intervalSaid } from './ratio-said.ts';
import { ratioReadOf } from './reading.ts';
import { wordAgainst } from './word.ts';

const LOOKED_AT: Readonly<Record<Cause, string>> = {
  'turn-too-many': 'a turn too many',
  'turn-too-few': 'a turn missed',
  'hand-read-backwards': 'the hand read backwards',
  'lash-left-in': 'lash left in',
  'plunger-tilted': 'a leaning plunger',
  'zero-moved': 'a zero that moved',
  'wrong-card-row': 'the other row of the card',
  'wrong-valve': 'the other valve',
  'valve-lift-as-lobe': 'a valve lift for the lobe lift',
  'card-not-this-lobe': 'the card of another cam',
  slip: 'a slip of a digit',
  'unit-or-decimal': 'another unit or a misplaced point',
  'unlisted-fault': 'something else that shifts the reading',
  'passes-scatter': 'a loose set-up',
  'ratio-not-listed': 'a ratio that is not listed',
};

/** What is weighed is not what was read, and says so. */
const weighedSaid = (result: ExplanationResult): string =>
  `Weighed with the usual spread of arms and mistakes, ${intervalSaid(result)}: ${namesSaid(result)}.`;

const WAITS: Readonly<Record<Exclude<Chances, 'told'>, string>> = {
  none: 'Chances come after what the answer still needs.',
  open: 'No chances are told while what was read leaves it open.',
};

function weighedOrNot(result: ExplanationResult, chances: Chances): string {
  if (chances !== 'told') return WAITS[chances];
  const [first] = result.explanations;
  const needs = first !== undefined && first.causes.length > 0 ? ` Likeliest: ${first.needs}` : '';
  return `${weighedSaid(result)}${needs}`;
}

function summaryOf({ result, refused, ruledOut }: GroupExplained, chances: Chances): string {
  if (result === undefined) return refused === undefined ? '' : `${refused}.`;
  const looked =
    ruledOut.length === 0
      ? ''
      : ` Looked at, and it does not fit: ${listed(ruledOut.map((cause) => LOOKED_AT[cause]))}.`;
  return `${weighedOrNot(result, chances)}${looked}`;
}

/** The word against a mark as it is told, and only where nothing is lacking for it; under a stop no reading or test. */
function shownResult(
  explained: GroupExplained,
  result: ExplanationResult,
  summary: string,
  stopped: boolean,
): ExplanationResult {
  const { againstMark: _, nextReading, questions, ...rest } = result;
  const [claim] = explained.claims;
  const told =
    claim !== undefined && ratioReadOf(explained) !== undefined && lacksOfGroup(explained).length === 0;
  return {
    ...rest,
    againstMark: told ? wordAgainst(explained, claim) : undefined,
    nextReading: stopped ? undefined : nextReading,
    questions: stopped ? [] : questions,
    summary,
  };
}

/** What would explain the readings of an arm on a valve, or why that cannot be computed. */
export function explanationOf(
  explained: GroupExplained,
  chances: Chances,
  stopped: boolean,
): AssessedExplanation[] {
  const { group, known, given, result, refused } = explained;
  if (given === undefined) return [];
  const summary = summaryOf(explained, chances);
  const shown = [...known.map(({ read }) => read), ...group.aside].filter(
    ({ valve }) => valve.used.length > 0,
  );
  return [
    {
      id: `explanation:${group.key}`,
      about: valveSubject(group),
      ...(result === undefined ? {} : { result: shownResult(explained, result, summary, stopped) }),
      ...(refused === undefined ? {} : { refused: `${refused}.` }),
      summary,
      chances,
      wouldBeTrue: chances === 'open' ? (result?.explanations ?? []).map(({ needs }) => needs) : [],
      ...defined({ armId: group.armId }),
      setUpIds: shown.map(({ setUp }) => setUp.id),
      restsOn: [...given.entryIds].sort(),
    },
  ];
}

/** The ratio that is told of an arm on a valve, as read; and beside it, under its own name, what is weighed from everything. */
export function armRatio(explained: GroupExplained, chances: Chances): AssessedQuantity[] {
  const { group, result, given } = explained;
  const lacks = lacksOfGroup(explained).map(lackSaid);
  const common = { about: valveSubject(group), dimension: 'ratio' as const, lacks };
  const conditions = ['light spring', 'full lift'];
  const read = ratioReadOf(explained);
  const resting = restingOn(explained)?.read;
  const passes = [...(resting?.valve.used ?? []), ...(resting?.lobe.passes.used ?? [])];
  const weighed = chances === 'none' ? undefined : result?.ratio;
  const [low, high] = weighed?.interval95 ?? [];
  return [
    {
      ...common,
      id: `arm-ratio:${group.key}`,
      name: 'Ratio of the arm, as read',
      ...(lacks.length === 0 ? defined({ ...read }) : {}),
      basis: 'measured',
      conditions,
      restsOn: passes.map(({ id }) => id).sort(),
    },
    {
      ...common,
      id: `arm-weighed:${group.key}`,
      name: 'Ratio of the arm, weighed with the usual spread of arms and mistakes',
      ...defined({ value: weighed?.median, low, high }),
      basis: 'calculated',
      conditions,
      lacks: weighed === undefined && lacks.length === 0 ? ['readings that can be weighed'] : lacks,
      restsOn: [...(given?.entryIds ?? [])].sort(),
    },
  ];
}
