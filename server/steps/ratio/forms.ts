import { z } from 'zod';
import { newReading } from '../../../shared/schemas/commands.ts';
import { newSetUp } from '../../../shared/schemas/method.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { answersForm } from '../../call/answer-form.ts';
import { type FormSource, type StepForm, stepForm } from '../../call/step-form.ts';
import { notFound } from '../../problems/failure.ts';
import { keepReading } from '../../records/readings/readings.ts';
import { getSetUp, type SetUp, startSetUp } from '../../records/set-ups/set-ups.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { passesMeanwhile, setUpMeanwhile } from './kept-meanwhile.ts';
import { dialUnit } from './reading-form.ts';
import { sitsElsewhere } from './sits-elsewhere.ts';

const at = (setUpId: string) => ({ step: `ratio?set-up=${setUpId}` });

/** A word that was left unpicked counts as not said, where the list has that word. */
function withNotSaid(fields: Fields): Fields {
  const names = ['spring', 'lifter', 'lash', 'restsOn', 'alignment'].map((name) => `method.${name}`);
  const unsaid = names.filter((name) => (fields[name] ?? '') === '');
  return { ...fields, ...Object.fromEntries(unsaid.map((name) => [name, 'not-said'])) };
}

const setUpForm = stepForm({
  path: '/set-ups',
  schema: newSetUp,
  fields: withNotSaid,
  run: async (input, source) => {
    const { tx, principal, call, req } = source;
    const meanwhile = await setUpMeanwhile(source, input);
    if (meanwhile !== undefined) return meanwhile;
    const elsewhere = await sitsElsewhere(input, source);
    if (elsewhere !== undefined)
      return { faults: [{ field: 'armId', detail: elsewhere }], typed: req.fields };
    return at((await startSetUp(tx, principal, call.buildId, input, refuseTurning)).id);
  },
});

const uuid = z.uuid();

/** The set-up that the form names; its dial reads the turns. */
async function setUpOf({ tx, principal, call, req }: FormSource): Promise<SetUp> {
  const id = uuid.safeParse(req.fields.setUpId);
  if (!id.success) throw notFound('set-up');
  return getSetUp(tx, principal, call.buildId, id.data);
}

const readingForm = stepForm({
  path: '/readings',
  beside: ['setUpId', 'was-passes'],
  schema: newReading,
  units: async (source) => {
    const setUp = await setUpOf(source);
    return { lengths: dialUnit(setUp), perTurn: setUp.method.perTurn };
  },
  run: async (input, source) => {
    const setUp = await setUpOf(source);
    const { id } = setUp;
    const meanwhile = await passesMeanwhile(source, setUp, input.kind);
    if (meanwhile !== undefined) return meanwhile;
    await keepReading(source.tx, source.principal, source.call.buildId, id, input, refuseTurning);
    return at(id);
  },
});

export const ratioForms: readonly StepForm[] = [setUpForm, readingForm, answersForm];
