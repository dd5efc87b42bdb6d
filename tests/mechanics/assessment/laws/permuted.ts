import type {
  AnswerEvidence,
  Evidence,
  SetUpStatementEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { isNoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { type Chance, chanceFrom } from '../../explain-readings/random.ts';
import { numbered } from './builds.ts';

function shuffled<T>(chance: Chance, items: readonly T[]): T[] {
  return items
    .map((item) => ({ item, key: chance.between(0, 1) }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);
}

type Said = AnswerEvidence | SetUpStatementEvidence;

/** What is said of the state of set-ups keeps its turn; an answer to any other question is a subject by itself. */
const subjectOf = (said: Said): string => {
  if (!('code' in said) || said.setUpId !== undefined) return 'a set-up';
  const { questionId = '', code } = said;
  // Answered by its id or by its word, it is one question.
  if (isNoiseQuestion(code)) return code;
  return /^(lash|plunger|zero|turn|hand)-/.test(code) ? 'a set-up' : `${questionId} ${code}`;
};

/**
 * What was said, in any order but for what is about one thing: said again it puts right what was said before. Lines
 * are in the new order.
 */
function saidInTurn(
  chance: Chance,
  { answers, statements }: Evidence,
): Pick<Evidence, 'answers' | 'statements'> {
  const all: readonly Said[] = [...answers, ...statements].toSorted((a, b) => a.line - b.line);
  const waiting = new Map<string, Said[]>();
  for (const said of all) waiting.set(subjectOf(said), [...(waiting.get(subjectOf(said)) ?? []), said]);
  const inTurn = shuffled(chance, all).flatMap((place) => waiting.get(subjectOf(place))?.shift() ?? []);
  const line = new Map(inTurn.map(({ id }, index) => [id, index]));
  const lined = <T extends Said>(said: readonly T[]): T[] =>
    shuffled(chance, said).map((each) => ({ ...each, line: line.get(each.id) ?? each.line }));
  return { answers: lined(answers), statements: lined(statements) };
}

/**
 * The same entries, entered in another order: lists and line numbers change, while the numbers of passes and set-ups
 * say in which order it was read on the engine, and days when a lash was.
 */
export function permuted(evidence: Evidence, seed: number): Evidence {
  const chance = chanceFrom(seed ^ 0x5bd1e995);
  return numbered({
    ...evidence,
    arms: shuffled(chance, evidence.arms),
    seats: shuffled(chance, evidence.seats),
    setUps: shuffled(chance, evidence.setUps),
    passes: shuffled(chance, evidence.passes),
    sheet: shuffled(chance, evidence.sheet),
    scans: shuffled(chance, evidence.scans ?? []).map((scan) => ({
      ...scan,
      points: shuffled(chance, scan.points),
    })),
    lash: shuffled(chance, evidence.lash),
    tipMarks: shuffled(chance, evidence.tipMarks),
    part: shuffled(chance, evidence.part),
    ...saidInTurn(chance, evidence),
    catalogueRatios: shuffled(chance, evidence.catalogueRatios),
  });
}
