import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter, isSolidLifter } from '../../../../shared/lifters.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, LifterState, SheetEvidence, Spring } from '../evidence.ts';

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

const isLift = ({ standing, arms, kind }: SheetEvidence): boolean =>
  standing && arms === 'these' && kind === 'valve-lift';

interface Asks {
  readonly spring?: AssessedQuestion;
  readonly lifter?: AssessedQuestion;
  readonly lash?: AssessedQuestion;
}

/** How the valves were read, as far as nobody said so: asked once for all of them. */
function asksOf(evidence: Evidence): Asks {
  const lifts = evidence.sheet.filter(isLift);
  const ask = (
    code: string,
    words: string,
    choices: AssessedQuestion['answers'],
    own: readonly SheetEvidence[],
  ) =>
    asked(
      {
        code,
        weight: 'weak',
        ask: words,
        test: 'Ask whoever read them.',
        testAtBench: 'Say how they were read.',
        restsOn: own.map(({ id }) => id),
      },
      { about: { of: 'build' }, step: 'sheet', among: 'sheet', answers: evidence.answers, choices },
    );
  const noSpring = lifts.filter(({ spring }) => spring === 'not-said');
  const noLifter = lifts.filter(({ lifter }) => lifter === 'not-said');
  const { lifter, gear } = evidence.engine;
  const cannotSink = isSolidLifter(lifter) || gear !== undefined;
  const mayHaveLash = gear === undefined && !isHydraulicLifter(lifter);
  const withLash = mayHaveLash ? lifts.filter((each) => each.lifter !== 'hydraulic') : [];
  return {
    ...(new Set(withLash.map(placeOf)).size < FEWEST
      ? {}
      : {
          lash: ask(
            'lash-not-said',
            'How was the lash when the valves of the sheet were read?',
            LASHES,
            withLash,
          ),
        }),
    ...(noSpring.length === 0
      ? {}
      : {
          spring: ask('spring-not-said', 'Which spring was on the valves of the sheet?', SPRINGS, noSpring),
        }),
    ...(noLifter.length === 0 || cannotSink
      ? {}
      : { lifter: ask('lifter-not-said', 'Which lifters were in for the sheet?', LIFTERS, noLifter) }),
  };
}

const SPRING_WORDS: readonly Spring[] = ['light', 'running'];
const LASH_WORDS = ['zero', 'set'] as const;
const LIFTER_WORDS: readonly LifterState[] = ['solid', 'locked', 'hydraulic'];

const answerTo = <Word extends string>(question: AssessedQuestion | undefined, words: readonly Word[]) =>
  words.find((word) => question !== undefined && chosenOf(question) === word);

/** The sheet as it is known once how it was read was answered, and what is still asked of that. */
export function saidOfSheet(evidence: Evidence): {
  readonly evidence: Evidence;
  readonly questions: readonly AssessedQuestion[];
} {
  const asks = asksOf(evidence);
  const spring = answerTo(asks.spring, SPRING_WORDS);
  const lifter = answerTo(asks.lifter, LIFTER_WORDS);
  const lash = answerTo(asks.lash, LASH_WORDS);
  const line = evidence.answers.find(({ id }) => id === asks.lash?.answered?.entryId)?.line ?? 0;
  // Left in, they are read again at zero: what came after the answer is that.
  const lashOf = (each: SheetEvidence) => (lash === 'set' && each.line > line ? 'zero' : lash);
  const known = (each: SheetEvidence): SheetEvidence => ({
    ...each,
    ...(each.lifter === 'hydraulic' ? {} : defined({ lash: lashOf(each) })),
    ...(each.spring === 'not-said' ? defined({ spring }) : {}),
    ...(each.lifter === 'not-said' ? defined({ lifter }) : {}),
  });
  const questions = [asks.spring, asks.lifter, asks.lash].flatMap((each) => each ?? []);
  if ([spring, lifter, lash].every((each) => each === undefined)) return { evidence, questions };
  const sheet = evidence.sheet.map((each) => (isLift(each) ? known(each) : each));
  return { evidence: { ...evidence, sheet }, questions };
}
