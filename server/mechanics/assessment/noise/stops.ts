import type { NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import type { StopReason } from '../assessment.ts';
import { valveSubject } from '../common/said.ts';
import { SHOP_LOOKS } from '../common/way-out.ts';
import type { Evidence } from '../evidence.ts';
import { noisyValve, saidTo } from './answers.ts';

interface Sign {
  readonly question: NoiseQuestion;
  readonly answer: string;
  readonly code: StopReason['code'];
  readonly why: string;
}

/** Answers after which nobody turns it. */
const SIGNS: readonly Sign[] = [
  {
    question: 'noise-signs',
    answer: 'metal',
    code: 'sign-of-damage',
    why: 'metal was found in the oil or the filter.',
  },
  {
    question: 'noise-signs',
    answer: 'broken',
    code: 'sign-of-damage',
    why: 'a piece is broken, cracked or missing.',
  },
  { question: 'noise-signs', answer: 'tight', code: 'sign-of-damage', why: 'it turns tight.' },
  { question: 'noise-signs', answer: 'contact', code: 'sign-of-damage', why: 'something hit or bent.' },
  {
    question: 'noise-history',
    answer: 'grew-again',
    code: 'lash-grew-again',
    why: 'the gap had grown once more after it was set again.',
  },
];

/** Whether this answer stops it: for the words beside the answer. */
export const stopsIt = (question: NoiseQuestion, answer: string): boolean =>
  SIGNS.some((sign) => sign.question === question && sign.answer === answer);

/**
 * A sign of damage that was told stops it at once, and telling otherwise later does not take that away: only the desk
 * lifts it, with what was found.
 */
export function noiseStops(evidence: Evidence): StopReason[] {
  const place = noisyValve(evidence);
  return SIGNS.flatMap(({ question, answer, code, why }): StopReason[] => {
    const told = saidTo(question, evidence).filter((each) => each.answer === answer);
    const newest = told.at(-1);
    if (newest === undefined) return [];
    return [
      {
        id: `stop:${code}:${answer}`,
        code,
        about: place === undefined || question === 'noise-signs' ? { of: 'build' } : valveSubject(place),
        sentence: `Do not turn it: ${why}`,
        ...SHOP_LOOKS,
        from: 'person',
        answered: true,
        entryId: newest.entry.id,
        line: newest.entry.line,
        restsOn: told.map(({ entry }) => entry.id).sort(),
      },
    ];
  });
}
