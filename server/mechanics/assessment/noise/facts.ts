import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { type AdjusterKind, adjusterKind } from '../../lash/adjuster-words.ts';
import { effectOf } from '../../noise/effects.ts';
import { noiseWords } from '../../noise/noise-words.ts';
import type { Fact } from '../../noise/weigh.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { lastSaid, type NoiseSaid, QUESTIONS, signsNow } from './answers.ts';
import { toldAs } from './damage.ts';
import type { LockTold } from './lock-told.ts';
import type { NutTold } from './nut-told.ts';

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** `Nut: it has moved, “a quarter turn”`. */
function textOf(question: NoiseQuestion, { answer, words, entry }: NoiseSaid, kind: AdjusterKind): string {
  const { name, answers } = noiseWords(question, kind);
  const where = entry.place === undefined ? '' : `, ${placeOf(entry.place)}`;
  const own = words === '' ? '' : `, “${words}”`;
  return `${name}: ${lowerFirst(answers[answer] ?? answer)}${where}${own}`;
}

const factOf = (question: NoiseQuestion, key: string, said: NoiseSaid, kind: AdjusterKind): Fact => ({
  ...effectOf(question, toldAs(question, said) ?? said.answer),
  key,
  text: textOf(question, said, kind),
  restsOn: [said.entry.id],
});

/** What is not known, and what speaks for nothing, is kept as an answer and is no fact. */
const speaks = (fact: Fact): boolean => fact.for.length + fact.against.length > 0;

/** What was answered, each with what it speaks for; of the nut, what counts where the log says otherwise. */
export function factsOfAnswers(evidence: Evidence, nut: NutTold, { aside }: LockTold): Fact[] {
  const kind = adjusterKind(evidence.engine);
  const signs = signsNow(evidence).map((said) =>
    factOf('noise-signs', `noise-signs:${said.answer}`, said, kind),
  );
  const others = QUESTIONS.filter((question) => question !== 'noise-signs').flatMap((question) => {
    const said = lastSaid(question, evidence);
    if (said === undefined || (question === 'noise-nut' && nut.open) || aside.includes(question)) return [];
    const counts = question === 'noise-nut' ? (nut.counts ?? said.answer) : said.answer;
    return [factOf(question, question, { ...said, answer: counts }, kind)];
  });
  return [...signs, ...others].filter(speaks);
}
