import { spokenUnits } from '../../../../shared/quantities/spoken-units.ts';
import { LBF, LBF_PER_IN } from '../../kit/si.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { asked } from '../common/asked.ts';
import { inches, nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';

/** A figure of the description that cannot be, or that no engine ordinarily has. */
interface Found {
  readonly code: 'figures-impossible' | 'figure-unusual';
  /** What its id is made of, whatever its figures become. */
  readonly of: string;
  readonly ask: string;
}

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'found',
    label: 'It was said or written wrong',
    changes: 'It is put right in the step on the engine; nothing rests on it until then.',
    leadsTo: done('put the figure right in the step on the engine.'),
  },
  { code: 'not-found', label: 'Asked again: it is so', changes: 'The question is settled.' },
];

/** Source: common practice, no published source; wide enough for a single’s engine and for a race spring. */
const ORDINARY = {
  seatLoad: { least: 20 * LBF, most: 600 * LBF },
  rate: { least: 40 * LBF_PER_IN, most: 1500 * LBF_PER_IN },
  /** Rod length over stroke. */
  rodToStroke: { least: 1.2, most: 2.6 },
  /** Of a rocker that is planned: those that are sold lie well within. */
  ratio: { least: 1, most: 2.2 },
} as const;

const isPast = (value: number | undefined, { least, most }: { least: number; most: number }): boolean =>
  value !== undefined && (value < least || value > most);

/** To the pound: a load far under the usual ones would be rounded away by fives. */
const seatSaid = (load: number): string =>
  spokenUnits() === 'metric' ? `${Math.round(load)} N` : `${Math.round(load / LBF)} lb`;

const rateSaid = (rate: number): string =>
  spokenUnits() === 'metric' ? `${Math.round(rate / 1000)} N/mm` : `${Math.round(rate / LBF_PER_IN)} lb/in`;

function ofSprings({ springs: { installedHeight, solidHeight, seatLoad, rate } }: Evidence): Found[] {
  const found: Found[] = [];
  if (installedHeight !== undefined && solidHeight !== undefined && solidHeight >= installedHeight)
    found.push({
      code: 'figures-impossible',
      of: 'solid height',
      ask: `The coil-bind height, ${inches(solidHeight)}, is not under the installed height, ${inches(installedHeight)}. Which of the two is wrong?`,
    });
  if (seatLoad !== undefined && isPast(seatLoad, ORDINARY.seatLoad))
    found.push({
      code: 'figure-unusual',
      of: 'seat load',
      ask: `A seat load of ${seatSaid(seatLoad)} is far out of the ordinary. Is it so?`,
    });
  if (rate !== undefined && isPast(rate, ORDINARY.rate))
    found.push({
      code: 'figure-unusual',
      of: 'spring rate',
      ask: `A spring rate of ${rateSaid(rate)} is far out of the ordinary. Is it so?`,
    });
  return found;
}

function ofCrank({ engine: { stroke, rodLength } }: Evidence): Found[] {
  if (stroke === undefined || rodLength === undefined) return [];
  if (!isPast(rodLength / stroke, ORDINARY.rodToStroke)) return [];
  return [
    {
      code: 'figure-unusual',
      of: 'rod and stroke',
      ask: `A rod of ${inches(rodLength)} to a stroke of ${inches(stroke)} is far out of the ordinary. Are both so?`,
    },
  ];
}

/** A ratio that is planned, and that no rocker has; of a bucket it is none. */
function ofPlans(evidence: Evidence): Found[] {
  const { planned, plannedExhaust, alsoPlanned = [] } = evidence.rockers;
  const plans = [...new Set([planned, plannedExhaust, ...alsoPlanned].flatMap((ratio) => ratio ?? []))];
  if (evidence.engine.gear === 'bucket')
    return plans.slice(0, 1).map((ratio) => ({
      code: 'figures-impossible',
      of: 'ratio of a bucket',
      ask: `A ratio of ${nominalSaid(ratio)} is planned, and a bucket has none: the valve lifts what the lobe does. Which of the two is so?`,
    }));
  return plans
    .filter((ratio) => isPast(ratio, ORDINARY.ratio))
    .map((ratio) => ({
      code: 'figure-unusual',
      of: `planned ratio ${nominalSaid(ratio)}`,
      ask: `A planned ratio of ${nominalSaid(ratio)} is far out of the ordinary. Is it so?`,
    }));
}

/** Figures of the engine and its springs that cannot be or hardly are: asked, and never changed. */
export const figureQuestions = (evidence: Evidence): AssessedQuestion[] =>
  [...ofPlans(evidence), ...ofSprings(evidence), ...ofCrank(evidence)].map(({ code, of, ask }) =>
    asked(
      {
        code,
        weight: 'strong',
        ask,
        knownBy: of,
        test: 'Ask for the figures again, each with its unit, and measure what can be measured as it stands.',
        testAtBench:
          'Read them off again, each with its unit, and measure what can be measured as it stands.',
        byLooking: true,
        restsOn: [],
      },
      { about: { of: 'build' }, step: 'build', answers: evidence.answers, choices: CHOICES },
    ),
  );
