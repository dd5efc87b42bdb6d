import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import { type BuildRecord, setUpOf } from '../../records/whole-build/build-record.ts';
import { notToRunView, showNotToRun } from '../view/stop.ts';
import { changeFields, changeFieldsView, changeView, showChange } from './change-view.ts';
import { changeOn } from './of-valve.ts';

/** What is said of the build whatever valve it is about. */
const ofBuild = {
  headlines: z.array(z.string()).meta({ description: 'the answer in one line for each plan, worst first' }),
  stop: z.boolean().meta({ description: 'nobody turns it: see the stop of the assessment' }),
  notToRun: z.array(notToRunView),
};

/** What a ratio does on the valve of a set-up, as JSON has it. */
export const consequencesView = z
  .object({
    setUpId: z.uuid(),
    revision: z.object({ setUp: z.int(), now: z.int() }),
    ...ofBuild,
    ...changeFieldsView,
  })
  .meta({ id: 'Consequences' });

/** What each ratio does on each valve or side: measured, sold as, or planned with nothing measured. */
export const changesView = z.object({ revision: z.int(), ...ofBuild, changes: z.array(changeView) }).meta({
  id: 'Changes',
  description: 'every valve that was read, else its side, with each ratio that is planned',
});

const buildFields = ({ headlines, stop, notToRun }: Assessment) => ({
  headlines: headlines.filter(({ step }) => step === 'consequences').map(({ sentence }) => sentence),
  stop: stop.length > 0,
  notToRun: notToRun.map(showNotToRun),
});

export function showConsequences(record: BuildRecord, assessment: Assessment, setUpId: string) {
  const setUp = setUpOf(record, setUpId);
  return answer(consequencesView, {
    setUpId: setUp.id,
    revision: { setUp: setUp.revision, now: record.build.revision },
    ...buildFields(assessment),
    ...changeFields(record, assessment, changeOn(assessment, setUp)),
  });
}

export const showChanges = (record: BuildRecord, assessment: Assessment) =>
  answer(changesView, {
    revision: record.build.revision,
    ...buildFields(assessment),
    changes: assessment.details.change.map((detail) => showChange(record, assessment, detail)),
  });
