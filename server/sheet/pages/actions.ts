import {
  correctSheetReading,
  type NewSheetReadings,
  oneValve,
  pasteSheet,
  SHEET_KINDS,
} from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { getCall } from '../../calls/calls.ts';
import { readCorrection } from '../../calls/pages/correction-form.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import { type Fields, readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { keepPasted, lookAtPasted, sayFault } from '../paste-sheet.ts';
import { keepSheetReadings, replaceSheetReading } from '../sheet-readings.ts';

const back = (given: PageRequest): FormAnswer => ({
  goTo: `${baseOf(given)}/steps/sheet${given.fields.order === 'bank' ? '?order=bank' : ''}`,
});

const buildOf = async (tx: Tx, given: PageRequest): Promise<string> =>
  (await getCall(tx, given.caller, callIdOf(given))).buildId;

type Read = ReturnType<typeof readForm<typeof oneValve>>;

function readingsOf(read: Extract<Read, { ok: true }>['data']): NewSheetReadings['readings'] {
  const { cylinder, valve, figures = {} } = read;
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const reading = figures[kind];
    return reading === undefined ? [] : [{ cylinder, valve, kind, reading }];
  });
}

/** Keeps what was filled in for one valve. */
export async function runOneValve(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { order: _, form: __, ...fields } = given.fields;
  const read = readForm(oneValve, fields, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const readings = readingsOf(read.data);
  if (readings.length === 0)
    return {
      faults: [
        { field: 'figures.lobe-lift', detail: 'or another reading is missing: nothing was filled in' },
      ],
      typed: given.fields,
    };
  const { spring, lifter, tool, arms } = read.data;
  const input = { spring, lifter, tool, arms, readings } satisfies NewSheetReadings;
  await keepSheetReadings(tx, given.caller, await buildOf(tx, given), input);
  return back(given);
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
export async function runPaste(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const read = readPaste(given.fields);
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const input = { ...read.data, keep: given.fields.act === 'keep' };
  const buildId = await buildOf(tx, given);
  const told = (faults: Parameters<typeof sayFault>[0][]): FormAnswer => ({
    faults: faults.map((fault) => ({ field: 'text', detail: sayFault(fault) })),
    typed: given.fields,
  });
  if (!input.keep) return told([...(await lookAtPasted(tx, given.caller, buildId, input)).faults]);
  const done = await keepPasted(tx, given.caller, buildId, input);
  return 'kept' in done ? back(given) : told([...done.faults]);
}

/** Puts another reading in the place of one, or strikes it out. */
export async function runSheetCorrection(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const read = readCorrection(correctSheetReading, given.fields, { value: 'reading' }, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  await replaceSheetReading(
    tx,
    given.caller,
    await buildOf(tx, given),
    given.params.readingId ?? '',
    read.data,
  );
  return back(given);
}
