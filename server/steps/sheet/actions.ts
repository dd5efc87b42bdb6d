import {
  correctSheetReading,
  type NewSheetReadings,
  oneValve,
  pasteSheet,
  SHEET_KINDS,
} from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { baseOf, callIdOf } from '../../call/context.ts';
import { readCorrection } from '../../call/correction-form.ts';
import type { Tx } from '../../database/database.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepPasted, lookAtPasted, sayFault } from '../../records/sheet/paste-sheet.ts';
import { keepSheetReadings, replaceSheetReading } from '../../records/sheet/sheet-readings.ts';
import { type Fields, readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';

const back = (req: PageRequest): FormAnswer => ({
  goTo: `${baseOf(req)}/steps/sheet${req.fields.order === 'bank' ? '?order=bank' : ''}`,
});

const buildOf = async (tx: Tx, req: PageRequest): Promise<string> =>
  (await getCall(tx, req.principal, callIdOf(req))).buildId;

type Read = ReturnType<typeof readForm<typeof oneValve>>;

function readingsOf(read: Extract<Read, { ok: true }>['data']): NewSheetReadings['readings'] {
  const { cylinder, valve, figures = {} } = read;
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const reading = figures[kind];
    return reading === undefined ? [] : [{ cylinder, valve, kind, reading }];
  });
}

/** Keeps what was filled in for one valve. */
export async function runOneValve(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { order: _, form: __, ...fields } = req.fields;
  const read = readForm(oneValve, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const readings = readingsOf(read.data);
  if (readings.length === 0)
    return {
      faults: [
        { field: 'figures.lobe-lift', detail: 'or another reading is missing: nothing was filled in' },
      ],
      typed: req.fields,
    };
  const { spring, lifter, tool, arms } = read.data;
  const input = { spring, lifter, tool, arms, readings } satisfies NewSheetReadings;
  await keepSheetReadings(tx, req.principal, await buildOf(tx, req), input);
  return back(req);
}

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
export async function runPaste(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readPaste(req.fields);
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const input = { ...read.data, keep: req.fields.act === 'keep' };
  const buildId = await buildOf(tx, req);
  const told = (faults: Parameters<typeof sayFault>[0][]): FormAnswer => ({
    faults: faults.map((fault) => ({ field: 'text', detail: sayFault(fault) })),
    typed: req.fields,
  });
  if (!input.keep) return told([...(await lookAtPasted(tx, req.principal, buildId, input)).faults]);
  const done = await keepPasted(tx, req.principal, buildId, input);
  return 'kept' in done ? back(req) : told([...done.faults]);
}

/** Puts another reading in the place of one, or strikes it out. */
export async function runSheetCorrection(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const read = readCorrection(correctSheetReading, req.fields, { value: 'reading' }, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  await replaceSheetReading(tx, req.principal, await buildOf(tx, req), req.params.readingId ?? '', read.data);
  return back(req);
}
