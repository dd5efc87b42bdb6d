import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { computeForm } from '../../compute-forms/compute-form.ts';
import { Failure } from '../../problems/failure.ts';
import { unitsOfBuild } from '../../records/builds/units.ts';
import { keepWorking } from '../../records/workings/workings.ts';
import { picksOf } from '../../web/forms/picked-reading.ts';
import { freeForm, type StepForm } from '../step-form.ts';
import type { WorkedData, WorkedStep } from './part.ts';

/** Computes what was typed and keeps it; a fault leaves the form as it was. */
export function workedForm<Loaded extends WorkedData>(step: WorkedStep<Loaded>): StepForm {
  return freeForm({
    path: `/workings/${step.name}`,
    run: async ({ tx, principal, call, req, computations }) => {
      const { key: _, form: __, computation, part: name = computation, ...typed } = req.fields;
      const part = step.parts.find((each) => each.name === name);
      const each = computations.get(part?.computed?.computation ?? '');
      if (part?.computed === undefined || each === undefined)
        throw new Failure('not-found', 'nothing is here');
      const own = part.computed.form;
      const empty = (own?.allOf ?? []).filter((field) => (typed[field] ?? '').trim() === '');
      if (empty.length > 0)
        return {
          faults: empty.map((field) => ({ field, detail: 'must not be empty' })),
          typed: req.fields,
        };
      const units = await unitsOfBuild(tx, principal, call.buildId);
      const computed = speaking(units, () =>
        computeForm(each, own === undefined ? typed : { ...own.toTyped(typed), ...picksOf(typed) }, true),
      );
      if (computed.faults.length > 0) {
        const faults =
          own === undefined ? computed.faults : computed.faults.map((fault) => own.faultAt(fault));
        return { faults, typed: req.fields };
      }
      await keepWorking(tx, principal, call.buildId, each, computed.body, refuseTurning);
      return { step: `${step.name}?of=${part.name}` };
    },
  });
}
