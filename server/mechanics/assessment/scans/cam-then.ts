import type { AssessedQuestion } from '../assessment.ts';
import { asked, inDoubt } from '../common/asked.ts';
import { type Lack, toAnswer, toRead } from '../common/lack.ts';
import { placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, ScanEvidence, SheetEvidence, ValvePlace } from '../evidence.ts';
import { type CamFound, camFound } from '../timing/counting.ts';
import { againstSaid, isWithinWheel } from '../timing/readings.ts';

/** The question whether a scan was read with the cam where it was found. */
export const CAM_THEN = 'cam-then';

/** How a gap was read: over the crank, or in one place. */
interface HowRead {
  readonly step: 'scan' | 'sheet';
  readonly read: (place: string) => string;
  readonly after: string;
  readonly choices: AssessedQuestion['answers'];
}

const choicesOf = (how: { read: string; it: string; again: string }): AssessedQuestion['answers'] => [
  {
    code: 'not-found',
    label: `It was ${how.read} with the cam where it is`,
    changes: `The ${how.it} and the timing belong together, and the gap counts.`,
  },
  {
    code: 'found',
    label: `The cam was moved after the ${how.it}`,
    changes: `The gap no longer holds: the valve is ${how.again} again with the cam where it is.`,
  },
];

const SCANNED: HowRead = {
  step: 'scan',
  read: (place) => `${place} scanned`,
  after: 'the scan',
  choices: choicesOf({ read: 'scanned', it: 'scan', again: 'scanned' }),
};

const IN_ONE_PLACE: HowRead = {
  step: 'sheet',
  read: (place) => `piston to valve of ${place} read`,
  after: 'that reading',
  choices: choicesOf({ read: 'read', it: 'reading', again: 'read' }),
};

/** ` 4° advanced against the card`; of a cam that was moved and now stands straight up only that it was moved. */
function foundSaid({ advance, cardOpen }: CamFound): string {
  if (cardOpen === true) return 'The cam may stand off its card: which centreline the card has is asked.';
  return advance === undefined || isWithinWheel(advance)
    ? 'The cam was read in two places, and may have been moved.'
    : `The cam was found ${againstSaid(advance)}.`;
}

type GapRead = ValvePlace & { readonly id: string };

/**
 * A gap to the piston holds for the cam as it stood. Which came first says nothing, since either may be told late: it is
 * asked of every one as soon as the cam was found off its card, or in two places.
 */
function askedOf(read: GapRead, how: HowRead, evidence: Evidence): AssessedQuestion[] {
  const found = camFound(evidence);
  if (found === undefined) return [];
  return [
    asked(
      {
        code: CAM_THEN,
        knownBy: CAM_THEN,
        weight: 'strong',
        ask: `Was ${how.read(placeOf(read))} with the cam where it is now, or was the cam moved after ${how.after}?`,
        size: `${foundSaid(found)} Advance brings the intake nearer to the piston, retard the exhaust.`,
        test: 'Say which came first, and what was done to the cam between.',
        byLooking: true,
        restsOn: [read.id],
      },
      {
        about: valveSubject(read),
        step: how.step,
        among: `${read.id}:${found.place}`,
        answers: evidence.answers,
        choices: how.choices,
      },
    ),
  ];
}

export const camAsked = (scan: ScanEvidence, evidence: Evidence): AssessedQuestion[] =>
  askedOf(scan, SCANNED, evidence);

/** What the cam asks of a gap that was read in one place. */
export interface CamInGap {
  readonly question: AssessedQuestion;
  /** It was moved after it: it says nothing of the engine as it is. */
  readonly moved: boolean;
  readonly needs: readonly Lack[];
}

/** The same rule as for a scan: a gap typed by itself knows as little of where the cam stood. */
export function camInGap(entry: SheetEvidence, evidence: Evidence): CamInGap | undefined {
  if (entry.kind !== 'piston-to-valve' || entry.scan !== undefined) return undefined;
  const [question] = askedOf(entry, IN_ONE_PLACE, evidence);
  if (question === undefined) return undefined;
  const moved = question.answered?.found === true;
  const needs = moved
    ? [
        toRead(
          'with-cam-now',
          'a reading with the cam where it is now: it was moved after this one, and the gap no longer holds',
        ),
      ]
    : inDoubt(question)
      ? [toAnswer(question, `an answer to this: ${question.ask}`)]
      : [];
  return { question, moved, needs };
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
