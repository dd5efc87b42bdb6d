import { newHandPart, newPartReading, sayHandPart } from '../../../shared/schemas/part-reading.ts';
import { isMeasured, isPartFeature, PART_MARKS } from '../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { freeForm, type StepForm, stepForm } from '../../call/step-form.ts';
import { notFound } from '../../problems/failure.ts';
import { addHandPart, nameHandPart } from '../../records/part-readings/hand-parts.ts';
import { keepPartReading } from '../../records/part-readings/part-readings.ts';
import { picksOf } from '../../web/forms/picked-reading.ts';
import { readForm } from '../../web/forms/read-form.ts';

const readingForm = stepForm({
  path: '/part-readings',
  schema: newPartReading,
  fields: ({
    kind = '',
    partId = '',
    size = '',
    count = '',
    tool = '',
    within = '',
    word = '',
    place = '',
    ...others
  }) => {
    if (!isMeasured(kind) && !isPartFeature(kind)) throw notFound('size or feature');
    return { ...picksOf(others), kind, partId, size, count, tool, within, word, place };
  },
  run: async (input, { tx, principal, call }) => {
    await keepPartReading(tx, principal, call.buildId, input);
    return { step: `identify?part=${input.partId ?? 'part'}` };
  },
});

const partForm = stepForm({
  path: '/hand-parts',
  schema: newHandPart,
  run: async (input, { tx, principal, call }) => {
    const part = await addHandPart(tx, principal, call.buildId, input);
    return { step: `identify?part=${part.id ?? 'part'}` };
  },
});

const nameForm = stepForm({
  path: '/hand-parts/names',
  schema: sayHandPart,
  run: async (input, { tx, principal, call }) => {
    const part = await nameHandPart(tx, principal, call.buildId, input);
    return { step: `identify?part=${part.id ?? 'part'}` };
  },
});

/** Each mark that was filled in is kept by itself; an empty field is no mark. */
const marksForm = freeForm({
  path: '/part-marks',
  run: async ({ tx, principal, call, req: { fields } }) => {
    const kinds = keysOf(PART_MARKS).filter((kind) => (fields[`${kind}.mark`] ?? '').trim() !== '');
    if (kinds.length === 0) {
      const detail = 'is empty, and so are the other two: fill in at least one mark';
      return { faults: [{ field: 'ratio-stamp.mark', detail }], typed: fields };
    }
    for (const kind of kinds) {
      const own = {
        kind,
        partId: fields.partId ?? '',
        mark: fields[`${kind}.mark`] ?? '',
        place: fields[`${kind}.place`] ?? '',
      };
      const read = readForm(newPartReading, own, { lengths: 'in' });
      if (!read.ok) {
        const faults = read.faults.map(({ field, detail }) => ({ field: `${kind}.${field}`, detail }));
        return { faults, typed: fields };
      }
      await keepPartReading(tx, principal, call.buildId, read.data);
    }
    return { step: `identify?part=${fields.partId ?? 'part'}` };
  },
});

export const partForms: readonly StepForm[] = [readingForm, marksForm, partForm, nameForm];
