import { InputFaults } from '../../../shared/problems/faults.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { refuseTurning } from '../../assessment/stops/refuse-turning.ts';
import { computeForm } from '../../compute-forms/compute-form.ts';
import { noted } from '../../events/tx-notes.ts';
import { Failure } from '../../problems/failure.ts';
import { unitsOfBuild } from '../../records/builds/units.ts';
import { getCall } from '../../records/calls/calls.ts';
import { keepWorking, workOut } from '../../records/workings/workings.ts';
import { picksOf } from '../../web/forms/picked-reading.ts';
import type { FormFault } from '../../web/forms/read-form.ts';
import type { PageRequest } from '../../web/page-request.ts';
import { callIdOf } from '../context.ts';
import { addressOf, asFormFaults, noteSaid, type ServedBefore, type StepForm } from '../step-form.ts';
import type { WorkedData, WorkedStep } from './part.ts';

/** The build of the call that a form is about, and the units it is spoken in. */
const buildOf = ({ principal, ...req }: PageRequest, { db }: ServedBefore) =>
  db.shopTransaction(
    principal.shopId,
    async (tx) => {
      const { buildId } = await getCall(tx, principal, callIdOf({ principal, ...req }));
      return { buildId, units: await unitsOfBuild(tx, principal, buildId) };
    },
    'read',
  );

/** Computes what was typed, before the transaction, and keeps it in it; a fault leaves the form as it was. */
export function workedForm<Loaded extends WorkedData>(step: WorkedStep<Loaded>): StepForm {
  return {
    path: `/workings/${step.name}`,
    beside: [],
    async before(req, served) {
      const {
        key: _,
        form: __,
        beforeStop: ___,
        computation,
        part: name = computation,
        ...typed
      } = req.fields;
      const part = step.parts.find((each) => each.name === name);
      const each = served.computations.get(part?.computed?.computation ?? '');
      if (part?.computed === undefined || each === undefined)
        throw new Failure('not-found', 'nothing is here');
      const own = part.computed.form;
      const refused = (faults: readonly FormFault[]) => async () => ({ faults, typed: req.fields });
      const empty = (own?.allOf ?? []).filter((field) => (typed[field] ?? '').trim() === '');
      if (empty.length > 0) return refused(empty.map((field) => ({ field, detail: 'must not be empty' })));
      const { buildId, units } = await buildOf(req, served);
      const { ip } = req.request;
      await served.computeLimits.take(ip);
      const computed = speaking(units, () =>
        computeForm(each, own === undefined ? typed : { ...own.toTyped(typed), ...picksOf(typed) }, true),
      );
      if (computed.faults.length > 0)
        return refused(
          own === undefined ? computed.faults : computed.faults.map((fault) => own.faultAt(fault)),
        );
      const made = await workOut(each, computed.body, (inputs) =>
        served.work.answer(each, inputs, 'inch', (ms) => served.computeLimits.charge(ip, ms), 'engine'),
      ).catch((error: unknown) => {
        if (error instanceof InputFaults) return error;
        throw error;
      });
      if (made instanceof InputFaults) return refused(asFormFaults(made));
      return async (tx, again) => {
        noteSaid(tx, again.fields);
        await keepWorking(tx, again.principal, buildId, made, refuseTurning);
        return addressOf(again, { step: `${step.name}?of=${part.name}` }, noted(tx).kept);
      };
    },
  };
}
