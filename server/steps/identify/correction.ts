import { correctPartReading } from '../../../shared/schemas/part-reading.ts';
import { isMeasured, isPartFeature, PART_KINDS } from '../../../shared/schemas/part-words.ts';
import { formComponent } from '../../call/forms.ts';
import { entryCorrection } from '../../call/step-correction.ts';
import { notFound } from '../../problems/failure.ts';
import {
  listPartReadings,
  type PartReading,
  replacePartReading,
} from '../../records/part-readings/part-readings.ts';
import { partCorrectionForm } from './part-forms.ts';

const NAMES: Readonly<Record<string, string>> = PART_KINDS;

function pick(readings: readonly PartReading[], id: string): PartReading {
  const found = readings.find((each) => each.id === id);
  if (found === undefined) throw notFound('reading');
  return found;
}

/** A reading of the part put right or struck out. */
export const partCorrection = entryCorrection({
  path: '/part-readings/:partReadingId',
  action: '/part-readings/:partReadingId/correct',
  param: 'partReadingId',
  entries: ({ partReadings }) => partReadings,
  schema: correctPartReading,
  fields: ({ kind }: PartReading) => ({
    value: isMeasured(kind) ? 'size' : isPartFeature(kind) ? 'word' : 'mark',
    along: isMeasured(kind)
      ? ['place', 'tool', 'within', ...(kind === 'stud-pitch' ? ['count'] : [])]
      : ['place'],
  }),
  find: async ({ tx, principal, call }, id) => pick(await listPartReadings(tx, principal, call.buildId), id),
  page: ({ context }, id, rejected) => {
    const reading = pick(context.partReadings, id);
    const form = partCorrectionForm(context, reading);
    return {
      title: `Correct: ${(NAMES[reading.kind] ?? reading.kind).toLowerCase()}, line ${reading.seq}`,
      body: { forms: [form], slots: [formComponent(form, rejected)] },
    };
  },
  replace: async (input, { partId }, { tx, principal, call }, id) => {
    await replacePartReading(tx, principal, call.buildId, id, input);
    return { step: `identify?part=${partId ?? 'part'}` };
  },
});
