import { type CallContext, valveName } from '../../call/context.ts';
import { defineStep } from '../../call/step.ts';
import { isStopped } from '../../call/under-stop.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { happened } from '../../events/read-events.ts';
import { SHEET_EVENTS } from '../../records/sheet/events.ts';
import { sheetCorrection } from './correction.ts';
import { sheetForms } from './forms.ts';
import { sheetReport } from './report.ts';
import { sheetPage } from './sheet-page.ts';
import { sheetItems } from './takeover.ts';
import { SHEET_TOLD } from './tape-text.ts';

/** Rows for the valves, where the call is about telling one from its siblings and none was read yet. */
function valvesToRead(context: CallContext): string[] {
  const cylinders = context.build.spec.engine?.cylinders ?? 0;
  if (
    isStopped(context) ||
    !context.plan.asks.includes('sheet') ||
    happened(context.events, SHEET_EVENTS['sheet-readings-kept'])
  )
    return [];
  return Array.from({ length: cylinders }, (_, index) =>
    context.assessment.details.sheet.names.map((valve) => valveName({ cylinder: index + 1, valve })),
  ).flat();
}

/** Every valve, one after the other. */
export const sheetStep = defineStep({
  name: 'sheet',
  key: '7',
  words: {
    title: 'Read every valve, one after the other',
    link: 'Per-valve sheet',
    say: 'Same method on every valve: what does the lobe give, what does the valve give? Which cylinder is that, in the engine’s own numbering?',
    how: 'One valve after the other, the same way each time: lobe first, then the valve. A wire that goes and the next that does not is a reading: give both.',
    turns: true,
  },
  load: ({ context }) => context.assessment.details.sheet,
  page: sheetPage,
  forms: sheetForms,
  corrections: [sheetCorrection],
  told: SHEET_TOLD,
  cautions: () => [],
  report: (_, context) => [{ name: 'sheet', ...sheetReport(context) }],
  takeover: (_, context) => sheetItems(context),
  worksheet: (context) => ({ ...NO_ROWS, valves: valvesToRead(context) }),
});
