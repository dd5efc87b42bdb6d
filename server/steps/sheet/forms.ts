import type { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { type NewSheetReadings, oneValve, pasteSheet, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { freeForm, type StepForm, spokenIn, stepForm } from '../../call/step-form.ts';
import { keepPasted, lookAtPasted, sayFault } from '../../records/sheet/paste-sheet.ts';
import { asLength, dialOf } from '../../records/sheet/said-in-turns.ts';
import { keepSheetReadings } from '../../records/sheet/sheet-readings.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';
import { keepCylinders } from './cylinders-form.ts';
import { readGrid } from './grid-fields.ts';

/** Gaps are typed in beside what they are held against, too. */
const back = ({ order, step }: Fields) => ({
  step: step === 'consequences' ? step : order === 'bank' ? 'sheet?order=bank' : 'sheet',
});

function readingsOf({
  cylinder,
  valve,
  armId,
  figures = {},
}: z.output<typeof oneValve>): NewSheetReadings['readings'] {
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const reading = figures[kind];
    return reading === undefined ? [] : [{ cylinder, valve, kind, reading, ...defined({ armId }) }];
  });
}

const NOTHING = {
  field: 'figures.lobe-lift',
  detail: 'or another reading is missing: nothing was filled in',
};

/** Keeps what was filled in for one valve. */
const oneValveForm = stepForm({
  path: '/sheet',
  beside: ['order', 'step'],
  schema: oneValve,
  run: async (input, { tx, principal, call, req }) => {
    const { cylinder: _, valve: __, armId: ___, figures = {}, ...how } = input;
    const dial = await dialOf(tx, principal, call.buildId, input.perTurn);
    const faults = keysOf(SHEET_KINDS).flatMap((kind) => {
      const read = figures[kind] === undefined ? undefined : asLength(figures[kind], dial);
      return read === undefined || read.ok ? [] : [{ field: `figures.${kind}`, detail: read.detail }];
    });
    const readings = readingsOf(input);
    if (readings.length === 0) return { faults: [NOTHING], typed: req.fields };
    if (faults.length > 0) return { faults, typed: req.fields };
    await keepSheetReadings(tx, principal, call.buildId, { ...how, readings }, refuseTurning);
    return back(req.fields);
  },
});

const NOTHING_TYPED = { field: 'perTurn', detail: 'or a figure is missing: nothing was typed in' };

/** Keeps what was typed into the grid, all of it or nothing. */
const gridForm = freeForm({
  path: '/sheet/grid',
  run: async ({ tx, principal, call, req }) => {
    const newest = await dialOf(tx, principal, call.buildId, undefined);
    const { lengths } = await spokenIn(tx, principal, call);
    const { names, read } = readGrid(req.fields, req.fields.perTurn?.trim() ? undefined : newest, lengths);
    const typed = req.fields;
    if (names.length === 0) return { faults: [NOTHING_TYPED], typed };
    if (!read.ok) return { faults: read.faults, typed };
    const dial = read.data.perTurn ?? newest;
    const faults = read.data.readings.flatMap(({ reading }, index) => {
      const as = asLength(reading, dial);
      return as.ok ? [] : [{ field: names[index] ?? '', detail: as.detail }];
    });
    if (faults.length > 0) return { faults, typed };
    await keepSheetReadings(tx, principal, call.buildId, read.data, refuseTurning);
    return back(req.fields);
  },
});

/** The pasted rows as the JSON route takes them. */
export function readPaste(fields: Fields) {
  return readForm(pasteSheet.omit({ keep: true }), { text: '', ...fields }, { lengths: 'in' });
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

export const sheetForms: readonly StepForm[] = [oneValveForm, gridForm, pasteForm, keepCylinders];
