import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import type { AssessedQuestion } from '../../../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence, Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { stopsOf } from '../../../../server/mechanics/assessment/stops-of.ts';
import { type Chance, chanceFrom } from '../../explain-readings/random.ts';
import { DEMO_FAMILY_EVIDENCE } from '../demo-family-evidence.ts';
import { callOf, knownEngine, thou, trueEngine } from './random-engine.ts';
import { noiseAnswersOf } from './random-noise.ts';
import { scansOf } from './random-scans.ts';
import { armsOf, readingsOf, setUpOf } from './random-set-ups.ts';
import { lashLogOf, sheetOf, tipMarksOf } from './random-sheet.ts';
import { statementsOf } from './random-statements.ts';

function partOf(chance: Chance): Evidence['part'] {
  if (chance.happens(0.7)) return [];
  const sizes: readonly (readonly [string, number])[] = [
    ['hole-across-trunnion', 0.4355],
    ['hole-across-trunnion', 0.436],
    ['width-across-trunnion', 1.6],
  ];
  return sizes.map(([kind, inches], index) => ({
    id: `part-${index + 1}`,
    line: 0,
    standing: true,
    kind,
    size: inches * 0.0254,
    typed: String(inches),
    readAs: `${inches} in`,
  }));
}

const OTHER_PART = 'part-in-hand-2';

type PartReading = readonly [kind: string, inches: number, more?: Partial<Evidence['part'][number]>];

/** What else may be on record of parts in the hand: guesses, a pitch, a slip, two names entered for each other. */
const MORE: readonly (readonly PartReading[])[] = [
  [],
  [['roller-diameter', 0.5, { tool: 'guess' }]],
  [
    ['roller-diameter', 4.96],
    ['body-width', 0.84],
  ],
  [
    ['body-width', 0.4362],
    ['pivot-to-tip', 1.45],
    ['pivot-to-cup', 0.911],
  ],
  [
    ['pivot-to-tip', 0.911],
    ['pivot-to-cup', 1.45, { tool: 'rule' }],
    ['stem-diameter', 0.341],
  ],
  [
    ['stud-pitch', 0.5, { count: 10 }],
    ['stud-diameter', 0.4335, { tool: 'micrometer' }],
  ],
  [
    ['roller-diameter', 0.35],
    ['body-width', 0.84],
    ['pivot-to-tip', 1.453],
  ],
];

function moreOf(chance: Chance): Pick<Evidence, 'part' | 'handParts'> {
  const second = chance.happens(0.4);
  const part = chance.pick(MORE).map(([kind, inches, more = {}], index) => ({
    id: `more-${index + 1}`,
    line: 0,
    standing: true,
    kind,
    size: inches * 0.0254,
    typed: String(inches),
    readAs: `${inches} in`,
    ...(second && chance.happens(0.6) ? { partId: OTHER_PART } : {}),
    ...more,
  }));
  return second ? { part, handParts: [{ id: OTHER_PART, name: 'the one from the box' }] } : { part };
}

/** Where a part was read its catalogue is there, now and then an empty one. */
function partAndFamilies(chance: Chance, own: Chance): Pick<Evidence, 'part' | 'handParts' | 'families'> {
  const first = partOf(chance);
  if (first.length === 0) return { part: first };
  const more = moreOf(own);
  return {
    ...more,
    part: [...first, ...more.part],
    families: chance.pick([[], DEMO_FAMILY_EVIDENCE.slice(0, 12), DEMO_FAMILY_EVIDENCE]),
  };
}

function answerTo(chance: Chance, question: AssessedQuestion, index: number): AnswerEvidence {
  const choice = chance.pick(question.answers);
  const byCode = chance.happens(0.3);
  const found = { found: true, 'not-found': false }[choice.code];
  const amount =
    choice.value ?? (choice.takesValue === true ? thou(chance.between(0.008, 0.026)) : undefined);
  return {
    id: `answer-${index + 1}`,
    line: index + 1,
    code: question.code,
    question: byCode ? question.code : question.ask,
    answer: choice.code,
    ...(amount === undefined || (choice.value === undefined && chance.happens(0.3)) ? {} : { value: amount }),
    ...(found === undefined || chance.happens(0.3) ? {} : { found }),
    ...(question.about.of === 'set-up' ? { setUpId: question.about.setUpId } : { questionId: question.id }),
  };
}

/** Some of the questions are answered, now and then twice. */
function answersOf(chance: Chance, evidence: Evidence): AnswerEvidence[] {
  if (chance.happens(0.6)) return [];
  const asked = assess(evidence).questions.filter(() => chance.happens(0.4));
  const again = asked.filter(() => chance.happens(0.2));
  return [...asked, ...again].map((question, index) => answerTo(chance, question, index));
}

/** Lines in the order of the lists: a record as it might have been written. */
export function numbered(evidence: Evidence): Evidence {
  let line = 0;
  const lined = <T extends { line: number }>(entries: readonly T[]): T[] =>
    entries.map((entry) => {
      line += 1;
      return { ...entry, line };
    });
  return {
    ...evidence,
    passes: lined(evidence.passes),
    sheet: lined(evidence.sheet),
    scans: lined(evidence.scans ?? []),
    lash: lined(evidence.lash),
    tipMarks: lined(evidence.tipMarks),
    part: lined(evidence.part),
    ...saidInTurn(evidence, lined),
    workings: lined(evidence.workings),
  };
}

/** Statements and answers keep the order they were said in among each other: a later one puts an earlier one right. */
function saidInTurn(
  { statements, answers }: Evidence,
  lined: <T extends { line: number }>(entries: readonly T[]) => T[],
): Pick<Evidence, 'statements' | 'answers'> {
  const inTurn = [...statements, ...answers].toSorted((a, b) => a.line - b.line);
  const lines = new Map(lined(inTurn).map(({ id, line }) => [id, line]));
  const again = <T extends { id: string; line: number }>(entries: readonly T[]): T[] =>
    entries.map((entry) => ({ ...entry, line: lines.get(entry.id) ?? entry.line }));
  return { statements: again(statements), answers: again(answers) };
}

/** Now and then a person has lifted what stands; what the readings still raise is not lifted by that. */
function liftedOf(chance: Chance, evidence: Evidence): Pick<Evidence['call'], 'stopsLifted'> {
  if (chance.happens(0.85)) return {};
  return {
    stopsLifted: stopsOf(evidence).map(({ id, entryId }) => ({
      stopId: id,
      ...(entryId === undefined ? {} : { entryId }),
    })),
  };
}

/** A build of which anything may be known, with whatever mistakes were made in reading it. */
export function buildOf(seed: number): Evidence {
  const chance = chanceFrom(seed);
  const engine = trueEngine(chance);
  const arms = armsOf(chance, engine);
  const count = chance.pick([0, 1, 1, 1, 2, 2, 3]);
  const setUps = Array.from({ length: count }, (_, index) => setUpOf(chance, index + 1, arms, engine));
  const [first] = arms;
  const bare: Evidence = {
    call: callOf(chance, engine),
    ...knownEngine(chance, engine),
    arms,
    seats: first === undefined ? [] : [{ cylinder: 1, valve: 'intake', armId: first.id }],
    setUps,
    statements: statementsOf(chance, setUps, arms),
    passes: setUps.flatMap((setUp) => readingsOf(chance, setUp, engine)),
    sheet: sheetOf(chance, engine, arms),
    scans: scansOf(chanceFrom(seed + 2_000_000), engine),
    lash: lashLogOf(chance),
    tipMarks: tipMarksOf(chance),
    ...partAndFamilies(chance, chanceFrom(seed + 1_000_000)),
    answers: [],
    workings: [],
    notes: [],
    catalogueRatios: chance.happens(0.5) ? [1.5, 1.6, 1.73, 1.85] : [],
    limits: {},
  };
  const evidence = numbered(bare);
  const told = noiseAnswersOf(chanceFrom(seed + 2_000_000));
  const asked = { ...evidence, answers: [...answersOf(chance, evidence), ...told] };
  return numbered({ ...asked, call: { ...asked.call, ...liftedOf(chance, asked) } });
}
