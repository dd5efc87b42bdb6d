import { InputFaults } from '../../../shared/problems/faults.ts';
import { correctPartReading, newPartReading } from '../../../shared/schemas/part-reading.ts';
import { isPartFeature, isPartSize, PART_MARKS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { baseOf, callIdOf } from '../../call/context.ts';
import { readCorrection } from '../../call/correction-form.ts';
import type { Tx } from '../../database/database.ts';
import { notFound } from '../../problems/failure.ts';
import { getCall } from '../../records/calls/calls.ts';
import {
  keepPartReading,
  listPartReadings,
  replacePartReading,
} from '../../records/part-readings/part-readings.ts';
import { readForm } from '../../web/forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../web/page-route.ts';

/** Faults that the service found are told beside their fields, like those of the form itself. */
async function toldAtFields(req: PageRequest, work: () => Promise<FormAnswer>): Promise<FormAnswer> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const faults = error.faults.map(({ pointer, detail }) => ({ field: pointer.slice(1), detail }));
    return { faults, typed: req.fields };
  }
}

const done = (req: PageRequest): FormAnswer => ({ goTo: `${baseOf(req)}/steps/identify` });

export async function runPartReading(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const { kind = '', size = '', word = '', place = '' } = req.fields;
  if (!isPartSize(kind) && !isPartFeature(kind)) throw notFound('size or feature');
  const read = readForm(newPartReading, { kind, size, word, place }, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  const call = await getCall(tx, req.principal, callIdOf(req));
  return toldAtFields(req, async () => {
    await keepPartReading(tx, req.principal, call.buildId, read.data);
    return done(req);
  });
}

/** Each mark that was filled in is kept by itself; an empty field is no mark. */
export async function runPartMarks(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const kinds = keysOf(PART_MARKS).filter((kind) => (req.fields[`${kind}.mark`] ?? '').trim() !== '');
  if (kinds.length === 0) {
    const detail = 'is empty, and so are the other two: fill in at least one mark';
    return { faults: [{ field: 'ratio-stamp.mark', detail }], typed: req.fields };
  }
  const call = await getCall(tx, req.principal, callIdOf(req));
  for (const kind of kinds) {
    const fields = {
      kind,
      mark: req.fields[`${kind}.mark`] ?? '',
      place: req.fields[`${kind}.place`] ?? '',
    };
    const read = readForm(newPartReading, fields, { lengths: 'in' });
    if (!read.ok) {
      const faults = read.faults.map(({ field, detail }) => ({ field: `${kind}.${field}`, detail }));
      return { faults, typed: req.fields };
    }
    await keepPartReading(tx, req.principal, call.buildId, read.data);
  }
  return done(req);
}

export async function runPartCorrection(tx: Tx, req: PageRequest): Promise<FormAnswer> {
  const readingId = req.params.partReadingId ?? '';
  const call = await getCall(tx, req.principal, callIdOf(req));
  const readings = await listPartReadings(tx, req.principal, call.buildId);
  const reading = readings.find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  const value = isPartSize(reading.kind) ? 'size' : isPartFeature(reading.kind) ? 'word' : 'mark';
  const read = readCorrection(correctPartReading, req.fields, { value, along: ['place'] }, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: req.fields };
  return toldAtFields(req, async () => {
    await replacePartReading(tx, req.principal, call.buildId, readingId, read.data);
    return done(req);
  });
}
