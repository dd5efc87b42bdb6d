import { done } from '../common/answers-of.ts';

/** What is done where a kept sum was made of a wrong figure. */
export const SUM_AGAIN = done('work it out again with the right figure, and keep that.');
