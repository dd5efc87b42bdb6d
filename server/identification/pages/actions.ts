import { InputFaults } from '../../../shared/problems/faults.ts';
import { correctPartReading, newPartReading } from '../../../shared/schemas/part-reading.ts';
import { isPartFeature, isPartSize, PART_MARKS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { getCall } from '../../calls/calls.ts';
import { readCorrection } from '../../calls/pages/correction-form.ts';
import { baseOf, callIdOf } from '../../calls/pages/sight.ts';
import type { Tx } from '../../database/database.ts';
import { readForm } from '../../forms/read-form.ts';
import type { FormAnswer, PageRequest } from '../../http/page-route.ts';
import { notFound } from '../../problems/failure.ts';
import { keepPartReading, listPartReadings, replacePartReading } from '../part-readings.ts';

/** Faults that the service found are told beside their fields, like those of the form itself. */
async function toldAtFields(given: PageRequest, work: () => Promise<FormAnswer>): Promise<FormAnswer> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const faults = error.faults.map(({ pointer, detail }) => ({ field: pointer.slice(1), detail }));
    return { faults, typed: given.fields };
  }
}

const done = (given: PageRequest): FormAnswer => ({ goTo: `${baseOf(given)}/steps/identify` });

export async function runPartReading(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const { kind = '', size = '', word = '', place = '' } = given.fields;
  if (!isPartSize(kind) && !isPartFeature(kind)) throw notFound('size or feature');
  const read = readForm(newPartReading, { kind, size, word, place }, { lengths: 'in' });
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  const call = await getCall(tx, given.caller, callIdOf(given));
  return toldAtFields(given, async () => {
    await keepPartReading(tx, given.caller, call.buildId, read.data);
    return done(given);
  });
}

/** Each mark that was filled in is kept by itself; an empty field is no mark. */
export async function runPartMarks(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const kinds = keysOf(PART_MARKS).filter((kind) => (given.fields[`${kind}.mark`] ?? '').trim() !== '');
  if (kinds.length === 0) {
    const detail = 'is empty, and so are the other two: fill in at least one mark';
    return { faults: [{ field: 'ratio-stamp.mark', detail }], typed: given.fields };
  }
  const call = await getCall(tx, given.caller, callIdOf(given));
  for (const kind of kinds) {
    const fields = {
      kind,
      mark: given.fields[`${kind}.mark`] ?? '',
      place: given.fields[`${kind}.place`] ?? '',
    };
    const read = readForm(newPartReading, fields, { lengths: 'in' });
    if (!read.ok) {
      const faults = read.faults.map(({ field, detail }) => ({ field: `${kind}.${field}`, detail }));
      return { faults, typed: given.fields };
    }
    await keepPartReading(tx, given.caller, call.buildId, read.data);
  }
  return done(given);
}

export async function runPartCorrection(tx: Tx, given: PageRequest): Promise<FormAnswer> {
  const readingId = given.params.partReadingId ?? '';
  const call = await getCall(tx, given.caller, callIdOf(given));
  const readings = await listPartReadings(tx, given.caller, call.buildId);
  const reading = readings.find((each) => each.id === readingId);
  if (reading === undefined) throw notFound('reading');
  const value = isPartSize(reading.kind) ? 'size' : isPartFeature(reading.kind) ? 'word' : 'mark';
  const read = readCorrection(
    correctPartReading,
    given.fields,
    { value, along: ['place'] },
    { lengths: 'in' },
  );
  if (!read.ok) return { faults: read.faults, typed: given.fields };
  return toldAtFields(given, async () => {
    await replacePartReading(tx, given.caller, call.buildId, readingId, read.data);
    return done(given);
  });
}
