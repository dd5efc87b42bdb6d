import { isHydraulicLifter, isSolidLifter } from '../../../../shared/lifters.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { placeOf } from '../common/said.ts';
import { isSince } from '../common/since.ts';
import type { Evidence, LifterState, SheetEvidence, Spring } from '../evidence.ts';
import { GEAR_PLANS } from '../gear/plans.ts';

const choice = (code: string, label: string, changes: string) => ({ code, label, changes });

const SPRINGS: AssessedQuestion['answers'] = [
  choice('light', 'A light checking spring', 'The lifts are told as light-spring ones.'),
  choice('running', 'The running spring', 'The lifts are told with what the spring takes off.'),
];
const LIFTERS: AssessedQuestion['answers'] = [
  choice('solid', 'A solid lifter', 'The lifts count as they were read.'),
  choice('locked', 'A hydraulic one, locked solid', 'The lifts count as they were read.'),
  choice('hydraulic', 'A hydraulic one, not locked', 'A valve that is low may have a lifter that sinks.'),
];

const LASHES: AssessedQuestion['answers'] = [
  choice('zero', 'Taken up to zero', 'The lifts are what the valve gear makes of the lobes.'),
  choice(
    'set',
    'Left in',
    'The lifts are short by it: no ratio is told by them, and they are read again at zero.',
  ),
];

/** Fewer valves than this have no middle, and nothing that the lash would change is told of them. */
const FEWEST = 3;

/** The word of the question how the lash was. */
export const LASH_OF_SHEET = 'lash-not-said';

const isLift = ({ standing, arms, kind }: SheetEvidence): boolean =>
  standing && arms === 'these' && kind === 'valve-lift';

/** What is asked of these lifts, with the answers that it has. */
function ask(
  { answers }: Evidence,
  doubt: { readonly code: string; readonly ask: string },
  choices: AssessedQuestion['answers'],
  own: readonly SheetEvidence[],
): AssessedQuestion {
  return asked(
    {
      ...doubt,
      weight: 'weak',
      test: 'Ask whoever read them.',
      testAtBench: 'Say how they were read.',
      restsOn: own.map(({ id }) => id),
    },
    { about: { of: 'build' }, step: 'sheet', among: 'sheet', answers, choices },
  );
}

const springAsked = (evidence: Evidence): AssessedQuestion[] => {
  const own = evidence.sheet.filter((each) => isLift(each) && each.spring === 'not-said');
  return own.length === 0
    ? []
    : [
        ask(
          evidence,
          { code: 'spring-not-said', ask: 'Which spring was on the valves of the sheet?' },
          SPRINGS,
          own,
        ),
      ];
};

/** Where nothing can sink, which lifter it was changes nothing. */
function lifterAsked(evidence: Evidence): AssessedQuestion[] {
  const { lifter, gear = 'pushrod' } = evidence.engine;
  const own = evidence.sheet.filter((each) => isLift(each) && each.lifter === 'not-said');
  return own.length === 0 || isSolidLifter(lifter) || gear !== 'pushrod'
    ? []
    : [ask(evidence, { code: 'lifter-not-said', ask: 'Which lifters were in for the sheet?' }, LIFTERS, own)];
}

/** Lash left in makes a ratio of the lifts too low: where there is a ratio to read, and lash to leave in. */
function lashAsked(evidence: Evidence): AssessedQuestion[] {
  const { lifter, gear = 'pushrod' } = evidence.engine;
  if (isHydraulicLifter(lifter) || GEAR_PLANS[gear].steps.ratio !== undefined) return [];
  const own = evidence.sheet.filter((each) => isLift(each) && each.lifter !== 'hydraulic');
  return new Set(own.map(placeOf)).size < FEWEST
    ? []
    : [
        ask(
          evidence,
          { code: LASH_OF_SHEET, ask: 'How was the lash when the valves of the sheet were read?' },
          LASHES,
          own,
        ),
      ];
}

const SPRING_WORDS: readonly Spring[] = ['light', 'running'];
const LASH_WORDS = ['zero', 'set'] as const;
const LIFTER_WORDS: readonly LifterState[] = ['solid', 'locked', 'hydraulic'];

const wordOf = <Word extends string>([question]: readonly AssessedQuestion[], words: readonly Word[]) =>
  words.find((word) => question !== undefined && chosenOf(question) === word);

/** The evidence with the lifts of the sheet as they are known by an answer. */
const withLifts = (evidence: Evidence, known: (each: SheetEvidence) => SheetEvidence): Evidence => ({
  ...evidence,
  sheet: evidence.sheet.map((each) => (isLift(each) ? known(each) : each)),
});

interface Said {
  readonly evidence: Evidence;
  readonly questions: readonly AssessedQuestion[];
}

function springSaid(evidence: Evidence): Said {
  const questions = springAsked(evidence);
  const spring = wordOf(questions, SPRING_WORDS);
  if (spring === undefined) return { evidence, questions };
  return {
    evidence: withLifts(evidence, (each) => (each.spring === 'not-said' ? { ...each, spring } : each)),
    questions,
  };
}

function lifterSaid(evidence: Evidence): Said {
  const questions = lifterAsked(evidence);
  const lifter = wordOf(questions, LIFTER_WORDS);
  if (lifter === undefined) return { evidence, questions };
  return {
    evidence: withLifts(evidence, (each) => (each.lifter === 'not-said' ? { ...each, lifter } : each)),
    questions,
  };
}

function lashSaid(evidence: Evidence): Said {
  const questions = lashAsked(evidence);
  const lash = wordOf(questions, LASH_WORDS);
  const answer = evidence.answers.find(({ id }) => id === questions[0]?.answered?.entryId);
  if (lash === undefined || answer === undefined) return { evidence, questions };
  // Left in, they are read again at zero: what came after the answer is that.
  const known = (each: SheetEvidence): SheetEvidence => ({
    ...each,
    lash: lash === 'set' && isSince(each, answer) ? 'zero' : lash,
  });
  return {
    evidence: withLifts(evidence, (each) => (each.lifter === 'hydraulic' ? each : known(each))),
    questions,
  };
}

/**
 * The sheet as it is known once how it was read was answered, and what is still asked of that. Whether there was lash to
 * leave in is known by the lifters, so that these come first.
 */
export function saidOfSheet(entered: Evidence): Said {
  const spring = springSaid(entered);
  const lifter = lifterSaid(spring.evidence);
  const { evidence, questions } = lashSaid(lifter.evidence);
  return { evidence, questions: [...spring.questions, ...lifter.questions, ...questions] };
}
