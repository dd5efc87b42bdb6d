import { defined } from '../../../../../shared/defined.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { asked, foundOf } from '../../common/asked.ts';
import { wasThere } from '../../common/since.ts';
import type { AnswerEvidence, Evidence } from '../../evidence.ts';
import { WHOSE_VALVE } from '../../ratio/compared/lobe-low.ts';
import type { SheetRow } from '../rows/rows.ts';

const OTHER = { intake: 'exhaust', exhaust: 'intake' } as const;
type Named = keyof typeof OTHER;
const isNamed = (valve: string): valve is Named => valve in OTHER;

interface OfValve {
  readonly question: AssessedQuestion;
  readonly cylinder: number;
  readonly valve: Named;
}

/** Whether a row was read on the other valve of its cylinder. */
const ofValves = (questions: readonly AssessedQuestion[]): OfValve[] =>
  questions.flatMap((question) => {
    const { about, code } = question;
    return code === WHOSE_VALVE && about.of === 'valve' && isNamed(about.valve)
      ? [{ question, cylinder: about.cylinder, valve: about.valve }]
      : [];
  });

/** Both rows of a cylinder are the other’s: one mistake, asked once, and answered for both. */
function asOne({ answers }: Evidence, { question, cylinder }: OfValve, other: OfValve): AssessedQuestion {
  const both = [question, other.question];
  const made = asked(
    {
      code: WHOSE_VALVE,
      weight: both.some(({ weight }) => weight === 'strong') ? 'strong' : 'weak',
      ask: `Could intake and exhaust of cylinder ${cylinder} be entered the one for the other?`,
      knownBy: 'Could this be the other valve of the cylinder?',
      size: both.flatMap(({ size }) => size ?? []).join(' '),
      test: question.test,
      restsOn: both.flatMap(({ restsOn }) => restsOn),
    },
    { about: question.about, step: 'sheet', among: amongOf(question), answers, choices: question.answers },
  );
  const answered = made.answered ?? question.answered ?? other.question.answered;
  return answered === undefined ? made : { ...made, answered };
}

const amongOf = ({ id }: AssessedQuestion): string => id.split(':').slice(3, -1).join(':');

/** What was answered of the two together, once one of them was put right: it was said of both. */
function answerOfBoth(
  { answers, sheet }: Evidence,
  { question, cylinder, valve }: OfValve,
): AnswerEvidence | undefined {
  const id = question.id.replace(`:${cylinder}-${valve}:`, `:${cylinder}-${OTHER[valve]}:`);
  const given = answers.findLast(({ questionId }) => questionId === id);
  const own = sheet.filter((each) => question.restsOn.includes(each.id));
  return given !== undefined && own.every((each) => wasThere(each, given)) ? given : undefined;
}

/** The other valve of the cylinder reads its own lobe: that this one was read there says the less. */
function isOtherRead(
  rows: readonly SheetRow[],
  { question, cylinder, valve }: OfValve,
  all: readonly OfValve[],
) {
  const other = rows.find((row) => row.cylinder === cylinder && row.valve === OTHER[valve]);
  const isAsked = all.some((each) => each.cylinder === cylinder && each.valve === OTHER[valve]);
  return question.answered === undefined && other?.lobe?.value !== undefined && !isAsked;
}

/**
 * Intake and exhaust of one cylinder taken for one another: asked once of the two. Where the other valve reads as it
 * should, its lobe was not read here, and what else makes this one read so is told first.
 */
export function onceOfCylinder(
  evidence: Evidence,
  rows: readonly SheetRow[],
  questions: readonly AssessedQuestion[],
): AssessedQuestion[] {
  const all = ofValves(questions);
  return questions.flatMap((question) => {
    const own = all.find((each) => each.question === question);
    if (own === undefined) return [question];
    const partner = all.find((each) => each.cylinder === own.cylinder && each.valve === OTHER[own.valve]);
    if (partner !== undefined) return own.valve === 'intake' ? [asOne(evidence, own, partner)] : [];
    const given = question.answered === undefined ? answerOfBoth(evidence, own) : undefined;
    if (given !== undefined) {
      const { id: entryId, answer } = given;
      const found = foundOf(given, question.answers);
      return [{ ...question, answered: { entryId, answer, ...defined({ found }) } }];
    }
    return [isOtherRead(rows, own, all) ? { ...question, weight: 'weak' as const } : question];
  });
}
