import { defined } from '../../../../shared/defined.ts';
import type { AnswerChoice, Leads } from '../assessment.ts';

type Answers = readonly AnswerChoice[];

/**
 * Questions of which a yes says that what was read or entered is a slip. Any other has answers of its own: a yes that says
 * a reading is right must not take it away.
 */
export const SLIPS = [
  'caliper-on-lobe',
  'decimal-slip',
  'digits-swapped',
  'drifting-passes',
  'falling-passes',
  'gross-lift-as-lobe',
  'hand-read-backwards',
  'lash-formula',
  'lifts-exchanged',
  'out-of-travel',
  'pass-apart',
  'pass-of-other-lift',
  'passes-scatter',
  'short-at-top',
  'slip',
  'turn-miscounted',
  'turn-too-few',
  'turn-too-many',
  'unit-mixed',
  'unit-or-decimal',
  'unlisted-fault',
  'valve-swapped',
  'wrong-valve',
  'zero-moved',
  'zero-not-returned',
] as const;

/** A yes that it was a slip, or that somebody looked and it was none. */
export const WAS_SLIP: Answers = [
  {
    code: 'found',
    label: 'Yes, that is what it was',
    changes: 'The reading is not believed until it is entered again or struck out.',
  },
  {
    code: 'not-found',
    label: 'Looked: it does not fit',
    changes: 'The question is settled, and the reading counts.',
  },
];

/** What is done next, with no entry to correct. */
export const done = (todo: string): Leads => ({ todo, corrects: false, turns: false });
/** The same where the engine is turned for it. */
export const turned = (todo: string): Leads => ({ todo, corrects: false, turns: true });

const either = (
  found: readonly [string, string],
  notFound: readonly [string, string],
  leadsTo?: AnswerChoice['leadsTo'],
): Answers => [
  { code: 'found', label: found[0], changes: found[1], ...defined({ leadsTo }) },
  { code: 'not-found', label: notFound[0], changes: notFound[1] },
];

/** Of what a reading is set against: the reading itself stands, whatever is answered. */
const ofOther = (found: readonly [string, string], notFound: readonly [string, string]): Answers =>
  either(found, notFound).map((each) => ({ ...each, leadsTo: 'nothing' }));

/** The one that leaves the entry standing goes first where it is the yes. */
const yesItIs = (
  yes: readonly [string, string],
  no: readonly [string, string],
  leadsTo?: AnswerChoice['leadsTo'],
): Answers => either(no, yes, leadsTo).toReversed();

const CARD_WRONG = 'It is put right on the card; what is read stays.';

/** Questions that a yes answers otherwise, or that are no yes or no: what each answer is, and what it changes. */
const OWN = {
  'copied-reading': either(
    ['A number was copied', 'What was copied is read and entered again, or struck out with the reason.'],
    ['Each was read by itself', 'The readings count as they are: some are equal by chance.'],
  ),
  'lash-left-in': either(
    ['Yes, it was left in', 'The lift is read again with the lash taken up, and entered again.'],
    ['No: it was taken up', 'The lift counts as it was read.'],
    turned('take the lash up, read that lift again, and enter it.'),
  ),
  'card-not-this-lobe': either(
    ['It is another card, or another lobe', 'The card is set against nothing here until it is put right.'],
    ['That card and that lobe', 'The reading stays off the card; another cause is looked for.'],
  ),
  'valve-lift-as-lobe': either(
    ['Yes, it is a valve lift', CARD_WRONG],
    ['No, it is the lobe’s', 'The card counts as entered.'],
  ),
  'wrong-card-row': either(
    ['Yes: the other valve or row', 'Valve or row is put right where it was entered.'],
    ['Looked: valve and row are right', 'It counts as it was entered.'],
  ),
  'ratio-not-listed': either(
    ['Yes, they are another ratio', 'The part number is looked up, and what they are sold as is put right.'],
    ['Looked up: it is a listed one', 'The reading counts, and this is ruled out for it.'],
    done('look the part number up, and say which ratio they are sold as.'),
  ),
  'card-ratio': ofOther(
    ['Yes, it is for another rocker', 'The valve lift of the card is not set against these.'],
    ['No, it is for these', 'The card and the rockers do not agree; both stay as they are.'],
  ),
  'spring-mixed': ofOther(
    ['It was set against it', 'It is told as a running-spring ratio, and set against no mark.'],
    ['It was not', 'It stays a running-spring ratio.'],
  ),
  'springs-at-different-lash': yesItIs(
    ['Yes, the same on both', 'The two are set against each other as they were read.'],
    ['No, it was not', 'Both are read again at one lash before they are compared.'],
    turned('read both springs again at one lash, and enter those.'),
  ),
  'scan-side-of-tdc': either(
    ['The other side, or the other valve', 'Side or valve is put right where the scan was entered.'],
    ['Looked: both are as entered', 'The scan counts as entered.'],
  ),
  'scan-far-from-tdc': yesItIs(
    ['Yes: TDC was proved on both sides', 'The scan counts as entered.'],
    [
      'No, or nobody proved it',
      'TDC is proved first; then it is read again, and this scan is entered again or struck out.',
    ],
    turned('prove top dead centre by the positive stop on both sides, then scan it again.'),
  ),
  'scan-below-nothing': either(
    ['A dash: no minus was meant', 'It is entered again without it.'],
    ['The parts lack so much', 'It counts as contact.'],
  ),
  'scan-angle-twice': either(
    ['One is another crank angle', 'That angle is put right where it was entered.'],
    ['It was read twice', 'The least of the two counts.'],
  ),
  'scan-jumps': yesItIs(
    ['Yes, it is as it was read', 'It counts as entered.'],
    ['No, it was read or written wrong', 'It is put right where it was entered, or read again.'],
  ),
  'scan-apart': yesItIs(
    ['Yes, it was read again', 'It counts as entered.'],
    ['No, it was read or written wrong', 'It is put right where it was entered, or read again.'],
  ),
  'scan-copied': either(
    [
      'They are the other valve’s',
      'This valve is scanned by itself; this one is struck out, with the reason.',
    ],
    ['It was read by itself', 'The scan counts as entered.'],
    {
      todo: 'scan that valve by itself, and strike out the one that was copied.',
      corrects: true,
      turns: true,
    },
  ),
  'lobes-apart': yesItIs(
    [
      'Yes: one cam, one wheel, one pointer',
      'Both count: then the card is another cam’s, or one of its centrelines is. The card is read out again.',
    ],
    [
      'No, or nobody can say',
      'Neither counts against the card; both lobes are read again with the pointer left alone.',
    ],
    turned(
      'read both lobes again at equal drop with the pointer left alone, coming up to the lift in running direction.',
    ),
  ),
} as const satisfies Readonly<Record<string, Answers>>;

type Slip = (typeof SLIPS)[number];

/** Questions whose answers stand here. */
export type Answerable = Slip | keyof typeof OWN;

const isOwn = (code: Answerable): code is keyof typeof OWN => code in OWN;

/** What may be answered to a question; `slip`: the pair in the words of who asks it. */
export const answersOf = (code: Answerable, slip: Answers = WAS_SLIP): Answers =>
  isOwn(code) ? OWN[code] : slip;

/** A figure of the card that may be a slip: the card is put right, and no reading is. */
export const CARD_SLIP: Answers = either(
  ['Yes, the card says otherwise', CARD_WRONG],
  ['Looked: it is as on the card', 'The card counts as entered.'],
);
