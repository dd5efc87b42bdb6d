import type { Slice } from './slice.ts';

/** The files of a folder of the assessment by their first letters: the large folders are mutated in parts. */
const by = (folder: string, starts: readonly string[]) =>
  starts.map((start) => `assessment/${folder}/${start}*`);
const letters = (folder: string, text: string) => by(folder, [...text]);

const at = (...starts: readonly string[]) => starts.map((start) => `mechanics/assessment/${start}`);

const OF_RATIO = [
  ...at('ratio-', 'lift-tools', 'contact-asked', 'set-ups-differ', 'told-late', 'lobe-read-late'),
  ...at('bucket-lift', 'one-pass', 'stop'),
];
const OF_SHEET = [
  ...at('sheet', 'swap-by-set-ups', 'told-late', 'one-pass', 'next.', 'contact-asked'),
  ...['assessment/sheet/columns', 'assessment/sheet/groups', 'assessment/evidence-of-swaps'],
];
const OF_PART = [...at('part', 'rods'), 'assessment/part/told', 'assessment/part/fastener'];
const OF_CHANGE = [
  ...at('change', 'scan-change', 'figures', 'next-of-change'),
  ...['assessment/change/', 'assessment/forms/'],
];

/**
 * The assessment of a build, each part of it with the tests of its own sentences; the laws over generated builds
 * take seconds, and what they alone would notice counts as not noticed.
 */
export const ASSESSMENT_SLICES: readonly Slice[] = [
  {
    name: 'assessment-noise',
    sources: ['assessment/noise'],
    tests: ['noise/'],
    throughAssessment: at('noise', 'gear'),
  },
  {
    name: 'assessment-lash',
    sources: ['assessment/lash', 'assessment/gear'],
    tests: ['lash/'],
    throughAssessment: [
      ...at('lash', 'told-late-lash', 'gear', 'noise-of-gear', 'stop'),
      'assessment/setting-calls',
    ],
  },
  {
    name: 'assessment-marks',
    sources: ['assessment/marks', 'assessment/scans', 'assessment/figures'],
    tests: ['tip-mark/'],
    throughAssessment: [...at('marks', 'scan', 'figures'), 'assessment/scans/'],
  },
  {
    name: 'assessment-timing',
    sources: ['assessment/timing'],
    tests: [],
    throughAssessment: ['assessment/timing-calls', ...at('next.')],
  },
  {
    name: 'assessment-workings',
    sources: ['assessment/workings'],
    tests: [],
    throughAssessment: ['assessment/kept-workings', 'assessment/forms/', ...at('rods')],
  },
  {
    name: 'assessment-next',
    sources: ['assessment/next', 'assessment/missing', 'assessment/stop*'],
    tests: [],
    throughAssessment: at('next', 'stop', 'ratio-told', 'sheet', 'part', 'change', 'gear', 'noise', 'scan'),
  },
  {
    name: 'assessment-change-a-k',
    sources: letters('change', 'abcdefghijk'),
    tests: [],
    throughAssessment: OF_CHANGE,
  },
  {
    name: 'assessment-change-n-w',
    sources: letters('change', 'nprstw'),
    tests: [],
    throughAssessment: OF_CHANGE,
  },
  {
    name: 'assessment-part-a-o',
    sources: letters('part', 'abcdfhimo'),
    tests: [],
    throughAssessment: OF_PART,
  },
  { name: 'assessment-part-p-w', sources: letters('part', 'pqrstw'), tests: [], throughAssessment: OF_PART },
  { name: 'assessment-ratio-a-c', sources: letters('ratio', 'abck'), tests: [], throughAssessment: OF_RATIO },
  {
    name: 'assessment-ratio-d-i',
    sources: letters('ratio', 'defghiw'),
    tests: [],
    throughAssessment: OF_RATIO,
  },
  {
    name: 'assessment-ratio-l-r',
    sources: letters('ratio', 'lmnpqr'),
    tests: [],
    throughAssessment: OF_RATIO,
  },
  { name: 'assessment-ratio-s-v', sources: letters('ratio', 'stv'), tests: [], throughAssessment: OF_RATIO },
  {
    name: 'assessment-sheet-b-g',
    sources: letters('sheet', 'bcdeg'),
    tests: [],
    throughAssessment: OF_SHEET,
  },
  { name: 'assessment-sheet-l-q', sources: letters('sheet', 'lopq'), tests: [], throughAssessment: OF_SHEET },
  {
    name: 'assessment-sheet-r-v',
    sources: [...letters('sheet', 'rv'), 'assessment/sheet/next'],
    tests: [],
    throughAssessment: OF_SHEET,
  },
  {
    name: 'assessment-sheet-side',
    sources: by('sheet', ['side-', 'siblings', 'short-before']),
    tests: [],
    throughAssessment: [...OF_SHEET, 'assessment/sheet/whole-side'],
  },
  {
    name: 'assessment-sheet-swap',
    sources: by('sheet', ['said', 'sheet', 'slips', 'swap']),
    tests: [],
    throughAssessment: OF_SHEET,
  },
];
