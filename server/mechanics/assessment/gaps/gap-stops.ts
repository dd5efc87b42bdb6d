import { SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { type GapBounds, gapSaid } from '../common/gap-said.ts';
import { inches, placeOf, valveSubject } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { AnswerEvidence, Evidence } from '../evidence.ts';
import { foundWrongBy } from './found-wrong.ts';
import type { JudgedGap } from './gap.ts';
import { withArms } from './with-arms.ts';

interface ShortGap {
  readonly question: AssessedQuestion;
  readonly stop: StopReason;
}

const SHORT = {
  code: 'found',
  label: 'Looked: it is short',
  changes: 'The stop stands until the desk lifts it, with the reason.',
} as const;
const WRONG = {
  code: 'not-found',
  label: 'It was read or written wrong',
  changes: 'The desk strikes the reading out, with the reason: the stop goes with it.',
} as const;
const READ_AGAIN = {
  code: 'read-again',
  label: 'Another reading is wanted, once the desk allows it',
  changes: 'The desk lifts the stop for that alone: by hand, gently, while there is room. It is not run.',
} as const;

/** There is room, if less than is wanted: nothing has met, and by hand it can be read once more. */
const hasRoom = ({ value, low, high }: GapBounds): boolean => (low ?? value ?? high ?? 0) > 0;

/** What is asked and done where there is room, and where parts may have met. */
function wordsOf(gap: GapBounds, answer: string | undefined) {
  const answered = answer !== undefined;
  if (!hasRoom(gap))
    return {
      start: 'Do not turn it',
      test: 'With nothing turned: say which parts are in it and how it was read. A qualified shop looks whether the parts have met.',
      ...wayOutOf('have a qualified shop look whether the parts have met', answered),
    };
  return {
    start: 'Do not run it, and do not turn it yet',
    test: 'With nothing turned: say which parts are in it and how it was read. There is room: nothing has met. A qualified shop looks before it runs.',
    ...(answer === READ_AGAIN.code ? TO_READ_AGAIN : wayOutOf('look how it was read and written', answered)),
  };
}

const TO_READ_AGAIN = {
  wayOut:
    'Another reading is wanted. The desk first lifts the stop for that: by hand, gently, and it is not run. Or it strikes out a wrong reading, with the reason.',
  wayOutAtBench: 'Another reading is wanted. Leave it until the desk has lifted the stop.',
} as const;

const saidOf = ({ entry }: JudgedGap): string =>
  `${SHEET_KINDS[entry.kind].toLowerCase()} on ${placeOf(entry)}`;

const sizeOf = ({ gap, limit }: JudgedGap): string => `${gapSaid(gap)} against ${inches(limit.value)}`;

/** Whether a reading that is short holds, asked of that very reading. */
function askedOf(judged: JudgedGap, evidence: Evidence): AssessedQuestion {
  const { entry, gap, limit } = judged;
  const { answers } = evidence;
  const said = saidOf(judged);
  const question = asked(
    {
      code: 'gap-short',
      weight: 'weak',
      ask: `Is ${entry.kind === 'cover' ? '' : 'the '}${said} short, or was it read or written wrong?`,
      knownBy: `Is the ${said} short, or was it read or written wrong?`,
      size: `As it was read: ${sizeOf(judged)} (${limit.source}).`,
      test: wordsOf(gap, undefined).test,
      restsOn: [entry.id],
    },
    {
      about: valveSubject(entry),
      step: 'sheet',
      among: entry.id,
      answers,
      choices: hasRoom(gap) ? [SHORT, WRONG, READ_AGAIN] : [SHORT, WRONG],
    },
  );
  // Whoever said it of the reading in another question has answered this one.
  const wrong = foundWrongBy(entry, evidence);
  return question.answered !== undefined || wrong === undefined
    ? question
    : { ...question, answered: { entryId: wrong.entryId, answer: WRONG.code, found: false } };
}

/** The answer that another reading of a gap that is short is wanted; nothing where it is not short, or that was not said. */
export function againWanted(judged: JudgedGap, evidence: Evidence): AnswerEvidence | undefined {
  if (judged.word !== 'short') return undefined;
  const question = askedOf(judged, evidence);
  return chosenOf(question) === READ_AGAIN.code
    ? evidence.answers.find(({ id }) => id === question.answered?.entryId)
    : undefined;
}

/**
 * A gap that was read short stops everything: until what was found is answered and a person lifts it, or its reading is
 * struck out with a reason. Each reading that is short has its own stop: a later one that is short as well stands again.
 */
export function shortGap(judged: JudgedGap, evidence: Evidence): ShortGap[] {
  const { entry, gap, word } = judged;
  if (word !== 'short') return [];
  const about = valveSubject(entry);
  const question = askedOf(judged, evidence);
  const armsOff = entry.otherArms === 'off-since';
  const why = `${saidOf(judged)}${armsOff ? ` ${withArms(entry)}` : ''} is short, ${sizeOf(judged)}`;
  const answered = question.answered !== undefined;
  const { start, wayOut, wayOutAtBench } = wordsOf(gap, answered ? (chosenOf(question) ?? '') : undefined);
  return [
    {
      question,
      stop: {
        id: `stop:gap-short:${entry.kind}:${entry.id}`,
        code: 'gap-short',
        about,
        sentence: `${start}: ${why}.`,
        why,
        wayOut,
        wayOutAtBench,
        from: 'readings',
        entryId: entry.id,
        line: entry.line,
        answered,
        ...(armsOff ? { armsOff } : {}),
        restsOn: [entry.id],
      },
    },
  ];
}
