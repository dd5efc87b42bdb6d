import type { AssessedQuestion, Judgement } from '../../assessment.ts';
import { lowerFirst } from '../../common/said.ts';
import type { Said } from './said.ts';

/** How they were read: whoever read them says so at once. */
const NOT_SAID: ReadonlySet<string> = new Set(['spring-not-said', 'lifter-not-said']);

/** How the valves were read, before anything is made of one that is odd. */
export const ofReading = (questions: readonly AssessedQuestion[]): Said[] =>
  questions
    .filter(({ step, code, answered }) => step === 'sheet' && NOT_SAID.has(code) && answered === undefined)
    .map(({ code, about, ask, answers }) => ({
      action: code,
      about,
      sentence: `Ask: ${lowerFirst(ask).slice(0, -1)}: ${answers.map(({ label }) => lowerFirst(label)).join(', or ')}?`,
      reason: 'What a lift shows hangs on it, and whoever read them knows.',
      turns: false as const,
    }));

/** Read with the lash in, as was answered of the whole sheet: all of them again before anything rests on them. */
export const ofLashIn = (judgements: readonly Judgement[]): Said[] =>
  judgements
    .filter(({ again }) => again === 'lash-in')
    .map(({ about, sentence }) => ({
      action: 'read-again',
      about,
      sentence: 'Read the valve lifts of the sheet again with the lash taken up to zero.',
      reason: sentence,
    }));
