import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { MANY } from '../../lash/lash-questions.ts';
import type { AssessedQuestion, Headline, NotToRun } from '../assessment.ts';
import { turned } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { BUILD } from '../common/kept.ts';
import { feeler, listed, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { Closed } from './sinking.ts';

/** Valves that may be sinking, and that closed alike: one after the other sinks by itself, so what all had in common is asked first. */
export interface ClosedAlike {
  readonly closed: readonly Closed[];
  readonly question: AssessedQuestion;
}

const by = ({ closing: { growth } }: Closed): number => -(growth.high ?? 0);

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'not-found',
    label: 'Yes, all in the same way',
    changes: 'It is no way of reading: a qualified shop looks at valves and seats.',
  },
  {
    code: 'found',
    label: 'No, or nobody knows',
    changes: 'One is read again step by step, with the feelers and at the heat that it was set with.',
    leadsTo: turned(
      'read one again on the base circle, with the feelers and at the heat that it was set with.',
    ),
  },
];

/**
 * Gaps of several valves that closed by as much, to the step of the feelers.
 *
 * Source: what all have in common is looked for in what all have in common, common practice, no published source.
 */
export function closedAlike(sinking: readonly Closed[], { answers }: Evidence): ClosedAlike | undefined {
  const all = sinking.map(by);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  if (sinking.length < MANY || most - least > allowance('lash-as-set') + EQUAL) return undefined;
  const question = asked(
    {
      code: 'lash-closed-alike',
      weight: 'strong',
      ask: 'Were all of them set and read in the same way, with the same feelers, at the same heat?',
      size: `The gaps of ${listed(sinking.map(({ valve }) => placeOf(valve)))} closed by ${least === most ? '' : 'about '}${feeler(most)}, all alike.`,
      test: 'ask how, by whom, with which feelers and at what heat they were set and read: so many alike are seldom seats.',
      byLooking: true,
      restsOn: sinking.flatMap(({ valve }) => valve.lines.map(({ id }) => id)),
    },
    { about: BUILD, step: 'adjuster', answers, choices: CHOICES },
  );
  return { closed: sinking, question };
}

/** All of them in one line. */
export function alikeHeadline({ closed, question }: ClosedAlike): Headline {
  const looked =
    chosenOf(question) === undefined
      ? ` So many alike are seldom seats. ${question.ask}`
      : chosenOf(question) === 'found'
        ? ' How they were read is not known, as was answered: one is read again step by step.'
        : '';
  return {
    id: 'headline:lash-closed-alike',
    about: BUILD,
    step: 'adjuster',
    sentence: `${question.size ?? ''}${looked} Each of the ${closed.length} may be sinking into its seat: nothing is set away, and a qualified shop looks before it runs.`,
  };
}

/** Said once for all of them. */
export const alikeNotToRun = ({ closed }: ClosedAlike): NotToRun => ({
  id: 'not-to-run:lash-closed-alike',
  what: 'run',
  about: BUILD,
  sentence: `Do not run it: ${listed(closed.map(({ valve }) => placeOf(valve)))} have closed up alike at one heat, and each may be sinking into its seat.`,
  wayOut:
    'Leave the gaps alone, and ask how they were set and read; then have a qualified shop look at valves and seats.',
});
