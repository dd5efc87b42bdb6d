import type { Evidence } from '../evidence.ts';
import { saidTo } from './answers.ts';
import { SIGNS, toldAs } from './damage.ts';

/**
 * A nut that is off, a stud that moves, a bent pushrod or a pin that crept carries no gap that could still be read as it
 * was found. Told once, the part is changed before anything is read: what was told otherwise later is the new one.
 */
export const isDamaged = (evidence: Pick<Evidence, 'answers'>): boolean =>
  SIGNS.some(
    ({ code, question, answer }) =>
      code === 'part-damaged' && saidTo(question, evidence).some((said) => toldAs(question, said) === answer),
  );
