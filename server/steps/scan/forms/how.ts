import { SHEET_ARMS, TOOLS } from '../../../../shared/schemas/sheet.ts';
import { LASH_STATES, LIFTERS, SPRINGS } from '../../../../shared/schemas/words.ts';
import type { Component } from '../../../../views/parts/components.ts';
import type { CallContext } from '../../../call/context.ts';
import { isStopped } from '../../../call/under-stop.ts';
import { valveWords } from '../../../call/valve-words.ts';
import { inField } from '../../../call/worked/in-field.ts';
import type { GapScan } from '../../../records/gap-scans/gap-scan-table.ts';
import { type FormState, numberField, quantityField, selectField } from '../../../web/forms/fields.ts';
import type { Fields } from '../../../web/forms/read-form.ts';

export const SCAN_LABELS = {
  cylinder: 'Cylinder',
  valve: 'Valve',
  spring: 'Spring on the valve',
  lifter: 'Lifter',
  lash: 'Lash while reading',
  lashSetting: 'How much lash was in it',
  tool: 'Gaps read with',
  arms: 'Arms',
};

/** Under a stop nothing is read on the engine: what is entered was read with the arms before. */
const ARMS_BEFORE = { before: SHEET_ARMS.before };

const big = (context: CallContext) => (context.side === 'bench' ? { big: true } : {});

export const placeFields = (shown: FormState, context: CallContext): Component[] => [
  numberField(shown, 'cylinder', SCAN_LABELS.cylinder, { inputmode: 'numeric', ...big(context) }),
  // A scan filed on the other valve would be read against the other limit: nobody’s valve is presumed.
  selectField(shown, 'valve', SCAN_LABELS.valve, { '': 'Not said', ...valveWords(context) }),
];

/** How it was read: each of these makes the gap another one. */
export const howFields = (
  shown: FormState,
  context: CallContext,
  stopped = isStopped(context),
): Component[] => [
  selectField(shown, 'lifter', SCAN_LABELS.lifter, LIFTERS),
  selectField(shown, 'spring', SCAN_LABELS.spring, SPRINGS),
  selectField(shown, 'lash', SCAN_LABELS.lash, LASH_STATES),
  quantityField(shown, 'lashSetting', SCAN_LABELS.lashSetting, 'length', {
    optional: true,
    hint: 'Only where it was set. At zero lash leave it empty.',
    ...big(context),
  }),
  selectField(shown, 'tool', SCAN_LABELS.tool, TOOLS),
  selectField(shown, 'arms', SCAN_LABELS.arms, stopped ? ARMS_BEFORE : SHEET_ARMS),
];

export const howOf = (scan: GapScan): Fields => ({
  cylinder: String(scan.cylinder),
  valve: scan.valve,
  spring: scan.spring,
  lifter: scan.lifter,
  lash: scan.lash,
  lashSetting: inField(scan.lashSetting),
  tool: scan.tool,
  arms: scan.arms,
});

/** The next scan was likely read like the last; on which valve is said each time. */
export function nextHow(context: CallContext): Fields {
  const last = context.record.gapScans.findLast(({ struck }) => !struck);
  const now: Fields = isStopped(context) ? { arms: 'before' } : {};
  if (last === undefined) return { cylinder: '1', valve: '', ...now };
  return { ...howOf(last), valve: '', ...now };
}
