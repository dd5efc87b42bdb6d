import type { AssessedQuestion } from '../assessment.ts';
import type { SetEvidence } from '../evidence/kept-sums.ts';
import { SUM_AGAIN } from './sum-again.ts';

const ADJUSTER = 'Was this sum made with the adjuster, the ratio and the lash of this engine?';
/** What is asked of a sum that differs from the build. */
export const ASKS: Readonly<Record<SetEvidence['of'], string>> = {
  turns: ADJUSTER,
  preload: ADJUSTER,
  pushrod: 'Was this sum made with the lifters, the lash and the ratio of this engine?',
  stand: 'Was this sum made with the lift, the arm and the mounting of this engine?',
  heat: 'Was this sum made with the lash and the ratio of this engine?',
  follower: 'Was this sum made for the valve gear of this engine?',
};

/** What settles it. */
export const TESTS: Readonly<Record<SetEvidence['of'], string>> = {
  turns:
    'look at the adjuster, the rocker and the card; then work the turns out again, or put the build right.',
  preload:
    'look at the adjuster, the rocker and the card; then work the turns out again, or put the build right.',
  pushrod: 'look what is in it and at the card; then work it out again, or put the build right.',
  stand: 'look at the card and the rockers; then work it out again, or put the build right.',
  heat: 'look at the card and the rockers; then work it out again, or put the build right.',
  follower: 'look what is in it; then work it out again, or put the build right.',
};

/** Either the sum is right, or a figure of it was wrong. */
export const CHOICES: AssessedQuestion['answers'] = [
  { code: 'not-found', label: 'Yes, the sum is right', changes: 'The sum counts.' },
  {
    code: 'found',
    label: 'No, a figure of the sum was wrong',
    changes: 'The sum is kept again with the right one.',
    leadsTo: SUM_AGAIN,
  },
];
