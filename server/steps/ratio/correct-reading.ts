import { correctReading } from '../../../shared/schemas/commands.ts';
import { READING_KINDS } from '../../../shared/schemas/words.ts';
import type { CallContext } from '../../call/context.ts';
import { correctionForm, standsAs } from '../../call/correction-form.ts';
import { formComponent, type RejectedForm, type StepBody } from '../../call/forms.ts';
import { readingWords } from '../../call/reading-text.ts';
import { entryCorrection } from '../../call/step-correction.ts';
import { inField } from '../../call/worked/in-field.ts';
import { notFound } from '../../problems/failure.ts';
import { listReadings, type Reading, replaceReading } from '../../records/readings/readings.ts';
import { getSetUp, type SetUp } from '../../records/set-ups/set-ups.ts';
import { quantityField, selectField } from '../../web/forms/fields.ts';
import { dialComponent } from './dial-view.ts';
import { dialUnit } from './reading-form.ts';

const LABELS = {
  kind: 'What was read',
  peak: 'Reading as it should be',
  atLobeLift: 'Lobe lift it was read at',
  zeroReturn: 'Hand back on the base circle at',
};

/** A reading put right or struck out: the old one stays where it was, with the reason. */
function correctionBody(
  context: CallContext,
  readingId: string,
  rejected: RejectedForm | undefined,
): StepBody {
  const reading = context.readings.find((each) => each.id === readingId);
  const setUp = context.setUps.find((each) => each.id === reading?.setUpId);
  if (reading === undefined || setUp === undefined) throw notFound('reading');
  const form = correctionForm({
    name: 'correct',
    action: `${context.base}/readings/${readingId}/correct`,
    schema: correctReading,
    back: `${context.base}/steps/ratio?set-up=${setUp.id}`,
    labels: LABELS,
    initial: { kind: reading.kind, atLobeLift: inField(reading.atLobeLift) },
    slots: (shown) => [
      selectField(shown, 'kind', LABELS.kind, READING_KINDS, {
        hint: 'Where the figure is right and was kept under another name: pick the right one, and leave the figure empty.',
      }),
      quantityField(shown, 'peak', LABELS.peak, 'length', {
        assume: dialUnit(setUp),
        perTurn: setUp.method.perTurn,
        hint: standsAs(reading.peak),
        ...(context.side === 'bench' ? { big: true } : { autofocus: true }),
      }),
      quantityField(shown, 'atLobeLift', LABELS.atLobeLift, 'length', {
        assume: dialUnit(setUp),
        optional: true,
        hint: 'Only for a valve lift part of the way up.',
      }),
      quantityField(shown, 'zeroReturn', LABELS.zeroReturn, 'length', {
        assume: dialUnit(setUp),
        optional: true,
      }),
    ],
    reasonHint: 'Such as “one turn missed, small hand read again”.',
  });
  // What is in doubt is no picture to hold a dial against: it is what was entered, until the right one is typed.
  const drawn = dialComponent(setUp, reading, {
    followed: reading.kind,
    field: 'correct-f-peak',
    heading: 'The dial as it was entered',
  });
  return {
    forms: [form],
    slots: [formComponent(form, rejected), ...(drawn === undefined ? [] : [drawn])],
  };
}

interface Corrected {
  readonly reading: Reading;
  readonly setUp: SetUp;
}

/** A pass put right or struck out; its turns are read by the dial of its set-up. */
export const passCorrection = entryCorrection({
  path: '/readings/:readingId',
  action: '/readings/:readingId/correct',
  param: 'readingId',
  entries: ({ readings }) => readings,
  schema: correctReading,
  fields: ({ reading }: Corrected, { kind = '' }) => ({
    value: 'peak',
    along: ['zeroReturn', 'kind', ...(kind === 'valve-lift-at' ? ['atLobeLift'] : [])],
    valueStands: kind !== '' && kind !== reading.kind,
  }),
  async find({ tx, principal, call }, id) {
    const reading = (await listReadings(tx, principal, call.buildId)).find((each) => each.id === id);
    if (reading === undefined) throw notFound('reading');
    return { reading, setUp: await getSetUp(tx, principal, call.buildId, reading.setUpId) };
  },
  units: ({ setUp }: Corrected) => ({ lengths: dialUnit(setUp), perTurn: setUp.method.perTurn }),
  page: ({ context }, id, rejected) => {
    const reading = context.readings.find((each) => each.id === id);
    if (reading === undefined) throw notFound('reading');
    return {
      title: `Correct: ${readingWords(reading).toLowerCase()}, line ${reading.seq}`,
      body: correctionBody(context, id, rejected),
    };
  },
  replace: async (input, { setUp }, { tx, principal, call }, id) => {
    await replaceReading(tx, principal, call.buildId, id, input);
    return { step: `ratio?set-up=${setUp.id}` };
  },
});
