import type { CallContext } from '../../call/context.ts';
import { defineStep } from '../../call/step.ts';
import { isStopped } from '../../call/under-stop.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { scanCorrection } from './correction.ts';
import { keepPaste } from './forms/paste.ts';
import { keepRows } from './forms/rows.ts';
import { scansReport } from './report.ts';
import { scanPage } from './scan-page.ts';
import { scanItems } from './takeover.ts';
import { SCANS_TOLD } from './tape-text.ts';

/** Lines for a scan of either valve, where the call is about what a ratio does and none was read yet. */
function gapsToRead(context: CallContext): string[] {
  const { asks } = context.plan;
  if (isStopped(context) || !asks.includes('consequences') || context.record.gapScans.length > 0) return [];
  return [
    'Intake, piston to valve at 2°, 4° … 20° after TDC (solid lifter, light spring, zero lash):',
    'Exhaust, piston to valve at 20°, 18° … 2° before TDC (the same):',
  ];
}

/** Piston to valve, one crank angle after another. */
export const scanStep = defineStep({
  name: 'scan',
  key: '8',
  words: {
    title: 'Read piston to valve over the crank',
    link: 'Piston to valve over the crank',
    say: 'Which valve, solid lifter or not, light spring, zero lash? Then degree by degree: before or after TDC, and how much is left between valve and piston?',
    how: 'Solid lifter, light spring, lash at zero, final timing. Turn by hand. Every 2° about the overlap push the valve to the piston and write down the gap. Go on until it has risen twice. Any resistance: stop.',
    turns: true,
  },
  load: ({ context }) => context.assessment.details.scans,
  page: scanPage,
  forms: [keepRows, keepPaste],
  corrections: [scanCorrection],
  told: SCANS_TOLD,
  cautions: () => [],
  report: (_, context) => [{ name: 'scans', ...scansReport(context) }],
  takeover: (_, context) => scanItems(context),
  worksheet: (context) => ({ ...NO_ROWS, blanks: gapsToRead(context) }),
});
