import { beginsWith } from '../begins-with.ts';

/**
 * What is asked on a call about noise, a loosening adjuster or a failure, in the order of a desk's usual call, with the
 * answers that each may have. The codes are stored: the list only grows.
 */
export const NOISE_QUESTIONS = {
  'noise-signs': {
    name: 'Signs of damage',
    ask: 'Metal in the oil or the filter, a piece broken or missing, a tight spot, anything hit or bent?',
    answers: {
      none: 'None of these',
      metal: 'Metal in the oil or the filter',
      broken: 'A piece broken, cracked or missing',
      tight: 'It turns tight',
      contact: 'Something hit or bent',
    },
  },
  'noise-which': {
    name: 'One valve or all',
    ask: 'Is it one valve, several, or all of them?',
    answers: { one: 'One valve', several: 'Several', all: 'All of them' },
  },
  'noise-oil': {
    name: 'Oil',
    ask: 'Is the oil pressure what it always was, and is the oil on its mark?',
    answers: { usual: 'As it always was', low: 'Lower than it was, or the oil is low' },
  },
  'noise-heat': {
    name: 'Cold or hot',
    ask: 'Is it there cold, hot, or both?',
    answers: { cold: 'Cold, and gone when hot', hot: 'Hot alone', both: 'Cold and hot' },
  },
  'noise-hours': {
    name: 'Hours since it was set',
    ask: 'After how many hours did it come: with the first running, slowly, or all at once?',
    answers: {
      'first-running': 'With the first running',
      slowly: 'Slowly, over many hours',
      suddenly: 'All at once, after it had run well',
    },
  },
  'noise-speed': {
    name: 'Speed (rpm)',
    ask: 'At which speed (rpm) is it there: from idle on, or only high up?',
    answers: { 'from-idle': 'From idle on', 'high-only': 'Only high up' },
  },
  'noise-nut': {
    name: 'Nut',
    ask: 'Had the nut or its lock moved, before anything was touched?',
    answers: { moved: 'It has moved', held: 'It has not moved', off: 'It is off, or the rocker hangs loose' },
  },
  'noise-history': {
    name: 'Lash history',
    ask: 'Was it set again since, and what was found then?',
    answers: {
      'not-again': 'Not set again since',
      'came-back': 'Set again, and the noise came back',
      'grew-again': 'Set again, and the gap had grown once more',
    },
  },
  'noise-set-screw': {
    name: 'Set-screw of the nut',
    ask: 'Is the set-screw still tight in the nut?',
    answers: { tight: 'It is tight', loose: 'It is loose' },
  },
  'noise-nut-used': {
    name: 'Nut new or used again',
    ask: 'Was the nut new, or had it been on before?',
    answers: { new: 'It was new', again: 'It had been on before' },
  },
  'noise-stud': {
    name: 'Stud',
    ask: 'Does the stud stand firm, square and as high as its neighbours?',
    answers: { firm: 'Firm, square and as high', moves: 'It moves, leans, or stands higher' },
  },
  'noise-stud-top': {
    name: 'Top of the stud',
    ask: 'Is the top of the stud flat where the set-screw bears?',
    answers: { flat: 'It is flat', domed: 'Domed, burred or dented' },
  },
  'noise-thread': {
    name: 'Thread of the adjuster',
    ask: 'Is the thread sound, and is the nut on it with its whole length?',
    answers: { sound: 'Sound, the whole nut on it', worn: 'Worn, pulled, or few turns on it' },
  },
  'noise-pushrod': {
    name: 'Pushrod and cup',
    ask: 'Are both ends of the pushrod and the cup smooth, and is the pushrod straight?',
    answers: { smooth: 'Smooth and straight', worn: 'Worn or dented', bent: 'Bent' },
  },
  'noise-tip': {
    name: 'Stem’s tip',
    ask: 'Is the stem’s tip, or its cap, flat and smooth?',
    answers: { smooth: 'Flat and smooth', worn: 'Worn, dented or mushroomed' },
  },
  'noise-roller': {
    name: 'Roller and its pin',
    ask: 'Does the roller go round freely, without a flat, and is its pin in place?',
    answers: {
      free: 'Free, round, the pin in place',
      worn: 'It sticks, or has a flat',
      'pin-moved': 'The pin has moved',
    },
  },
  'noise-trunnion': {
    name: 'Bearing at the pivot',
    ask: 'Is the bearing at the pivot smooth, without play, and not brown?',
    answers: {
      smooth: 'Smooth, no play',
      worn: 'Rough, brown or loose',
      missing: 'Needles are missing',
    },
  },
} as const;

export type NoiseQuestion = keyof typeof NOISE_QUESTIONS;
/** The answers of one question, beside that it is not known. */
export type NoiseAnswer<Question extends NoiseQuestion> = Extract<
  keyof (typeof NOISE_QUESTIONS)[Question]['answers'],
  string
>;

/** Asked, and nobody knows: kept like every answer, and it speaks for nothing. */
export const NOT_KNOWN = 'not-known';

export const isNoiseQuestion = (code: string): code is NoiseQuestion => Object.hasOwn(NOISE_QUESTIONS, code);

/** Which of these questions an answer is to: by its id in the assessment, else by its word. */
export function noiseQuestionOf(
  questionId: string | undefined,
  code: string | undefined,
): NoiseQuestion | undefined {
  const named = questionId === undefined ? (code ?? '') : (questionId.split(':')[1] ?? '');
  return isNoiseQuestion(named) ? named : undefined;
}

/** The words that an answer to it may begin with. */
export const answersTo = (question: NoiseQuestion): Readonly<Record<string, string>> => ({
  ...NOISE_QUESTIONS[question].answers,
  [NOT_KNOWN]: 'Not known',
});

/** The answer that what was said begins with. */
export const noiseAnswerIn = (question: NoiseQuestion, said: string): string | undefined =>
  Object.keys(answersTo(question)).find((code) => beginsWith(said, code));

/** The one question whose answer may name a valve. */
export const namesValve = (question: NoiseQuestion | undefined, said: string): boolean =>
  question === 'noise-which' && beginsWith(said, 'one');
