import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { Call } from '../../../server/records/calls/calls.ts';
import type { BuildRecord } from '../../../server/records/whole-build/build-record.ts';
import { AT, CALL, ifKnown, WHO } from './stored.ts';

export function callOf({ call }: Evidence): Call {
  return {
    id: CALL,
    number: 1,
    buildId: 'build',
    callerName: 'Lin',
    callerRole: 'engine-builder',
    callBack: '',
    goal: call.goal,
    engineState: call.engineState,
    contact: call.contact,
    held: call.hold !== undefined,
    holdReason: call.hold?.reason ?? '',
    openedAt: AT,
    closedAt: call.closed ? AT : undefined,
  };
}

/** What was lifted stands in the log. */
export const events = ({ call }: Evidence): BuildRecord['events'] =>
  (call.stopsLifted ?? []).length === 0
    ? []
    : [
        {
          seq: 1_000,
          kind: 'hold-lifted',
          data: { callId: CALL, reason: 'looked at by a shop', was: '', stops: call.stopsLifted },
          ...WHO,
        },
      ];

export const answersOf = (evidence: Evidence): BuildRecord['answers'] =>
  evidence.answers.map(({ id, line, questionId, code, question, answer, found, value, setUpId, place }) => ({
    id,
    questionId,
    question,
    answer,
    code,
    found,
    value: ifKnown(value),
    setUpId,
    place,
    seq: line,
    by: WHO.by,
    at: AT,
  }));
