import type { SetUpNow } from '../read/set-ups.ts';

const LASH = { zero: 'lash at zero', set: 'lash left in', 'not-said': 'lash not said' } as const;
const LIFTER = {
  solid: 'solid lifter',
  locked: 'hydraulic lifter locked solid',
  hydraulic: 'hydraulic lifter',
  'not-said': 'lifter not said',
} as const;
const SPRING = { light: 'light spring', running: 'running spring', 'not-said': 'spring not said' } as const;
const ALIGNMENT = {
  parallel: ['plunger parallel to the stem'],
  leaning: ['plunger leaning'],
  'not-said': [],
} as const;

/** What a lift or a ratio of a set-up holds for. */
export const conditionsSaid = ({ spring, lifter, lash, lashSetting, alignment }: SetUpNow): string[] => [
  SPRING[spring],
  LIFTER[lifter],
  lash === 'set' && lashSetting !== undefined ? 'lash left in, its setting known' : LASH[lash],
  ...ALIGNMENT[alignment],
];
