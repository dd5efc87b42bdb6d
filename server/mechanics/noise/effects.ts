import type { NoiseAnswer, NoiseQuestion } from '../../../shared/schemas/noise.ts';
import { type CauseName, LOCKING, OF_ALL, OF_ONE, WEAR } from './causes.ts';

/** What one thing that was found speaks for, and what it speaks against. */
export interface Effect {
  readonly for: readonly CauseName[];
  readonly against: readonly CauseName[];
  /** Causes that it shows by itself, whatever else is counted. */
  readonly shows?: readonly CauseName[];
}

/** Asked or seen as it stands; seen once nut or rocker is off, which loses the gap as it was found. */
export type Effort = 'as-it-stands' | 'parts-off';

interface Weighs<Question extends NoiseQuestion> {
  readonly effort: Effort;
  /** What it asks after, as a thing: `the nut`. */
  readonly thing: string;
  /** How it is settled, with nothing turned. */
  readonly test: string;
  readonly source: string;
  readonly effects: { readonly [Answer in NoiseAnswer<Question>]: Effect };
}

const COMMON = 'common practice, no published source';

const by = (speaksFor: readonly CauseName[], against: readonly CauseName[] = []): Effect => ({
  for: speaksFor,
  against,
});
export const NOTHING = by([]);

/** Seen bad by itself: it goes before whatever is only counted. */
const seen = (cause: CauseName): Effect => ({ for: [cause], against: [], shows: [cause] });

/** Something that is looked at by itself: worn speaks for it, sound against it. */
const itself = (cause: CauseName) => ({ worn: seen(cause), sound: by([], [cause]) });

/**
 * What each answer speaks for and against. None has a weight: whether a cause is likely is for the people on the call.
 *
 * A nut that moved explains a gap that grew, and so speaks against wear; one that held lets the gap grow by wear or by
 * the stud coming out with its nut. One bad: part or position; all bad: oil or set-up.
 */
export const WEIGHS: { readonly [Question in NoiseQuestion]: Weighs<Question> } = {
  'noise-signs': {
    effort: 'as-it-stands',
    thing: 'signs of damage',
    test: 'look at the filter and at the oil, count the pieces, and ask what was felt. Any of it: nobody turns it.',
    source: COMMON,
    effects: {
      none: NOTHING,
      metal: by(['roller', 'trunnion', 'lifter', 'lobe']),
      broken: by(['stud', 'pushrod', 'roller', 'trunnion']),
      tight: by(['roller', 'trunnion']),
      contact: by(['pushrod', 'spring', 'touching']),
    },
  },
  'noise-which': {
    effort: 'as-it-stands',
    thing: 'whether it is one valve or all',
    test: 'ask, and look for the nut that moved or the rocker that stands loose.',
    source: COMMON,
    effects: {
      one: by([...OF_ONE, 'seat'], OF_ALL),
      several: NOTHING,
      all: by(OF_ALL, [...OF_ONE, 'seat']),
    },
  },
  'noise-oil': {
    effort: 'as-it-stands',
    thing: 'the oil',
    test: 'look at the stick, and ask what the gauge showed before and what it shows now.',
    source: COMMON,
    effects: { usual: by([], ['oil']), low: by(['oil', 'trunnion', 'lifter']) },
  },
  'noise-heat': {
    effort: 'as-it-stands',
    thing: 'whether it is there cold or hot',
    test: 'ask: with the first minutes, and again at working heat.',
    source: 'from memory',
    effects: { cold: by(['lifter']), hot: by(OF_ALL), both: NOTHING },
  },
  'noise-hours': {
    effort: 'as-it-stands',
    thing: 'the hours after which it came',
    test: 'ask when it was set last, and how long it ran well.',
    source: 'from memory',
    effects: {
      'first-running': by(['setting', 'nut-lock'], ['tip', 'roller', 'lobe']),
      slowly: by(WEAR, ['setting']),
      suddenly: by(['stud', 'pushrod', 'trunnion']),
    },
  },
  'noise-speed': {
    effort: 'as-it-stands',
    thing: 'the speed at which it is there',
    test: 'ask; nobody runs it up to find out.',
    source: 'from memory',
    effects: { 'from-idle': by([], ['spring']), 'high-only': by(['spring']) },
  },
  'noise-nut': {
    effort: 'as-it-stands',
    thing: 'whether the nut moved',
    test: 'with nothing turned, and before the nut is touched: draw a line over the nut and what it sits on, or look for the old one.',
    source: COMMON,
    effects: {
      moved: by(LOCKING, WEAR),
      held: by([...WEAR, 'stud', 'seat'], LOCKING),
      off: by(LOCKING, WEAR),
    },
  },
  'noise-history': {
    effort: 'as-it-stands',
    thing: 'the lash history',
    test: 'ask for each setting with its day, and what the gap was found at.',
    source: COMMON,
    effects: {
      'not-again': NOTHING,
      'came-back': by([], ['setting']),
      'grew-again': by([], ['setting', 'oil', 'spring']),
    },
  },
  'noise-set-screw': {
    effort: 'as-it-stands',
    thing: 'the set-screw',
    test: 'with nothing turned: a key in the set-screw says whether it is tight; it is not tightened yet.',
    source: 'retailers’ columns on locking nuts',
    effects: { tight: by([], ['nut-lock']), loose: seen('nut-lock') },
  },
  'noise-nut-used': {
    effort: 'as-it-stands',
    thing: 'whether the nut had been on before',
    test: 'ask who fitted it, and how often it was set.',
    source: 'circle-track column on rocker adjusters',
    effects: { new: NOTHING, again: by(['nut-lock', 'stud-thread']) },
  },
  'noise-stud': {
    effort: 'as-it-stands',
    thing: 'how the stud stands',
    test: 'with nothing turned: a straight edge over its neighbours, and a push by hand.',
    source: COMMON,
    effects: { firm: by([], ['stud']), moves: seen('stud') },
  },
  'noise-stud-top': {
    effort: 'parts-off',
    thing: 'the top of the stud',
    test: 'with nothing turned, once the gap is on record and the nut is off: a straight edge over the top.',
    source: COMMON,
    effects: { flat: by([], ['stud-top']), domed: seen('stud-top') },
  },
  'noise-thread': {
    effort: 'parts-off',
    thing: 'the thread of the adjuster and its nut',
    test: 'with nothing turned, once the gap is on record and the nut is off: look at both threads.',
    source: COMMON,
    effects: itself('stud-thread'),
  },
  'noise-pushrod': {
    effort: 'parts-off',
    thing: 'pushrod ends and cup',
    test: 'with nothing turned, once the gap is on record and the rocker is off: look at both ends and in the cup; roll the pushrod on glass.',
    source: 'race shop’s note on lash; parts store’s pushrod guide',
    effects: { worn: seen('pushrod'), smooth: by([], ['pushrod', 'touching']), bent: seen('touching') },
  },
  'noise-tip': {
    effort: 'parts-off',
    thing: 'the stem’s tip',
    test: 'with nothing turned, once the gap is on record and the rocker is off: a straight edge over the tip, beside a neighbour.',
    source: COMMON,
    effects: { worn: seen('tip'), smooth: by([], ['tip']) },
  },
  'noise-roller': {
    effort: 'parts-off',
    thing: 'the roller and its pin',
    test: 'on the bench, with the rocker off: spin the roller, look for a flat, and at both ends of the pin; then at all the others’.',
    source: 'forum case of pins that moved',
    effects: { worn: seen('roller'), free: by([], ['roller']), 'pin-moved': seen('roller') },
  },
  'noise-trunnion': {
    effort: 'parts-off',
    thing: 'the bearing at the pivot',
    test: 'on the bench, with the rocker off: rock the arm on its pivot, feel for play, look for brown and for needles; then at all the others.',
    source: 'shop’s page on pivot bearings',
    effects: { worn: seen('trunnion'), smooth: by([], ['trunnion']), missing: seen('trunnion') },
  },
};

/** What it speaks for; a list that a code outside of it is looked up in. */
const effectsOf = (question: NoiseQuestion): Readonly<Record<string, Effect>> => WEIGHS[question].effects;

/** What one answer speaks for; that it is not known speaks for nothing. */
export const effectOf = (question: NoiseQuestion, answer: string): Effect =>
  effectsOf(question)[answer] ?? NOTHING;

/** What each of its answers would speak for. */
export const possibleEffects = (question: NoiseQuestion): readonly Effect[] =>
  Object.values(effectsOf(question));
