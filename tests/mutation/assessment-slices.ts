import type { CALLS_ABOUT } from '../calls/all.ts';
import type { Slice } from './slice.ts';

/** The files of a folder of the assessment by their first letters: the large folders are mutated in parts. */
const by = (folder: string, starts: readonly string[]) =>
  starts.map((start) => `assessment/${folder}/${start}*`);
const letters = (folder: string, text: string) => by(folder, [...text]);
const slice = (folder: string, told: string, text: string, throughAssessment: readonly string[]): Slice => ({
  name: `assessment-${folder}-${told}`,
  sources: letters(folder, text),
  tests: [],
  throughAssessment,
});

/** One folder of a part. */
const inFolder = (part: string, folder: string, throughAssessment: readonly string[]): Slice => ({
  name: `assessment-${part}-${folder}`,
  sources: [`assessment/${part}/${folder}`],
  tests: [],
  throughAssessment:
    folder === 'sides' ? [...throughAssessment, 'assessment/sheet/whole-side'] : throughAssessment,
});

const at = (...starts: readonly string[]) => starts.map((start) => `mechanics/assessment/${start}`);
/** What is told of the played calls about these. */
const told = (...about: readonly (keyof typeof CALLS_ABOUT)[]) => at(...about.map((each) => `told/${each}.`));

const OF_RATIO = [
  ...at('ratio-', 'lift-tools', 'contact-asked', 'set-ups-differ', 'told-late', 'lobe-read-late'),
  ...at('bucket-lift', 'one-pass', 'stop'),
  ...told('ratio'),
];
const OF_SHEET = [
  ...at('sheet', 'swap-by-set-ups', 'told-late', 'one-pass', 'next.', 'contact-asked'),
  ...['assessment/sheet/columns', 'assessment/sheet/groups', 'assessment/evidence-of-swaps'],
  ...told('sheet'),
];
const OF_PART = [...at('part', 'rods'), 'assessment/part/told', 'assessment/part/fastener', ...told('part')];
const OF_CHANGE = [
  ...at('change', 'scan-change', 'figures', 'next-of-change'),
  'assessment/change/',
  ...told('change', 'others'),
];

const SLICES: readonly Slice[] = [
  {
    name: 'assessment-noise',
    sources: ['assessment/noise'],
    tests: ['noise/'],
    throughAssessment: [...at('noise', 'gear'), ...told('noise')],
  },
  {
    name: 'assessment-lash',
    sources: ['assessment/lash', 'assessment/gear'],
    tests: ['lash/'],
    throughAssessment: [
      ...at('lash', 'told-late-lash', 'gear', 'noise-of-gear', 'no-such-valve', 'bucket-lift', 'stop'),
      ...['assessment/setting-calls', 'assessment/forms/shims', ...told('setting', 'noise')],
    ],
  },
  {
    name: 'assessment-marks',
    sources: ['assessment/marks', 'assessment/scans', 'assessment/figures'],
    tests: ['tip-mark/'],
    throughAssessment: [
      ...at('marks', 'least-sweep', 'scan', 'figures'),
      'assessment/scans/',
      ...told('setting', 'others'),
    ],
  },
  {
    name: 'assessment-timing',
    sources: ['assessment/timing'],
    tests: [],
    throughAssessment: ['assessment/timing-calls', ...at('next.'), ...told('setting', 'others')],
  },
  {
    name: 'assessment-workings',
    sources: ['assessment/workings'],
    tests: [],
    throughAssessment: [
      'assessment/kept-workings',
      'assessment/setting-calls',
      ...at('rods'),
      ...told('setting'),
    ],
  },
  {
    name: 'assessment-next',
    sources: ['assessment/next', 'assessment/missing', 'assessment/stop*'],
    tests: [],
    throughAssessment: [
      ...at('next', 'stop', 'ratio-told', 'sheet', 'part', 'change', 'gear', 'noise', 'scan'),
      ...told('ratio', 'setting', 'noise', 'others'),
    ],
  },
  {
    name: 'assessment-common',
    sources: [
      'assessment/common',
      'assessment/read-since',
      ...['ratio/ratio', 'sheet/sheet', 'sheet/valve-ratios'].map((name) => `assessment/${name}.ts`),
      ...['assess', 'contact-asked', 'for-bench', 'headline-order', 'words-of'].map(
        (name) => `assessment/${name}.ts`,
      ),
    ],
    tests: [],
    throughAssessment: [
      ...at('next', 'stop', 'ratio-', 'contact-asked', 'sheet', 'change', 'gear', 'lash', 'scan'),
      ...told('ratio', 'setting', 'others'),
    ],
  },
  slice('change', 'a-k', 'abcdefghijk', OF_CHANGE),
  slice('change', 'n-w', 'nprstw', OF_CHANGE),
  slice('part', 'a-o', 'abcdfhimo', OF_PART),
  slice('part', 'p-w', 'pqrstw', OF_PART),
  ...['read', 'claims', 'asked', 'compared', 'told'].map((folder) => inFolder('ratio', folder, OF_RATIO)),
  ...['rows', 'asked', 'sides', 'swaps', 'lobes', 'odd', 'next'].map((folder) =>
    inFolder('sheet', folder, OF_SHEET),
  ),
  {
    name: 'assessment-gaps',
    sources: ['assessment/gaps'],
    tests: [],
    throughAssessment: [...OF_CHANGE, ...OF_SHEET],
  },
];

const PREFIX = 'assessment-';

/** A part of the assessment that builds are chosen for: its slice without what all begin with. */
export const partOf = ({ name }: Slice): string => name.slice(PREFIX.length);

/**
 * The assessment of a build, each part of it with the tests of its own sentences and with what is told of the played
 * calls about it; the laws over generated builds take seconds, and what they alone would notice counts as not noticed.
 * Each has what is told of the builds that were chosen for it too.
 */
export const ASSESSMENT_SLICES: readonly Slice[] = SLICES.map((each) => ({
  ...each,
  throughAssessment: [...(each.throughAssessment ?? []), ...at(`told/corpus/${partOf(each)}.`)],
}));
