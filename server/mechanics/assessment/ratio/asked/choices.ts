import { asEntered } from '../../../../../shared/quantities/as-entered.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { QuestionCode } from '../../../questions/types.ts';
import type { AnswerChoice } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import type { Doubt } from '../../common/asked.ts';
import type { Evidence } from '../../evidence.ts';
import { ARM_ELSEWHERE, armElsewhereChoices } from '../read/arm-elsewhere.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { LASH_UP, lashOffered } from './lash-offered.ts';

const choice = (code: string, label: string, changes: string): AnswerChoice => ({ code, label, changes });

const CHECKED = [
  choice('found', 'Yes, that is what it was', 'The reading is entered again or struck out by a person.'),
  choice('not-found', 'Looked: it is not so', 'The reading counts, and this is ruled out for it.'),
] as const;

/** A number that was given may have been read, or have come from somewhere else. */
const COMES_FROM: readonly AnswerChoice[] = [
  choice(
    'found',
    'From a card, a box or a sum',
    'The number is entered again as it was read, or struck out.',
  ),
  choice('not-found', 'Read on the dial here', 'The number counts as one that was read.'),
];

const LEANING: AnswerChoice = {
  ...choice(
    'leaning',
    'It leans, as far as',
    'No word stands on it: it is read again with the plunger parallel.',
  ),
  takesLean: true,
};
const PARALLEL = choice(
  'parallel',
  'Parallel, seen from both sides',
  'A lean is ruled out for these readings.',
);

/** How the plunger stood, whoever asks it. */
export const STANDS: readonly AnswerChoice[] = [PARALLEL, LEANING];

const LIFTERS: readonly AnswerChoice[] = [
  choice('solid', 'Solid', 'Nothing sinks under the reading.'),
  choice('locked', 'Hydraulic, locked solid', 'Nothing sinks under the reading.'),
  choice('hydraulic', 'Hydraulic', 'The plunger may have sunk: it is read again on a solid or a locked one.'),
];

/** Questions whose answer is a state of the set-up, or that no yes answers. */
const STATES = {
  'lifter-sunk': LIFTERS,
  'lifter-of-engine': LIFTERS,
  'spring-not-said': [
    choice('light', 'Light checking spring', 'It is a light-spring ratio, and is set against the mark.'),
    choice('running', 'Running spring', 'It is a running-spring ratio, and is set against no mark.'),
  ],
  'lifter-not-said': [
    choice('solid', 'Solid', 'Nothing sinks under the reading.'),
    choice('locked', 'Hydraulic, locked solid', 'Nothing sinks under the reading.'),
    choice('hydraulic', 'Hydraulic', 'The plunger may have sunk: passes that fall settle nothing.'),
  ],
  'plunger-tilted': STANDS,
  'alignment-not-said': STANDS,
  'springs-swapped': [
    choice(
      'found',
      'Yes, the wrong way round',
      'The readings already there count for the other spring, those of the other set-up too.',
    ),
    choice('not-found', 'Looked: each is as noted', 'The readings count as they are noted.'),
  ],
  'stated-not-read': COMES_FROM,
  'rests-on-not-said': [
    choice('retainer-flat', 'Flat face of the retainer', 'A lean would make it read long.'),
    choice(
      'retainer-edge',
      'Step, slope or lock of the retainer',
      'It is read again on the flat face; till then no word stands on it.',
    ),
    choice('valve-tip', 'Valve tip', 'A lean would make it read short.'),
    choice(
      'spring-seat',
      'Somewhere else',
      'It is read again on the flat face; till then no word stands on it.',
    ),
  ],
} as const satisfies Readonly<Record<string, readonly AnswerChoice[]>>;

const MISSING = 'The lash is missing from the lift: it is read again at zero.';
const left = (label: string): AnswerChoice => ({
  ...choice('set', label, MISSING),
  takesValue: true,
  leadsTo: LASH_UP,
});
const ZERO = choice('zero', 'Taken up to zero', 'The lift is the gross lift.');

/** Questions about the lash: an amount may go with each, and figures that are on record are offered, never assumed. */
function lashChoices(evidence: Evidence, own: SetUpRead, code: string): readonly AnswerChoice[] {
  const offered = lashOffered(evidence, own);
  switch (code) {
    case 'lash-not-said':
      return [ZERO, left('Left in, as much as'), ...offered];
    case 'lash-setting-not-said':
      return [left('Left in, as much as'), ...offered, ZERO];
    default:
      return [
        left('Yes, left in, as much as'),
        ...offered,
        { ...ZERO, label: 'No: it was taken up to zero' },
      ];
  }
}

/** A turn can be missing from one pass alone. */
function turnChoices({ standing }: SetUpRead, { restsOn }: Doubt): readonly AnswerChoice[] {
  const passes = standing.filter(({ id }) => restsOn.includes(id));
  if (passes.length < 2) return CHECKED;
  const [found, ...others] = CHECKED;
  return [
    { ...found, label: 'Yes, on every pass' },
    ...passes.map(({ pass, readAs }) =>
      choice(
        `pass-${pass}`,
        `Yes, on pass ${pass} alone, ${asEntered(readAs)}`,
        'That pass is entered again or struck out by a person; the count of the others was right.',
      ),
    ),
    ...others,
  ];
}

function valveChoices({ setUp }: SetUpRead): readonly AnswerChoice[] {
  const other = sideOfValve(setUp.valve) === 'intake' ? 'exhaust' : 'intake';
  const [found, ...others] = CHECKED;
  return [
    choice(
      other,
      `Yes: it was read on the ${other} valve`,
      `The readings already there count for the ${other} valve.`,
    ),
    { ...found, label: 'The valve is right; the card or the lobe was mixed up' },
    ...others,
  ];
}

type StateCode = keyof typeof STATES;
/** A doubt of a set-up: each word has its answers, or does not compile. */
export type SetUpDoubt = Doubt & {
  readonly code: QuestionCode | typeof ARM_ELSEWHERE;
  readonly of?: 'lobe';
};

const isState = (code: SetUpDoubt['code']): code is StateCode => code in STATES;

/** The answers that a question of a set-up may have. */
export function choicesOf(evidence: Evidence, own: SetUpRead, doubt: SetUpDoubt): readonly AnswerChoice[] {
  const { code } = doubt;
  switch (code) {
    case 'lash-not-said':
    case 'lash-left-in':
    case 'lash-setting-not-said':
      return lashChoices(evidence, own, code);
    case 'turn-miscounted':
      return turnChoices(own, doubt);
    case 'valve-swapped':
      return valveChoices(own);
    case ARM_ELSEWHERE:
      return armElsewhereChoices(evidence, own);
    default:
      return isState(code) ? STATES[code] : answersOf(code, CHECKED);
  }
}
