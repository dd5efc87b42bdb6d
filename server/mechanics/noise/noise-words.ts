import { answersTo, NOISE_QUESTIONS, type NoiseQuestion } from '../../../shared/schemas/noise.ts';
import { ADJUSTER_WORDS, type AdjusterKind } from '../lash/adjuster-words.ts';
import { CAUSES, type CauseName } from './causes.ts';
import { WEIGHS } from './effects.ts';

/** A question about noise as it is put to this engine, with its answers. */
export interface NoiseWords {
  readonly name: string;
  readonly ask: string;
  readonly thing: string;
  readonly test: string;
  readonly answers: Readonly<Record<string, string>>;
}

const upperFirst = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** As the table has them: of an engine with nuts on studs, and where nobody said how the rockers are mounted. */
function plain(question: NoiseQuestion): NoiseWords {
  const { name, ask } = NOISE_QUESTIONS[question];
  const { thing, test } = WEIGHS[question];
  return { name, ask, thing, test, answers: answersTo(question) };
}

/** What is asked of the part that sets the gap, where that is no nut on a stud. */
const OF_PART: Readonly<Partial<Record<NoiseQuestion, (kind: AdjusterKind) => Partial<NoiseWords>>>> = {
  'noise-nut': (kind) => {
    const { part, line } = ADJUSTER_WORDS[kind];
    return {
      name: upperFirst(part),
      ask: `Had the ${part} moved, before anything was touched?`,
      thing: `whether the ${part} moved`,
      test: `with nothing turned, and before the ${part} is touched: draw a line over ${line}, or look for the old one.`,
    };
  },
  'noise-which': (kind) => {
    const { part } = ADJUSTER_WORDS[kind];
    return {
      test: LOOSE[kind] ?? `ask, and look for the ${part} that moved or the rocker that stands loose.`,
    };
  },
  'noise-thread': (kind) => {
    const { lock } = ADJUSTER_WORDS[kind];
    return {
      ask: `Are the threads of ${lock} sound, over their whole length?`,
      thing: `the threads of ${lock}`,
      test: `with nothing turned, once the gap is on record and it is off: look at the threads of ${lock}.`,
      answers: {
        ...answersTo('noise-thread'),
        sound: 'Sound, over their whole length',
        worn: 'Worn, pulled, or few turns of it hold',
      },
    };
  },
};

/** The words of a question for what sets the gap of this engine: a lock nut, a bolt, or the nut on a stud. */
export function noiseWords(question: NoiseQuestion, kind: AdjusterKind): NoiseWords {
  const own = kind === 'stud' || kind === 'not-known' ? undefined : OF_PART[question]?.(kind);
  return { ...plain(question), ...own };
}

/** Where somebody looks for what is loose, with nothing touched. */
const LOOSE: Readonly<Partial<Record<AdjusterKind, string>>> = {
  follower: 'ask, and look for the follower that stands loose.',
  bucket: 'ask where it is heard, and since when.',
};

/** A cause in the words of what sets the gap of this engine. */
export function causeSaid(cause: CauseName, kind: AdjusterKind): string {
  const { part, lock } = ADJUSTER_WORDS[kind];
  if (kind === 'stud' || kind === 'not-known') return CAUSES[cause].said;
  if (cause === 'nut-lock') return `the ${part}`;
  return cause === 'stud-thread' ? `the threads of ${lock}` : CAUSES[cause].said;
}

const KINDS: readonly AdjusterKind[] = [
  'stud',
  'pedestal',
  'shaft',
  'cam-rocker',
  'follower',
  'bucket',
  'not-known',
];

/** Every way in which a question is asked: an answer that was kept by its words alone is known by them. */
export const noiseAsks = (question: NoiseQuestion): string[] => [
  ...new Set(KINDS.map((kind) => noiseWords(question, kind).ask)),
];
