import type { AssessedQuestion } from '../assessment.ts';
import { asked, foundOf, inDoubt } from '../common/asked.ts';
import { type Lack, toAnswer, toRead } from '../common/lack.ts';
import { once } from '../common/once.ts';
import { byPlace, listed, placeOf } from '../common/said.ts';
import { wasThere } from '../common/since.ts';
import type {
  AnswerEvidence,
  Evidence,
  EvidenceEntry,
  ScanEvidence,
  SheetEvidence,
  ValvePlace,
} from '../evidence.ts';
import { type CamFound, camFound } from './counting.ts';
import { againstSaid, isWithinWheel } from './readings.ts';

/** The question whether a scan was read with the cam where it was found. */
export const CAM_THEN = 'cam-then';

const CHOICES: AssessedQuestion['answers'] = [
  {
    code: 'not-found',
    label: 'It was read with the cam where it is',
    changes: 'Gaps and timing belong together, and each gap counts.',
  },
  {
    code: 'found',
    label: 'The cam was moved after that',
    changes: 'None of these gaps holds: each valve is read again with the cam where it is.',
    // It was of the cam as it stood: what lacks now is a reading, and there is nothing to enter again.
    leadsTo: 'nothing',
  },
];

/** ` 4° advanced against the card`; of a cam that was moved and now stands straight up only that it was moved. */
function foundSaid({ advance, cardOpen }: CamFound): string {
  if (cardOpen === true) return 'The cam may stand off its card: which centreline the card has is asked.';
  return advance === undefined || isWithinWheel(advance)
    ? 'The cam was read in two places, and may have been moved.'
    : `The cam was found ${againstSaid(advance)}.`;
}

type GapRead = ValvePlace & EvidenceEntry;

/** Every gap to the piston that stands: over the crank, or typed by itself. */
function gapsRead({ scans = [], sheet }: Evidence): GapRead[] {
  const typed = sheet.filter(({ kind, scan }) => kind === 'piston-to-valve' && scan === undefined);
  return [...scans, ...typed].filter(({ standing }) => standing);
}

/** The question, of these gaps. */
function askedOfGaps(of: readonly GapRead[], found: CamFound, evidence: Evidence): AssessedQuestion {
  const scans = new Set((evidence.scans ?? []).map(({ id }) => id));
  const places = [...new Set(of.toSorted(byPlace).map(placeOf))];
  return asked(
    {
      code: CAM_THEN,
      knownBy: CAM_THEN,
      weight: 'strong',
      ask: 'Was piston to valve read with the cam where it is now, or was the cam moved after that?',
      size: `${foundSaid(found)} Advance brings the intake nearer to the piston, retard the exhaust. It is asked of ${listed(places)}.`,
      test: 'Say which came first, and what was done to the cam between. What was read before it was moved is struck out, where only some of it was.',
      byLooking: true,
      // A scan is of the timing that it was read with.
      alsoOf: ['timing'],
      restsOn: of.map(({ id }) => id),
    },
    {
      about: { of: 'build' },
      step: of.some(({ id }) => scans.has(id)) ? 'scan' : 'sheet',
      among: found.place,
      answers: evidence.answers,
      choices: CHOICES,
    },
  );
}

/**
 * The answer that it was moved, as it was given first: said again it is still of what was read till then, and said once
 * more after it had been said otherwise it is of all that was read till that.
 */
function movedFirstSaid(question: AssessedQuestion, { answers }: Evidence): AnswerEvidence | undefined {
  const own = answers
    .filter(({ questionId, id }) => questionId === question.id || id === question.answered?.entryId)
    .toSorted((a, b) => a.line - b.line);
  const otherwise = own.findLastIndex((each) => foundOf(each, CHOICES) !== true);
  return own[otherwise + 1];
}

/**
 * A gap to the piston holds for the cam as it stood. Which came first says nothing, since either may be told late: once
 * the cam was found off its card, or in two places, it is asked of all gaps at once, and once. That it was not moved
 * holds for all of them; that it was moved, for those that were there: what is read later is read with the cam where it
 * is.
 */
function camQuestion(evidence: Evidence): AssessedQuestion | undefined {
  const found = camFound(evidence);
  const gaps = gapsRead(evidence);
  if (found === undefined || gaps.length === 0) return undefined;
  const question = askedOfGaps(gaps, found, evidence);
  if (question.answered?.found !== true) return question;
  const moved = movedFirstSaid(question, evidence);
  return askedOfGaps(
    gaps.filter((gap) => moved !== undefined && wasThere(gap, moved)),
    found,
    evidence,
  );
}

/** The same as a list, of none or one. */
export const camQuestions = once((evidence: Evidence): readonly AssessedQuestion[] => {
  const question = camQuestion(evidence);
  return question === undefined || question.restsOn.length === 0 ? [] : [question];
});

/** What is asked of the gap that was read there. */
const askedOf = ({ id }: { readonly id: string }, evidence: Evidence): AssessedQuestion | undefined =>
  camQuestions(evidence).find(({ restsOn }) => restsOn.includes(id));

export const camAsked = (scan: ScanEvidence, evidence: Evidence): AssessedQuestion[] => {
  const question = askedOf(scan, evidence);
  return question === undefined ? [] : [question];
};

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
  const question = askedOf(entry, evidence);
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
