import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ScanEvidence } from '../evidence.ts';
import { camFound } from '../timing/counting.ts';
import { againstSaid, isWithinWheel } from '../timing/readings.ts';

/** The question whether a scan was read with the cam where it was found. */
export const CAM_THEN = 'cam-then';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'not-found',
    label: 'It was scanned with the cam where it is',
    changes: 'The scan and the timing belong together, and the gap counts.',
  },
  {
    code: 'found',
    label: 'The cam was moved after the scan',
    changes: 'The gap no longer holds: the valve is scanned again with the cam where it is.',
  },
];

/** ` 4° advanced against the card`; of a cam that was moved and now stands straight up only that it was moved. */
function foundSaid(advance: number | undefined): string {
  return advance === undefined || isWithinWheel(advance)
    ? 'The cam was read in two places, and may have been moved.'
    : `The cam was found ${againstSaid(advance)}.`;
}

/**
 * A scan holds for the cam as it stood. Which came first says nothing, since either may be told late: it is asked of
 * every scan as soon as the cam was found off its card, or in two places.
 */
export function camAsked(scan: ScanEvidence, evidence: Evidence): AssessedQuestion[] {
  const found = camFound(evidence);
  if (found === undefined) return [];
  return [
    asked(
      {
        code: CAM_THEN,
        knownBy: CAM_THEN,
        weight: 'strong',
        ask: `Was ${placeOf(scan)} scanned with the cam where it is now, or was the cam moved after the scan?`,
        size: `${foundSaid(found.advance)} Advance brings the intake nearer to the piston, retard the exhaust.`,
        test: 'Say which came first, and what was done to the cam between.',
        byLooking: true,
        restsOn: [scan.id],
      },
      {
        about: valveSubject(scan),
        step: 'scan',
        among: `${scan.id}:${found.place}`,
        answers: evidence.answers,
        choices: CHOICES,
      },
    ),
  ];
}

/** What was said of the cam at a scan. */
export interface CamThen {
  readonly moved: boolean;
  readonly said: string;
}

/** Undefined where nobody was asked, or nobody said. */
export function camThen(scan: ScanEvidence, evidence: Evidence): CamThen | undefined {
  const [question] = camAsked(scan, evidence);
  const moved = question?.answered?.found;
  if (moved === undefined) return undefined;
  const { advance } = camFound(evidence) ?? {};
  const where =
    advance === undefined
      ? 'where it is now'
      : `as it was found, ${isWithinWheel(advance) ? 'straight up' : againstSaid(advance)}`;
  return {
    moved,
    said: ` It was scanned with the cam ${where}: scan and timing belong together. With the cam moved it is scanned again.`,
  };
}
