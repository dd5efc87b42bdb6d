import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import { noiseWords } from '../../noise/noise-words.ts';
import type { StopReason } from '../assessment.ts';
import { lowerFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';

/** What an answer tells of a part, beside what it speaks for: whether it may still be turned, or run. */
export interface Damage {
  readonly question: NoiseQuestion;
  readonly answer: string;
  /** As a clause: `a pushrod is bent`. */
  readonly why: string;
}

/** An answer after which nobody turns it. */
export interface Sign extends Damage {
  readonly code: StopReason['code'];
  /** What is done at once, with nothing turned; left out, what every stop of its kind has. */
  readonly first?: string;
}

/**
 * Answers after which nobody turns it.
 *
 * Source: common practice, no published source; a pin that creeps out of its tip is a forum case in which most of the
 * others crept too; needles missing, a shop's page on pivot bearings; bent pushrods, a parts store's guide.
 */
export const SIGNS: readonly Sign[] = [
  {
    question: 'noise-signs',
    answer: 'metal',
    code: 'sign-of-damage',
    why: 'metal was found in the oil or the filter',
    first: 'Leave it as it stands: keep the oil and the filter, and photograph what was found',
  },
  {
    question: 'noise-signs',
    answer: 'broken',
    code: 'sign-of-damage',
    why: 'a piece is broken, cracked or missing',
    first: 'Leave it as it stands: photograph what is broken, and count the pieces',
  },
  {
    question: 'noise-signs',
    answer: 'tight',
    code: 'sign-of-damage',
    why: 'it turns tight',
    first: 'Leave it as it stands: write down where it went tight, and photograph what can be seen there',
  },
  {
    question: 'noise-signs',
    answer: 'contact',
    code: 'sign-of-damage',
    why: 'something hit or bent',
    first: 'Leave it as it stands: photograph what hit or bent, and say which parts are off',
  },
  {
    question: 'noise-history',
    answer: 'grew-again',
    code: 'lash-grew-again',
    why: 'the gap had grown once more after it was set again',
  },
  {
    question: 'noise-nut',
    answer: 'off',
    code: 'part-damaged',
    why: 'a nut is off, or a rocker hangs loose',
  },
  {
    question: 'noise-stud',
    answer: 'moves',
    code: 'part-damaged',
    why: 'the stud moves, leans or stands higher',
  },
  { question: 'noise-pushrod', answer: 'bent', code: 'part-damaged', why: 'a pushrod is bent' },
  { question: 'noise-roller', answer: 'pin-moved', code: 'part-damaged', why: 'the roller’s pin has moved' },
  {
    question: 'noise-trunnion',
    answer: 'missing',
    code: 'part-damaged',
    why: 'needles of the pivot’s bearing are missing',
  },
];

/** Answers after which nobody runs it, and what is done first. */
export const NOT_RUN: readonly (Damage & { readonly first: string })[] = [
  {
    question: 'noise-oil',
    answer: 'low',
    why: 'the oil, or its pressure, is low',
    first:
      'Fill the oil to its mark, have its pressure read on a gauge, and see whether oil comes up at the valves. It runs again once all three are as they should be.',
  },
  {
    question: 'noise-nut',
    answer: 'moved',
    why: 'the nut has moved',
    first: ADJUSTER_WORDS.stud.mend,
  },
  {
    question: 'noise-thread',
    answer: 'worn',
    why: 'the thread of the adjuster or its nut is worn',
    first: 'Change both; a pressed stud is a qualified shop’s work.',
  },
  ...(
    [
      ['noise-pushrod', 'pushrod ends or cup are worn'],
      ['noise-tip', 'the stem’s tip or its cap is worn'],
      ['noise-roller', 'the roller sticks or has a flat'],
      ['noise-trunnion', 'the bearing at the pivot is rough, brown or loose'],
    ] as const
  ).map(([question, why]) => ({
    question,
    answer: 'worn',
    why,
    first: 'Look at all the others like it, and change what is worn.',
  })),
];

/** `the nut has moved`, in the word of what sets the gap of this engine. */
export const hasMovedSaid = ({ engine }: Pick<Evidence, 'engine'>): string =>
  `the ${lowerFirst(noiseWords('noise-nut', adjusterKind(engine)).name)} has moved`;

/** What was found of the lock or its threads, in the words of what sets the gap of this engine; else as the table has it. */
export function whySaid(
  { question, answer, why }: Pick<Damage, 'question' | 'answer' | 'why'>,
  { engine }: Pick<Evidence, 'engine'>,
): string {
  const kind = adjusterKind(engine);
  const { part, lock } = ADJUSTER_WORDS[kind];
  if (question === 'noise-nut' && answer === 'moved') return hasMovedSaid({ engine });
  if (kind === 'stud' || kind === 'not-known') return why;
  if (question === 'noise-nut' && answer === 'off') return `the ${part} is off, or a rocker hangs loose`;
  return question === 'noise-thread' && answer === 'worn' ? `the threads of ${lock} are worn` : why;
}

/** Answers about a part that may have words beside them which tell more than the answer does. */
const OF_PARTS: ReadonlySet<NoiseQuestion> = new Set([
  'noise-nut',
  'noise-set-screw',
  'noise-stud',
  'noise-stud-top',
  'noise-thread',
  'noise-pushrod',
  'noise-tip',
  'noise-roller',
  'noise-trunnion',
]);

const DAMAGED =
  /\b(missing|gone|lost|bent|broken?|snapped|sheared|crack(ed)?|split|seized|pulled (up|out)|(stand|stick|stood|stuck)s? out|walked|(came|come|coming|fell|fallen|hangs?|hanging|backed) (out|off|loose))\b/i;
const DENIED = /\b(no|not|none|nothing|never|without|isn.t|aren.t|wasn.t|weren.t|didn.t)\b/i;

/** Whether the words beside an answer about a part name damage, and do not deny it. */
export function wordsTellDamage(question: NoiseQuestion, words: string): boolean {
  if (!OF_PARTS.has(question)) return false;
  return words.split(/[.;,]|\bbut\b/).some((clause) => DAMAGED.test(clause) && !DENIED.test(clause));
}

/** Of a part: the graver answer that words beside a milder one amount to. */
const GRAVER: Readonly<Partial<Record<NoiseQuestion, { readonly answer: string; readonly by: RegExp }>>> = {
  'noise-pushrod': { answer: 'bent', by: /\bbent\b/i },
  'noise-roller': { answer: 'pin-moved', by: /\bpin\b/i },
  'noise-trunnion': { answer: 'missing', by: /\b(missing|gone|lost)\b/i },
};

/** What an answer amounts to with the words beside it: `worn`, and beside it that it is bent, counts as bent. */
export function toldAs(
  question: NoiseQuestion,
  said: { readonly answer: string; readonly words: string } | undefined,
): string | undefined {
  const graver = GRAVER[question];
  if (said?.answer !== 'worn' || graver === undefined) return said?.answer;
  return wordsTellDamage(question, said.words) && graver.by.test(said.words) ? graver.answer : said.answer;
}
