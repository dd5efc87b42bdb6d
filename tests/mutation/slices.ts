import { ASSESSMENT_SLICES } from './assessment-slices.ts';
import type { Slice } from './slice.ts';

/** Computations that a folder of mechanics serves are mutated with it: one without the other says half. */
const computations = (...names: string[]) => names.map((name) => `computations/${name}.ts`);

export const SLICES: readonly Slice[] = [
  {
    name: 'slider-crank',
    sources: ['slider-crank', ...computations('piston-drop')],
    tests: ['piston-drop'],
  },
  {
    name: 'springs',
    sources: ['springs', ...computations('spring-load', 'spring-nest', 'spring-from-wire')],
    tests: ['spring-'],
  },
  {
    name: 'threads',
    sources: ['threads', ...computations('thread', 'fastener-for-hole')],
    tests: ['thread', 'fastener-for-hole', 'adjuster'],
  },
  {
    name: 'lengths-and-heights',
    sources: computations('arm-lengths', 'deflection', 'lash-shim', 'pushrod-length', 'stand-height'),
    tests: ['arm-lengths', 'deflection', 'lash-shim', 'pushrod-length', 'stand-height'],
  },
  {
    name: 'setting',
    sources: ['setting', ...computations('adjuster', 'lifter-preload')],
    tests: ['adjuster', 'lifter-preload', 'pushrod-length'],
  },
  {
    name: 'setting-order',
    sources: ['setting-order'],
    tests: ['setting-order/'],
  },
  {
    name: 'thermal',
    sources: ['thermal', ...computations('lash-hot-cold')],
    tests: ['lash-hot-cold'],
  },
  { name: 'lash', sources: ['lash'], tests: ['lash/'] },
  {
    name: 'tip-mark',
    sources: ['tip-mark'],
    tests: ['tip-mark/'],
    throughAssessment: ['mechanics/assessment/marks'],
  },
  {
    name: 'cam',
    sources: ['cam', ...computations('cam-timing', 'centreline', 'top-dead-centre')],
    tests: ['cam-timing', 'centreline', 'top-dead-centre'],
  },
  {
    name: 'rocker-geometry',
    sources: ['rocker-geometry', ...computations('linkage', 'roller-sweep')],
    tests: ['linkage', 'roller-sweep', 'arm-lengths', 'stand-height'],
  },
  { name: 'follower', sources: computations('follower-ratio'), tests: ['follower-ratio'] },
  {
    name: 'indicator',
    sources: ['indicator', ...computations('dial-reading', 'cosine-error')],
    tests: ['dial-reading', 'cosine-error'],
  },
  {
    name: 'lift-and-loads',
    sources: computations('lift', 'pivot-load', 'retainer-to-seal', 'cover-room'),
    tests: ['lift', 'pivot-load', 'retainer-to-seal', 'cover-room'],
  },
  {
    name: 'motion-laws',
    sources: ['motion-laws', ...computations('separation-speed')],
    tests: ['motion-laws', 'separation-speed'],
  },
  {
    name: 'lobe',
    sources: ['lobe', ...computations('lobe-profile')],
    tests: ['lobe/', 'lobe-profile', 'monotone-cubic'],
  },
  {
    name: 'uncertainty',
    sources: ['uncertainty'],
    tests: ['uncertainty/', 'ratio-at-full-lift'],
  },
  {
    name: 'statistics',
    sources: ['statistics', ...computations('outliers', 'control-chart', 'capability')],
    tests: ['statistics/', 'outliers', 'control-chart', 'capability'],
  },
  {
    name: 'ratio',
    sources: computations('ratio-at-full-lift', 'ratio-through-lift'),
    tests: ['ratio-at-full-lift', 'ratio-through-lift', 'ratio-refused'],
  },
  {
    name: 'numbers',
    sources: ['number-reading', ...computations('read-number')],
    tests: ['read-number'],
  },
  {
    name: 'valve-clearance',
    sources: ['valve-clearance', ...computations('piston-to-valve')],
    tests: ['piston-to-valve', 'valve-clearance/'],
  },
  {
    name: 'gap-scan',
    sources: ['gap-scan', ...computations('gap-scan')],
    tests: ['gap-scan'],
  },
  {
    name: 'identify',
    sources: ['identify'],
    tests: ['identify/'],
    throughAssessment: ['mechanics/assessment/part', 'assessment/part/'],
  },
  {
    name: 'questions',
    sources: ['questions'],
    tests: ['questions/'],
    throughAssessment: ['contact-asked', 'lobe-read-late', 'sheet-asked'].map(
      (start) => `mechanics/assessment/${start}`,
    ),
  },
  {
    name: 'valve-sheet',
    sources: ['valve-sheet'],
    tests: ['valve-sheet/'],
    throughAssessment: [
      'mechanics/assessment/sheet',
      'mechanics/assessment/swap-by-set-ups',
      'mechanics/assessment/told-late',
      'assessment/sheet/',
      'assessment/evidence-of-swaps',
    ],
  },
  {
    name: 'consequences',
    sources: ['consequences'],
    tests: ['consequences/'],
    throughAssessment: [
      'mechanics/assessment/change',
      'mechanics/assessment/scan-change',
      'mechanics/assessment/figures',
      'mechanics/assessment/next-of-change',
      'assessment/change/',
      'assessment/change-calls',
    ],
  },
  {
    name: 'ratio-readings',
    sources: ['ratio-readings'],
    tests: ['ratio-at-full-lift', 'ratio-through-lift', 'ratio-refused', 'ratio-readings/', 'deflection'],
  },
  {
    name: 'noise',
    sources: ['noise'],
    tests: ['noise/'],
    throughAssessment: ['mechanics/assessment/noise'],
  },
  {
    name: 'kit',
    sources: ['kit'],
    tests: [
      ...['kit/', 'adjuster', 'consequences/', 'cover-room', 'fastener-for-hole', 'gap-scan/', 'lash-shim'],
      ...['lift', 'lifter-preload', 'piston-to-valve', 'retainer-to-seal', 'stand-height', 'thread'],
    ],
    throughAssessment: ['mechanics/assessment/lift-tools', 'mechanics/assessment/lash'],
  },
  {
    name: 'explain-readings',
    sources: ['explain-readings', ...computations('explain-readings')],
    tests: ['explain-readings/'],
    throughAssessment: ['mechanics/assessment/ratio-', 'assessment/ratio/', 'assessment/ratio-calls'],
  },
  ...ASSESSMENT_SLICES,
];
