import type { z } from 'zod';
import { type NewSheetReadings, oneValve, pasteSheet, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { freeForm, type StepForm, stepForm } from '../../call/step-form.ts';
import { keepPasted, lookAtPasted, sayFault } from '../../records/sheet/paste-sheet.ts';
import { keepSheetReadings } from '../../records/sheet/sheet-readings.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';

const back = ({ order }: Fields) => ({ step: order === 'bank' ? 'sheet?order=bank' : 'sheet' });

function readingsOf({
  cylinder,
  valve,
  figures = {},
}: z.output<typeof oneValve>): NewSheetReadings['readings'] {
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const reading = figures[kind];
    return reading === undefined ? [] : [{ cylinder, valve, kind, reading }];
  });
}

const NOTHING = {
  field: 'figures.lobe-lift',
  detail: 'or another reading is missing: nothing was filled in',
};

/** Keeps what was filled in for one valve. */
const oneValveForm = stepForm({
  path: '/sheet',
  beside: ['order'],
  schema: oneValve,
  run: async (input, { tx, principal, call, req }) => {
    const readings = readingsOf(input);
    if (readings.length === 0) return { faults: [NOTHING], typed: req.fields };
    const { spring, lifter, tool, arms } = input;
    const sheet = { spring, lifter, tool, arms, readings };
    await keepSheetReadings(tx, principal, call.buildId, sheet, refuseTurning);
    return back(req.fields);
  },
});

/** The pasted rows as the JSON route takes them. */
export function readPaste(fields: Fields) {
  const { text = '', unit = 'in', spring = '', lifter = '', tool = '', arms = '' } = fields;
  return readForm(
    pasteSheet.omit({ keep: true }),
    { text, unit, spring, lifter, tool, arms },
    { lengths: 'in' },
  );
}

/** Looks at pasted rows, or keeps them all. A look answers the page again with what was read. */
const pasteForm = freeForm({
  path: '/sheet/paste',
  run: async ({ tx, principal, call, req }) => {
    const read = readPaste(req.fields);
    if (!read.ok) return { faults: read.faults, typed: req.fields };
    const told = (faults: readonly Parameters<typeof sayFault>[0][]) => ({
      faults: faults.map((fault) => ({ field: 'text', detail: sayFault(fault) })),
      typed: req.fields,
    });
    if (req.fields.act !== 'keep')
      return told((await lookAtPasted(tx, principal, call.buildId, read.data)).faults);
    const done = await keepPasted(tx, principal, call.buildId, read.data, refuseTurning);
    return 'kept' in done ? back(req.fields) : told(done.faults);
  },
});

export const sheetForms: readonly StepForm[] = [oneValveForm, pasteForm];
