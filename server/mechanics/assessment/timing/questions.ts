import { DEGREE } from '../../setting-order/timing.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence, PeakEvidence } from '../evidence.ts';
import { APART, degrees, type Lined, USUAL_PEAK } from './read.ts';

const MOVED: AssessedQuestion['answers'] = [
  {
    code: 'moved',
    label: 'Yes, moved',
    changes: 'The last reading counts, and the one before is of the old timing.',
  },
  {
    code: 'not-moved',
    label: 'Nothing was moved',
    changes: 'One of the two was read wrong: read it once more.',
  },
];

/** A peak that is told from the wrong side, or of the other lobe, lies outside of where lobes peak. */
function unusual(peaks: readonly PeakEvidence[], { answers }: Evidence): AssessedQuestion[] {
  return peaks
    .filter(({ centreline }) => centreline < USUAL_PEAK.from || centreline > USUAL_PEAK.to)
    .map(({ side, centreline, fromEvents }) =>
      asked(
        {
          code: 'centreline-unusual',
          weight: 'strong',
          ask: `Was each reading of the ${side} told from the right side of its dead centre, and on the right lobe?`,
          size: `${degrees(centreline)}° is outside of the usual ${degrees(USUAL_PEAK.from)} to ${degrees(USUAL_PEAK.to)}.`,
          test: 'turn to the peak by the indicator, and look where the wheel stands.',
          restsOn: [],
        },
        {
          about: { of: 'side', valve: side },
          step: 'timing',
          among: `${fromEvents ? 'events' : 'drop'}-${Math.round(centreline / DEGREE)}`,
          answers,
        },
      ),
    );
}

/** One lobe read the same way twice, and further apart than a wheel explains: the newer counts, and is asked about. */
function readTwice(all: readonly Lined<PeakEvidence>[], { answers }: Evidence): AssessedQuestion[] {
  return (['intake', 'exhaust'] as const).flatMap((side) => {
    const here = all.filter((peak) => peak.side === side);
    const last = here.at(-1);
    const before = here.findLast(
      (peak) =>
        last !== undefined &&
        peak !== last &&
        peak.fromEvents === last.fromEvents &&
        Math.abs(peak.centreline - last.centreline) > APART,
    );
    if (last === undefined || before === undefined) return [];
    return [
      asked(
        {
          code: 'centreline-read-twice',
          weight: 'weak',
          ask: `Was the cam or the pointer moved between the two readings of the ${side}?`,
          size: `It was ${degrees(before.centreline)}° and then ${degrees(last.centreline)}°; what was kept last counts.`,
          test: 'if nothing was moved, read it once more at equal drop, coming up in running direction each time.',
          restsOn: [],
        },
        { about: { of: 'side', valve: side }, step: 'timing', answers, choices: MOVED },
      ),
    ];
  });
}

/** One cam turns both lobes: where one says early and the other late, one was read wrong or the card is another cam's. */
function apart(peaks: readonly PeakEvidence[], { answers }: Evidence): AssessedQuestion[] {
  const [intake, exhaust] = (['intake', 'exhaust'] as const).map((side) =>
    peaks.find((peak) => peak.side === side),
  );
  if (intake?.advance === undefined || exhaust?.advance === undefined) return [];
  if (Math.abs(intake.advance - exhaust.advance) <= APART) return [];
  const way = (advance: number) => `${degrees(advance)}° ${advance < 0 ? 'late' : 'early'}`;
  return [
    asked(
      {
        code: 'lobes-apart',
        weight: 'weak',
        ask: 'Were both lobes read on one cam, one wheel and one pointer, each against its own centreline on the card?',
        size: `Against the card the intake is ${way(intake.advance)} and the exhaust ${way(exhaust.advance)}; one cam moves both alike.`,
        test: 'read both again at equal drop, coming up to the lift in running direction each time.',
        restsOn: [],
      },
      { about: { of: 'build' }, step: 'timing', answers },
    ),
  ];
}

/** What the centrelines are asked before they are leaned on. */
export const timingQuestions = (
  peaks: readonly PeakEvidence[],
  all: readonly Lined<PeakEvidence>[],
  evidence: Evidence,
): AssessedQuestion[] => [
  ...unusual(peaks, evidence),
  ...readTwice(all, evidence),
  ...apart(peaks, evidence),
];
